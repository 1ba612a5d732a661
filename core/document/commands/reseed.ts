/** Gives each pour the face that is bounded as its own was. */
import type { Pour } from '../../../shared/document/pours'
import type { Id, Pt } from '../../../shared/document/primitives'
import { distanceToEdge, regionContains } from '../../geometry/contains'
import type { CurveRegion } from '../../geometry/curve'
import { tangentAt } from '../../geometry/edgeAt'
import { interiorPoint } from '../../geometry/interiorPoint'
import type { FaceJoint, PourFace, PourFaces } from '../../pours/pourFaces'

/** A seed nearer than this to the edge of its face is set anew. */
const clearM = 0.01

/** What bounds a face: edges of the slab by id, joints by id and side. */
const boundsOf = (region: CurveRegion, joints: readonly FaceJoint[]): ReadonlySet<string> => {
  const labels = new Set<string>()
  for (const edge of [region.outer, ...region.holes].flat()) {
    const joint = joints.find(({ id }) => id === edge.edgeId)
    if (joint === undefined) {
      labels.add(edge.edgeId)
      continue
    }
    const [x, y] = tangentAt(edge, 0)
    const along = x * (joint.to[0] - joint.from[0]) + y * (joint.to[1] - joint.from[1])
    labels.add(`${edge.edgeId} ${along > 0 ? 'left' : 'right'}`)
  }
  return labels
}

/** Common share of two sets of bounds, 0 … 1. */
const likeness = (a: ReadonlySet<string>, b: ReadonlySet<string>): number => {
  let common = 0
  for (const label of a) if (b.has(label)) common += 1
  return common / (a.size + b.size - common)
}

const isWell = (region: CurveRegion, seed: Pt): boolean =>
  regionContains(region, seed) &&
  ![region.outer, ...region.holes].flat().some(edge => distanceToEdge(edge, seed) < clearM)

/**
 * Seeds after an edit. Faces before and after are matched by what bounds them, the most alike first, and a pour whose
 * seed no longer lies well inside its face gets a new one. Poured pours and pours without a face keep their seed.
 */
export const reseed = (
  before: { readonly faces: readonly PourFace[]; readonly joints: readonly FaceJoint[] },
  after: readonly PourFaces[],
  pours: readonly Pour[],
  follow: (id: Id) => readonly Id[],
): readonly Pour[] => {
  const faces = after.flatMap(row => row.faces)
  const joints = after.flatMap(row => row.joints)
  const boundsNow = faces.map(({ region }) => boundsOf(region, joints))
  const taken = new Set<number>()
  const faceOf = new Map<Id, number>()
  for (const pour of pours) {
    if (pour.poured === undefined) continue
    const at = faces.findIndex(({ region }) => regionContains(region, pour.seed))
    if (at >= 0) taken.add(at)
    faceOf.set(pour.id, -1)
  }
  const pairs = before.faces.flatMap(face => {
    const id = face.pourId
    if (id === null || faceOf.has(id) || !pours.some(pour => pour.id === id)) return []
    const bounds = new Set([...boundsOf(face.region, before.joints)].flatMap(label => follow(label)))
    return boundsNow.flatMap((now, at) => {
      const alike = likeness(bounds, now)
      return alike > 0 ? [{ id, at, alike }] : []
    })
  })
  pairs.sort((a, b) => b.alike - a.alike)
  for (const { id, at } of pairs) {
    if (taken.has(at) || faceOf.has(id)) continue
    taken.add(at)
    faceOf.set(id, at)
  }
  const seeded = pours.map(pour => {
    const region = faces[faceOf.get(pour.id) ?? -1]?.region
    if (region === undefined || isWell(region, pour.seed)) return pour
    return { ...pour, seed: interiorPoint(region) ?? pour.seed }
  })
  return seeded.some((pour, i) => pour !== pours[i]) ? seeded : pours
}
