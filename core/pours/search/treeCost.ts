import { pourCost } from '../pourCost'
import type { CutRegion } from '../region/cutRegion'
import { type CutTree, isBranch, jointsOf } from './cutTree'
import type { SearchContext } from './searchContext'
import { teeCost } from './teeCost'

/** Costs of pours already looked at; a pour is never changed. */
export type PourCosts = WeakMap<CutRegion, number>

/** What the pours and cuts of a tree cost by themselves: all but the tees. */
export function ownCost(tree: CutTree, context: SearchContext, costs: PourCosts): number {
  if (isBranch(tree))
    return (
      context.weights.extraJoint * (tree.chain.length - 1) +
      ownCost(tree.up, context, costs) +
      ownCost(tree.low, context, costs)
    )
  let cost = costs.get(tree.pour)
  if (cost === undefined) {
    context.work.done += 16 * tree.pour.rings[0]!.sides.length
    cost = pourCost(tree.pour, context)
    costs.set(tree.pour, cost)
  }
  return cost
}

/** The whole cost of a plan but for pours beyond the fewest; less than that where it is `limit` or more anyway. */
export function treeCost(
  tree: CutTree,
  context: SearchContext,
  costs: PourCosts,
  limit = Number.POSITIVE_INFINITY,
): number {
  const own = ownCost(tree, context, costs)
  return own >= limit ? own : own + teeCost([...jointsOf(tree), ...context.beside], context.weights) - context.besideTee
}
