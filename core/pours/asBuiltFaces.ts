/** Poured concrete stays where it was poured: as-built shapes in place of what the joints and the slab now make of them. */
import type { AcceptedPours, Pour } from '../../shared/document/pours'
import type { Pt } from '../../shared/document/primitives'
import type { Finding } from '../../shared/problem'
import { distanceToEdge, regionContains } from '../geometry/contains'
import type { CurveRegion } from '../geometry/curve'
import { subtractCurves } from '../geometry/curveBoolean'
import { pointAt } from '../geometry/edgeAt'
import { interiorPoint } from '../geometry/interiorPoint'
import { intersectEdges } from '../geometry/intersectEdges'
import { resolvePath } from '../geometry/resolvePath'
import { curveArea } from '../geometry/ringArea'
import type { FaceJoint, PourFace, PourFaces } from './pourFaces'

/** As-built and drawn areas that differ by less are one (m²): about 1 ft². */
export const asBuiltM2 = 0.1
/** A drawn edge this near its as-built one is that edge (m): as-built arcs are chords. */
const sameEdgeM = 0.02
/** A point this near the as-built outline lies on it (m). */
const onBuiltM = 2e-3
/** Shorter stretches of joint are left over from rounding (m). */
const leastJointM = 0.01

const coldPrefix = 'as-built-'
/** True for a joint against concrete in the ground that no joint of the document stands for. */
export const isColdJoint = (jointId: string): boolean => jointId.startsWith(coldPrefix)

type Poured = NonNullable<Pour['poured']>

/** Area is the frozen one: that of the shape's chords differs from it by the sagitta. */
export const builtRegion = ({ outline, holes }: Poured, pourId: string): CurveRegion => ({
  outer: resolvePath(outline, pourId).ring,
  holes: holes.map(hole => resolvePath(hole, pourId).ring),
})

const edgesOf = ({ outer, holes }: CurveRegion) => [outer, ...holes].flat()

const isOn = (region: CurveRegion, point: Pt, withinM: number): boolean =>
  edgesOf(region).some(edge => distanceToEdge(edge, point) <= withinM)

/** True where the face still is what was poured, to about 1 ft² and 2 cm. */
export function isAsBuilt({ region, areaM2 }: PourFace, poured: Poured): boolean {
  if (Math.abs(areaM2 - poured.areaM2) > asBuiltM2) return false
  return [poured.outline, ...poured.holes].every(({ vertices }) =>
    vertices.every(({ at }) => isOn(region, at, sameEdgeM)),
  )
}

interface Built {
  readonly pour: Pour
  readonly poured: Poured
  readonly region: CurveRegion
}

/** The stretches of a drawn joint that no concrete in the ground covers or ends. */
function stretchesBeside(joint: FaceJoint, built: readonly Built[]): FaceJoint[] {
  const { from, to, lengthM } = joint
  const edge = { edgeId: joint.id, from, to }
  const cuts = built
    .flatMap(({ region }) => edgesOf(region).flatMap(side => intersectEdges(edge, side)))
    .map(([x, y]) => Math.hypot(x - from[0], y - from[1]) / lengthM)
  const stops = [0, ...cuts.toSorted((a, b) => a - b), 1]
  const pourIds = joint.pourIds.filter(id => !built.some(({ pour }) => pour.id === id))
  return stops.slice(1).flatMap((until, i): FaceJoint[] => {
    const since = stops[i]!
    const own = (until - since) * lengthM
    const middle = pointAt(edge, (since + until) / 2)
    if (own < leastJointM || pourIds.length === 0) return []
    if (built.some(({ region }) => regionContains(region, middle) || isOn(region, middle, onBuiltM))) return []
    if (since === 0 && until === 1) return [{ ...joint, pourIds }]
    return [{ ...joint, from: pointAt(edge, since), to: pointAt(edge, until), lengthM: own, pourIds }]
  })
}

/** Where a face lies against concrete in the ground: the joint that was between them, else a cold joint of its own. */
function jointsAgainst(face: PourFace, built: readonly Built[], drawn: readonly FaceJoint[]): FaceJoint[] {
  return built.flatMap(({ pour, region }) =>
    edgesOf(face.region).flatMap((edge): FaceJoint[] => {
      if (edge.arc || !isOn(region, pointAt(edge, 0.5), onBuiltM)) return []
      const { from, to } = edge
      const lengthM = Math.hypot(to[0] - from[0], to[1] - from[1])
      if (lengthM < leastJointM) return []
      const pourIds = face.pourId === null ? [pour.id] : [pour.id, face.pourId]
      const was = drawn.find(joint => pourIds.length === 2 && pourIds.every(id => joint.pourIds.includes(id)))
      return [{ id: was?.id ?? `${coldPrefix}${pour.id}`, from, to, lengthM, pourIds }]
    }),
  )
}

