import type { CutTree } from './cutTree'

/** A plan and its cost, feet of joint. */
export interface Settled {
  readonly tree: CutTree
  readonly cost: number
}

/** The cheapest few plans, no two of one cost: those are mostly one plan found twice. */
export function cheapest(plans: readonly Settled[], most: number): Settled[] {
  return [...plans]
    .sort((a, b) => a.cost - b.cost)
    .filter((plan, i, all) => i === 0 || plan.cost - all[i - 1]!.cost > 1e-6)
    .slice(0, most)
}
