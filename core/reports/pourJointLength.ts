import type { CurveRing } from '../geometry/curve'
import type { SheetJoint, SheetPour } from './sheetData'

/** Ends of a pour's edge on a joint differ from it by rounding alone. */
const onJointM = 1e-3

function onSegment(p: readonly [number, number], joint: SheetJoint): boolean {
  const [ax, ay] = joint.from
  const [dx, dy] = [joint.to[0] - ax, joint.to[1] - ay]
  const length = Math.hypot(dx, dy)
  if (length === 0) return false
  const along = ((p[0] - ax) * dx + (p[1] - ay) * dy) / length
  const across = Math.abs((p[0] - ax) * dy - (p[1] - ay) * dx) / length
  return across < onJointM && along > -onJointM && along < length + onJointM
}

const ringLength = (ring: CurveRing, joints: readonly SheetJoint[]): number =>
  ring
    .filter(edge => edge.arc === undefined && joints.some(j => onSegment(edge.from, j) && onSegment(edge.to, j)))
    .reduce((sum, { from, to }) => sum + Math.hypot(to[0] - from[0], to[1] - from[1]), 0)

/** How much of a pour's edge is a construction joint, in meters: the part of each joint that this pour touches. */
export function pourJointLength(pour: SheetPour, joints: readonly SheetJoint[]): number {
  const near = joints.filter(j => j.kind === 'construction' && j.slabId === pour.slabId)
  return [pour.region.outer, ...pour.region.holes].reduce((sum, ring) => sum + ringLength(ring, near), 0)
}