/** What is left of a face beside the concrete; a pour goes on where its seed lies, else as the largest piece. */
function restOf(face: PourFace, built: readonly Built[], open: readonly Pour[]): PourFace[] {
  const others = built.map(({ region }) => region)
  const pieces = subtractCurves([face.region], others)
    .regions.map(region => ({ region, areaM2: curveArea([region]) }))
    .filter(({ areaM2 }) => areaM2 >= asBuiltM2)
    .toSorted((a, b) => b.areaM2 - a.areaM2)
  const owned = pieces.map(({ region }) => open.find(({ seed }) => regionContains(region, seed))?.id ?? null)
  const goesOn = open.some(({ id }) => id === face.pourId) && !owned.includes(face.pourId)
  return pieces.map((piece, i) => ({ ...piece, pourId: i === 0 && goesOn ? face.pourId : owned[i]! }))
}

const untold = (codes: readonly string[], pours: readonly Built[], findings: readonly Finding[]): Finding[] =>
  findings.filter(({ code, at }) => !(codes.includes(code) && pours.some(({ pour }) => pour.id === at?.entityId)))

/**
 * The faces of all pieces of a part, poured pours as they were poured and the rest less that. The same object where no
 * poured pour is drawn otherwise than it was built. A poured pour that the slab no longer holds stays, with the first
 * piece. Slivers of less than about 1 ft² between drawn and built edges are nobody's.
 */
export function asBuiltFaces(cuts: readonly PourFaces[], accepted: AcceptedPours): readonly PourFaces[] {
  const drawn = new Map(cuts.flatMap(({ faces }) => faces.flatMap(f => (f.pourId === null ? [] : [[f.pourId, f]]))))
  const changed = accepted.pours.flatMap((pour): Built[] => {
    const { poured } = pour
    const face = drawn.get(pour.id)
    if (!poured || poured.outline.vertices.length < 3 || (face && isAsBuilt(face, poured))) return []
    return [{ pour, poured, region: builtRegion(poured, pour.id) }]
  })
  if (changed.length === 0) return cuts
  const ids = new Set(changed.map(({ pour }) => pour.id))
  const open = accepted.pours.filter(({ poured }) => poured === undefined)
  const homeOf = (id: string) =>
    Math.max(
      0,
      cuts.findIndex(({ faces }) => faces.some(({ pourId }) => pourId === id)),
    )
  return cuts.map((cut, i): PourFaces => {
    const own = changed.filter(({ pour }) => homeOf(pour.id) === i)
    const rest = cut.faces.flatMap((face): PourFace[] => {
      const isBuilt = face.pourId !== null && !ids.has(face.pourId)
      const poured = isBuilt && accepted.pours.some(pour => pour.id === face.pourId && pour.poured !== undefined)
      return poured ? [face] : restOf(face, changed, open)
    })
    const built = own.map(({ pour, poured, region }): PourFace => ({ pourId: pour.id, region, areaM2: poured.areaM2 }))
    const bare = rest.filter(({ pourId }) => pourId === null)
    const wasBare = new Set(cut.faces.filter(({ pourId }) => pourId === null).map(({ areaM2 }) => areaM2))
    return {
      faces: [...built, ...rest],
      joints: [
        ...cut.joints.flatMap(joint => stretchesBeside(joint, changed)),
        ...rest.flatMap(face => jointsAgainst(face, changed, cut.joints)),
      ],
      findings: [
        ...untold(['pourLost', 'differsFromAsBuilt'], changed, cut.findings),
        ...own.map(({ pour, poured, region }): Finding => {
          const face = drawn.get(pour.id)
          const besideM2 = face ? curveArea(subtractCurves([region], [face.region]).regions) : poured.areaM2
          const newM2 = face ? curveArea(subtractCurves([face.region], [region]).regions) : 0
          return {
            code: 'differsFromAsBuilt',
            severity: 'check',
            values: {
              number: pour.number,
              byM2: Math.max(besideM2, newM2),
              areaM2: face?.areaM2 ?? 0,
              builtM2: poured.areaM2,
            },
            at: { entityId: pour.id, point: pour.seed },
          }
        }),
        ...bare
          .filter(({ areaM2 }) => !wasBare.has(areaM2))
          .map(
            ({ region, areaM2 }): Finding => ({
              code: 'unplannedPart',
              severity: 'check',
              values: { areaM2 },
              at: { entityId: accepted.slabId, point: interiorPoint(region) ?? region.outer[0]!.from },
            }),
          ),
      ],
    }
  })
}
