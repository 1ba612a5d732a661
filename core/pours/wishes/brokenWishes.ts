/** Wishes that accepted joints and pours do not keep: made after they were accepted, or a joint was moved since. */
import type { AcceptedPours } from '../../../shared/document/pours'
import type { Pt } from '../../../shared/document/primitives'
import type { Finding } from '../../../shared/problem'
import { regionContains } from '../../geometry/contains'
import type { CurveRegion } from '../../geometry/curve'
import { segmentDistance } from '../../geometry/segmentDistance'
import type { FaceJoint, PourFace } from '../pourFaces'
import { toCutRegion } from '../region/cutRegion'
import { minimumBox } from '../region/minimumBox'
import { fixedFaces } from './fixedFaces'
import { forbiddenGround } from './forbiddenGround'
import type { JointWishes } from './jointWishes'

/** The pours of a part as they lie now. */
export interface DrawnPart {
  readonly faces: readonly PourFace[]
  readonly joints: readonly FaceJoint[]
}

/** A joint this close to a required line lies on it (m): 1 in. */
const onLineM = 0.0254
/** Less of a required line without a joint is the end of one (m): 1 ft. */
const leastM = 0.3048
/** Required lines are looked at every so far (m). */
const stepM = 0.1524

const distanceTo = ([px, py]: Pt, { from, to }: Pick<FaceJoint, 'from' | 'to'>): number =>
  segmentDistance(px, py, from[0], from[1], to[0], to[1])

const middleOf = ({ from, to }: Pick<FaceJoint, 'from' | 'to'>): Pt => [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]

/** What stands in the way of a repair. */
const heldBy = (isLocked: boolean): 'lock' | '' => (isLocked ? 'lock' : '')

/** Each line and area without joints by itself. */
function eachForbidden({ forbiddenLines = [], forbiddenAreas = [] }: JointWishes) {
  return [
    ...forbiddenLines.map(line => ({ kind: 'line', ground: forbiddenGround({ forbiddenLines: [line] }) })),
    ...forbiddenAreas.map(area => ({ kind: 'area', ground: forbiddenGround({ forbiddenAreas: [area] }) })),
  ] as const
}

/**
 * One finding for each joint where none may lie, each required line without its joint, and each pour narrower than the
 * least width. What is poured stays as it is and is not told; where only locks stand in the way, `held` says so.
 * `regions` = all of the part.
 */
export function brokenWishes(
  accepted: AcceptedPours,
  regions: readonly CurveRegion[],
  drawn: DrawnPart,
  wishes: JointWishes,
): Finding[] {
  const findings: Finding[] = []
  const pourOf = (id: string | null) => accepted.pours.find(pour => pour.id === id)
  const isPoured = (id: string | null): boolean => pourOf(id)?.poured !== undefined
  const isLocked = (id: string | null): boolean => pourOf(id)?.lock.shape === true
  const cuts = regions.map(region => fixedFaces(toCutRegion(region), wishes.required ?? []).joints)
  const required = cuts.flat()
  const lineOf = ({ ax, ay, bx, by }: (typeof required)[number]) => ({
    from: [ax, ay] as const,
    to: [bx, by] as const,
  })
  const forbidden = eachForbidden(wishes)
  for (const joint of drawn.joints) {
    const own = accepted.joints.find(({ id }) => id === joint.id)
    if (!own || joint.lengthM === 0 || joint.pourIds.some(isPoured)) continue
    const [a, b] = [joint.from, joint.to]
    const met = forbidden.find(({ ground }) => ground?.forbids(a[0], a[1], b[0], b[1], { done: 0 }))
    if (!met) continue
    // One that has to lie there is told with the wish, when the slab is split.
    if (required.some(line => [a, b].every(end => distanceTo(end, lineOf(line)) < onLineM))) continue
    findings.push({
      ...{ code: 'jointOnForbidden', severity: 'check' },
      values: { jointId: joint.id, kind: met.kind, held: heldBy(own.locked || joint.pourIds.some(isLocked)) },
      at: { entityId: joint.id, point: middleOf(joint) },
    })
  }
  const missing = new Map<string, { freeM: number; lockedM: number; at: Pt }>()
  for (const line of required) {
    const steps = Math.max(1, Math.ceil(line.lengthM / stepM))
    for (let i = 0; i < steps; i++) {
      const t = (i + 0.5) / steps
      const at: Pt = [line.ax + t * (line.bx - line.ax), line.ay + t * (line.by - line.ay)]
      if (drawn.joints.some(joint => distanceTo(at, joint) < onLineM)) continue
      const pourId = drawn.faces.find(({ region }) => regionContains(region, at))?.pourId ?? null
      if (isPoured(pourId)) continue
      const own = missing.get(line.wishId) ?? { freeM: 0, lockedM: 0, at }
      missing.set(line.wishId, own)
      if (isLocked(pourId)) own.lockedM += line.lengthM / steps
      else own.freeM += line.lengthM / steps
    }
  }
  for (const [wishId, { freeM, lockedM, at }] of missing)
    if (freeM + lockedM >= leastM)
      findings.push({
        ...{ code: 'requiredNotKept', severity: 'check' },
        values: { lengthM: freeM + lockedM, held: heldBy(freeM < leastM) },
        at: { entityId: wishId, point: at },
      })
  const { leastWidthM = 0 } = wishes
  for (const { pourId, region } of leastWidthM > 0 ? drawn.faces : []) {
    const pour = pourOf(pourId)
    if (!pour || isPoured(pourId)) continue
    const { shortM } = minimumBox(toCutRegion(region).rings[0]!)
    if (shortM < leastWidthM - 1e-6)
      findings.push({
        ...{ code: 'pourUnderWidth', severity: 'check' },
        values: { number: pour.number, widthM: shortM, leastM: leastWidthM, held: heldBy(isLocked(pourId)) },
        at: { entityId: pour.id, point: pour.seed },
      })
  }
  return findings
}
