/** Moving and turning a construction joint. */
import type { End, Joint } from '../../../shared/document/pours'
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { Finding } from '../../../shared/problem'
import type { EditResult } from '../../document/commands/editSite'
import { intersectEdges } from '../../geometry/intersectEdges'
import { cutPart, findJoint, missingJoint, putPart, refuse, whyFixed } from './editPart'
import { anchorAt, type JointGround, type JointLine, jointGround, nearestOnLine, onM, settleLine } from './jointGround'
import type { PourCaps } from './pourCaps'

const reachM = 1e4

/** Where two lines cross when both are drawn on without end; null for parallels. */
function crossing(a: JointLine, b: JointLine): Pt | null {
  const drawnOn = ({ from, to }: JointLine) => {
    const length = Math.hypot(to[0] - from[0], to[1] - from[1])
    const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
    return {
      edgeId: '',
      from: [from[0] - reachM * ux, from[1] - reachM * uy] as const,
      to: [to[0] + reachM * ux, to[1] + reachM * uy] as const,
    }
  }
  return intersectEdges(drawnOn(a), drawnOn(b))[0] ?? null
}

/** A moved joint that ended on another still ends on it, where their lines meet now. */
function keepTees(joint: Joint, [p, q]: readonly [Pt, Pt], ground: JointGround): readonly [Pt, Pt] {
  const line = { id: joint.id, from: p, to: q }
  const keep = (end: End, at: Pt): Pt => {
    if (end.anchor.on !== 'joint') return at
    const { jointId } = end.anchor
    const other = ground.lines.find(({ id }) => id === jointId)
    const meet = other && crossing(line, other)
    return other && meet && nearestOnLine(other, meet).distanceM < onM ? meet : at
  }
  return [keep(joint.ends[0], p), keep(joint.ends[1], q)]
}

/** Joints that end on the moved one keep their own line and end where it meets it. */
function followTees(joints: readonly Joint[], moved: JointLine, ground: JointGround): Joint[] {
  return joints.map(joint => {
    if (joint.id === moved.id || joint.locked) return joint
    const own = ground.lines.find(({ id }) => id === joint.id)!
    let changed = false
    const ends = joint.ends.map((end): End => {
      if (end.anchor.on !== 'joint' || end.anchor.jointId !== moved.id) return end
      const meet = crossing(own, moved)
      if (!meet) return end
      const { t, distanceM } = nearestOnLine(moved, meet)
      if (distanceM > onM) return end
      changed = true
      return { anchor: { ...end.anchor, t }, last: meet }
    })
    return changed ? { ...joint, ends: [ends[0]!, ends[1]!] } : joint
  })
}

/**
 * Puts a joint on the line from `p` to `q`. Ends inside a pour go on to the next edge or joint, ends beyond the slab come
 * back to its edge; joints that end on it follow. Refused: a locked joint, one beside a poured or shape-locked pour, a
 * line that misses the slab.
 */
export function moveJoint(site: Site, jointId: Id, [p, q]: readonly [Pt, Pt], caps?: PourCaps): EditResult {
  const found = findJoint(site, jointId)
  if (!found) return refuse(missingJoint(jointId))
  const { accepted, slab, joint } = found
  const at = { entityId: jointId }
  const ground = jointGround(slab, accepted)
  const fixed = fixedBeside(found.accepted, ground, jointId)
  if (fixed.length > 0) return refuse(...fixed)
  if (joint.locked) return refuse({ code: 'jointLocked', severity: 'stop', values: { jointId }, at })
  const wished = keepTees(joint, [p, q], ground)
  const settled = settleLine(ground, wished[0], wished[1], jointId)
  if (!settled) return refuse({ code: 'jointOffSlab', severity: 'stop', values: { jointId }, at: { ...at, point: p } })
  const own: Joint = {
    ...joint,
    ends: [anchorAt(ground, settled[0], jointId), anchorAt(ground, settled[1], jointId)],
  }
  const line = { id: jointId, from: settled[0], to: settled[1] }
  const joints = followTees(
    accepted.joints.map(row => (row.id === jointId ? own : row)),
    line,
    ground,
  )
  return putPart(site, found, { joints, pours: accepted.pours, nextId: site.nextId, caps })
}

/** Poured and shape-locked pours along a joint. */
function fixedBeside(accepted: Parameters<typeof cutPart>[1], ground: JointGround, jointId: Id): Finding[] {
  const { joints } = cutPart(ground.regions, accepted)
  const beside = new Set(joints.filter(({ id }) => id === jointId).flatMap(({ pourIds }) => pourIds))
  return accepted.pours.flatMap(pour => {
    const why = beside.has(pour.id) ? whyFixed(pour) : null
    return why ? [why] : []
  })
}

/** Shifts a joint parallel to itself, `byM` to the left of its run. */
export function shiftJoint(site: Site, jointId: Id, byM: number, caps?: PourCaps): EditResult {
  return changeLine(
    site,
    jointId,
    ({ from, to }) => {
      const length = Math.hypot(to[0] - from[0], to[1] - from[1])
      const [nx, ny] = [(-(to[1] - from[1]) / length) * byM, ((to[0] - from[0]) / length) * byM]
      return [
        [from[0] + nx, from[1] + ny],
        [to[0] + nx, to[1] + ny],
      ]
    },
    caps,
  )
}

/** Turns a joint counter-clockwise about a point, its middle when none is given. */
export function rotateJoint(site: Site, jointId: Id, byDeg: number, about?: Pt, caps?: PourCaps): EditResult {
  const [c, s] = [Math.cos((byDeg * Math.PI) / 180), Math.sin((byDeg * Math.PI) / 180)]
  return changeLine(
    site,
    jointId,
    ({ from, to }) => {
      const [mx, my] = about ?? [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
      const turn = ([x, y]: Pt): Pt => [mx + c * (x - mx) - s * (y - my), my + s * (x - mx) + c * (y - my)]
      return [turn(from), turn(to)]
    },
    caps,
  )
}

function changeLine(
  site: Site,
  jointId: Id,
  change: (line: JointLine) => readonly [Pt, Pt],
  caps?: PourCaps,
): EditResult {
  const found = findJoint(site, jointId)
  if (!found) return refuse(missingJoint(jointId))
  const line = jointGround(found.slab, found.accepted).lines.find(({ id }) => id === jointId)!
  return moveJoint(site, jointId, change(line), caps)
}
