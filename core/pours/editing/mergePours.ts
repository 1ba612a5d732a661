/** Two neighbors made one: the joint between them goes, as far as it lies between them. */
import type { End, Joint } from '../../../shared/document/pours'
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { EditResult } from '../../document/commands/editSite'
import type { CurveRegion } from '../../geometry/curve'
import { cutPart, findPour, missingPour, putPart, refuse, whyFixed } from './editPart'
import { anchorAt, type JointLine, jointGround, nearestOnLine, onM } from './jointGround'
import type { PourCaps } from './pourCaps'

type Span = readonly [from: number, to: number]

/** Spans of a joint, as shares of its line, along which a face lies. */
function spansAlong(region: CurveRegion, line: JointLine): Span[] {
  return [region.outer, ...region.holes].flat().flatMap(edge => {
    if (edge.edgeId !== line.id) return []
    const [a, b] = [nearestOnLine(line, edge.from).t, nearestOnLine(line, edge.to).t]
    return [[Math.min(a, b), Math.max(a, b)] as const]
  })
}

const common = (a: readonly Span[], b: readonly Span[], least: number): Span[] =>
  a.flatMap(p =>
    b.flatMap(q => {
      const span: Span = [Math.max(p[0], q[0]), Math.min(p[1], q[1])]
      return span[1] - span[0] > least ? [span] : []
    }),
  )

/** What of 0 … 1 lies in none of the spans. */
function restOf(spans: readonly Span[], least: number): Span[] {
  const sorted = [...spans].sort((a, b) => a[0] - b[0])
  const rest: Span[] = []
  let from = 0
  for (const [a, b] of sorted) {
    if (a - from > least) rest.push([from, a])
    from = Math.max(from, b)
  }
  if (1 - from > least) rest.push([from, 1])
  return rest
}

/**
 * The first pour takes over the second: it keeps its id, number, date and notes. A joint that also parts other pours
 * stays between those.
 */
export function mergePours(site: Site, keptId: Id, takenId: Id, caps?: PourCaps): EditResult {
  const kept = findPour(site, keptId)
  const taken = findPour(site, takenId)
  if (!kept) return refuse(missingPour(keptId))
  if (!taken) return refuse(missingPour(takenId))
  const fixed = whyFixed(kept.pour) ?? whyFixed(taken.pour)
  if (fixed) return refuse(fixed)
  const { accepted, slab } = kept
  const strangers = refuse({
    code: 'notNeighbors',
    severity: 'stop',
    values: { number: kept.pour.number, other: taken.pour.number },
    at: { entityId: keptId },
  })
  if (taken.accepted !== accepted || keptId === takenId) return strangers
  const ground = jointGround(slab, accepted)
  const { faces } = cutPart(ground.regions, accepted)
  const faceOf = (id: Id) => faces.find(face => face.pourId === id)?.region
  const [a, b] = [faceOf(keptId), faceOf(takenId)]
  if (!a || !b) return strangers
  let nextId = site.nextId
  let opened = false
  const free = (last: Pt): End => ({ anchor: { on: 'free' }, last })
  const moved = new Map<Id, readonly { readonly id: Id; readonly line: JointLine }[]>()
  const joints = accepted.joints.flatMap((joint): Joint[] => {
    const line = ground.lines.find(({ id }) => id === joint.id)!
    const lengthM = Math.hypot(line.to[0] - line.from[0], line.to[1] - line.from[1])
    const least = onM / Math.max(lengthM, onM)
    const between = common(spansAlong(a, line), spansAlong(b, line), least)
    if (between.length === 0) return [joint]
    opened = true
    const at = (t: number): Pt => [
      line.from[0] + t * (line.to[0] - line.from[0]),
      line.from[1] + t * (line.to[1] - line.from[1]),
    ]
    const pieces = restOf(between, least).map(([from, to], i) => {
      const id = i === 0 ? joint.id : `j${nextId++}`
      const ends: Joint['ends'] = [from === 0 ? joint.ends[0] : free(at(from)), to === 1 ? joint.ends[1] : free(at(to))]
      return { id, joint: { ...joint, id, ends }, line: { id, from: at(from), to: at(to) } }
    })
    moved.set(joint.id, pieces)
    return pieces.map(piece => piece.joint)
  })
  if (!opened) return strangers
  // Joints that ended on what went end on what is left of it, or at their last place.
  const handed = joints.map((joint): Joint => {
    const own = ground.lines.find(({ id }) => id === joint.id)
    const ends = joint.ends.map((end, i): End => {
      if (end.anchor.on !== 'joint') return end
      const pieces = moved.get(end.anchor.jointId)
      if (!pieces) return end
      const last = (i === 0 ? own?.from : own?.to) ?? end.last
      for (const { line } of pieces) {
        const { t, distanceM } = nearestOnLine(line, last)
        if (distanceM < onM) return { anchor: { on: 'joint', jointId: line.id, t }, last }
      }
      const bare = { ...ground, lines: ground.lines.filter(({ id }) => !moved.has(id)) }
      return anchorAt(bare, last, joint.id)
    })
    return { ...joint, ends: [ends[0]!, ends[1]!] }
  })
  return putPart(site, kept, {
    joints: handed,
    pours: accepted.pours.filter(({ id }) => id !== takenId),
    nextId,
    caps,
  })
}
