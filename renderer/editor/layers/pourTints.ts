/** Which of the four tints a pour has: never that of a neighbor, as far as four suffice. */
import type { PlannedJoint, PlannedPour } from '../../../core/plan/plan'

export const tints = [1, 2, 3, 4] as const
export type Tint = (typeof tints)[number]

type Joined = Pick<PlannedJoint, 'pourIds'>

const known = new WeakMap<
  readonly Pick<PlannedPour, 'id'>[],
  { joints: readonly Joined[]; of: ReadonlyMap<string, Tint> }
>()

/** In the order of the pours, each takes the first tint no neighbor has; where none is left, the rarest among them. */
export function pourTints(
  pours: readonly Pick<PlannedPour, 'id'>[],
  joints: readonly Joined[],
): ReadonlyMap<string, Tint> {
  const made = known.get(pours)
  if (made && made.joints === joints) return made.of
  const chosen = new Map<string, Tint>()
  for (const { id } of pours) {
    const beside = joints
      .filter(joint => joint.pourIds.includes(id))
      .flatMap(joint => joint.pourIds.filter(other => other !== id))
    const uses = (tint: Tint): number => beside.filter(other => chosen.get(other) === tint).length
    // Begins with the tint after the last one given, so that a row of pours runs through all four.
    const turn = tints.map((_, i) => tints[(chosen.size + i) % tints.length]!)
    chosen.set(
      id,
      turn.reduce((best, tint) => (uses(tint) < uses(best) ? tint : best)),
    )
  }
  known.set(pours, { joints, of: chosen })
  return chosen
}
