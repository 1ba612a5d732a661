/** Joints taken by hand on the plan: near an end the joint turns about the other, elsewhere it shifts beside itself. */
import type { PlannedJoint } from '../../core/plan/plan'
import { moveJoint } from '../../core/pours/editing/moveJoint'
import type { Pt } from '../../shared/document/primitives'
import type { EditOf } from '../app/applyEdit'

export interface JointGrip {
  readonly jointId: string
  readonly by: 'from' | 'to' | 'line'
  readonly from: Pt
  readonly to: Pt
  readonly taken: Pt
}

/** An end is taken within this share of the joint's length, and never farther off than `endPx`. */
const endPx = 22

/** Of the document, not of a proposal. */
export const isKept = ({ id }: Pick<PlannedJoint, 'id'>): boolean => !id.startsWith('proposed-')

/** The accepted joint under a point of the plan; null where there is none. `zoom` in pixels per meter. */
export function gripAt(joints: readonly PlannedJoint[], at: Pt, zoom: number): JointGrip | null {
  for (const joint of joints) {
    const { id, kind, from, to, lengthM } = joint
    if (kind !== 'construction' || !isKept(joint) || lengthM === 0) continue
    const [ux, uy] = [(to[0] - from[0]) / lengthM, (to[1] - from[1]) / lengthM]
    const along = (at[0] - from[0]) * ux + (at[1] - from[1]) * uy
    const aside = Math.abs((at[1] - from[1]) * ux - (at[0] - from[0]) * uy)
    if (aside * zoom > 10 || along * zoom < -10 || (along - lengthM) * zoom > 10) continue
    const endM = Math.min(endPx / zoom, lengthM / 4)
    const by = along < endM ? 'from' : along > lengthM - endM ? 'to' : 'line'
    return { jointId: id, by, from, to, taken: at }
  }
  return null
}

/** The joint with the hand at a point. */
export function dragJoint({ jointId, by, from, to, taken }: JointGrip, at: Pt): EditOf {
  if (by !== 'line') return (site, caps) => moveJoint(site, jointId, by === 'from' ? [at, to] : [from, at], caps)
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const normal: Pt = [-(to[1] - from[1]) / length, (to[0] - from[0]) / length]
  const byM = (at[0] - taken[0]) * normal[0] + (at[1] - taken[1]) * normal[1]
  const shift = ([x, y]: Pt): Pt => [x + normal[0] * byM, y + normal[1] * byM]
  return (site, caps) => moveJoint(site, jointId, [shift(from), shift(to)], caps)
}
