/**
 * Takes corners under 60° out of a plan of many pours: the parts around each are divided anew, and where joints may turn
 * those that make it are turned, with such corners all but forbidden. Under 60° is against the rule (ACPA joint layout),
 * so that it is worth more than its price in feet of joint.
 */
import { isSharp } from '../pourCost'
import { type CutRegion, interiorDegs } from '../region/cutRegion'
import { type Branch, type CutTree, leavesOf } from './cutTree'
import { improveParts } from './improveParts'
import { makeContext, type SearchContext } from './searchContext'
import type { Settled } from './settled'
import { type PourCosts, treeCost } from './treeCost'
import { coarse, fine, turnJoints } from './turnJoints'

/** What such a corner costs while it is being mended, feet of joint. */
export const forbidding = { acuteFloor: 60, acuteCorner: 120 } as const
/** How much dearer the plan may get for each corner mended, feet of joint. */
const mostPerCorner = 30
const parts = [2, 3, 4, 6, 9] as const
const mostTurnedPours = 3

/** Corners sharper than joints should make; those of the slab are left out. */
export function sharpCorners(pour: CutRegion, belowDeg: number): number {
  let count = 0
  for (const ring of pour.rings) {
    const degs = interiorDegs(ring)
    for (let i = 0; i < degs.length; i++) if (isSharp(degs[i]!, ring.sides[i]!.slabDeg, belowDeg)) count++
  }
  return count
}

/** The plan with fewer sharp corners where one is found at a fair price, else as it is. `turns`: joints may turn. */
export function mendCorners(
  slab: CutRegion,
  plan: Settled,
  turns: boolean,
  context: SearchContext,
  costs: PourCosts,
): Settled {
  const below = context.weights.acuteBelowDeg
  const sharpIn = (tree: CutTree): number => leavesOf(tree).reduce((n, pour) => n + sharpCorners(pour, below), 0)
  const before = sharpIn(plan.tree)
  if (before === 0) return plan
  const strict = makeContext({ ...context, weights: { ...context.weights, ...forbidding }, mostTurnedPours })
  const strictCosts: PourCosts = new WeakMap()
  const isConcerned = (branch: Branch): boolean => sharpIn(branch) > 0
  let { tree } = improveParts(slab, plan.tree, parts, strict, strictCosts, isConcerned)
  if (turns && sharpIn(tree) > 0)
    tree = turnJoints(
      tree,
      treeCost(tree, strict, strictCosts),
      [...coarse, ...fine],
      strict,
      strictCosts,
      isConcerned,
    ).tree
  const mended = before - sharpIn(tree)
  const cost = treeCost(tree, context, costs)
  return mended > 0 && cost <= plan.cost + mostPerCorner * mended ? { tree, cost } : plan
}
