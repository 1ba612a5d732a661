/** The search in each face that required joints cut, with an eye on the joints of the others. */
import type { CutRegion } from '../region/cutRegion'
import { alignJoints } from '../search/alignJoints'
import { isBranch, type JointLine, jointsOf } from '../search/cutTree'
import { makeContext, poursNeeded } from '../search/searchContext'
import { type FoundPlan, type SearchGround, searchPlan } from '../search/searchPlan'
import { teeCost } from '../search/teeCost'

export interface FacePlan extends FoundPlan {
  /** Which of the grounds it was found on. */
  readonly ground: number
}

/** Pours for each face: what its area needs, and those asked for beyond it where the pours are largest. */
export function sharePours(faces: readonly CutRegion[], capM2: number, asked: number): number[] {
  const counts = faces.map(({ areaM2 }) => poursNeeded(areaM2, capM2))
  for (let sum = counts.reduce((a, b) => a + b, 0); sum < asked; sum++) {
    let most = 0
    for (let i = 1; i < faces.length; i++)
      if (faces[i]!.areaM2 / counts[i]! > faces[most]!.areaM2 / counts[most]! + 1e-9) most = i
    counts[most]!++
  }
  return counts
}

/**
 * A plan for each face, largest first, on the first of its grounds that has one; null where none has. Then each is aligned once more with all the others, so
 * that joints on both sides of a required one meet it in line.
 */
export function planFaces(
  faces: readonly CutRegion[],
  counts: readonly number[],
  fixed: readonly JointLine[],
  groundsOf: (face: number) => readonly Omit<SearchGround, 'beside' | 'rest'>[],
  budget: number,
): (FacePlan | null)[] {
  const plans: (FacePlan | null)[] = faces.map(() => null)
  const pours = counts.reduce((a, b) => a + b, 0)
  const areaM2 = faces.reduce((sum, face) => sum + face.areaM2, 0)
  const besides = (own: number): JointLine[] => [
    ...fixed,
    ...plans.flatMap((plan, i) => (plan && i !== own ? jointsOf(plan.tree) : [])),
  ]
  const order = faces.map((_, i) => i).sort((a, b) => faces[b]!.areaM2 - faces[a]!.areaM2)
  for (const i of order) {
    const rest = { areaM2: faces.length === 1 ? 0 : areaM2 - faces[i]!.areaM2, pours: pours - counts[i]! }
    const beside = besides(i)
    for (const [at, ground] of groundsOf(i).entries()) {
      const plan = searchPlan(faces[i]!, counts[i]!, { ...ground, rest, beside }, budget * (counts[i]! / pours))
      plans[i] = plan && { ...plan, ground: at }
      if (plan) break
    }
  }
  if (faces.length > 1)
    for (const i of order) {
      const plan = plans[i]
      if (!plan || !isBranch(plan.tree)) continue
      const beside = besides(i)
      const besideTee = teeCost(beside, plan.context.weights)
      const context = makeContext({ ...plan.context, beside, besideTee, work: { done: 0 } })
      plans[i] = { ...plan, ...alignJoints(faces[i]!, plan.tree, context, new WeakMap()) }
    }
  return plans
}
