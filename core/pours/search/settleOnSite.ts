/** Slides the cuts of finished plans to where the site asks for them: the long search does not look at it. */
import type { SiteGround } from '../siteGround'
import { branchesBySize, type CutTree, replaceBranch } from './cutTree'
import { replay } from './replay'
import { makeContext, type SearchContext } from './searchContext'
import { type PourCosts, treeCost } from './treeCost'

/** Slides tried either way (m): 1 to 8 ft. */
const slidesM = [1, 2, 3, 4, 5, 6, 7, 8].map(ft => ft * 0.3048)
/** Branches of more pours stay where they are. */
const mostPours = 8
const sweeps = 2
/** A plan is changed only for a gain worth speaking of, feet of joint. */
const leastGain = 3
/** Work of the whole pass, in sides visited. */
const workLimit = 400_000

interface SettledPlan {
  readonly tree: CutTree
  /** With what the site adds, feet of joint. */
  readonly cost: number
}

/** The cheapest of the plans on this site, each with its cuts slid; the first as it is unless another gains. */
export function settleOnSite(plans: readonly CutTree[], search: SearchContext, site: SiteGround): CutTree {
  const context = makeContext({ ...search, site, work: { done: 0 }, workLimit })
  const costs: PourCosts = new WeakMap()
  const costOf = (tree: CutTree): number => treeCost(tree, context, costs)
  const slide = (from: CutTree): SettledPlan => {
    let best: SettledPlan = { tree: from, cost: costOf(from) }
    for (let sweep = 0; sweep < sweeps; sweep++) {
      const before = best
      for (let i = 0; i < branchesBySize(best.tree).length; i++) {
        const branch = branchesBySize(best.tree)[i]!
        if (branch.upPours + branch.lowPours > mostPours) continue
        let better = best
        for (const slideM of slidesM)
          for (const byM of [slideM, -slideM]) {
            if (context.work.done > workLimit) return better
            const moved = replay(branch.region, branch, branch.joint, byM, context)
            if (!moved) continue
            const tree = replaceBranch(best.tree, branch, moved)
            const cost = costOf(tree)
            if (cost < better.cost - leastGain) better = { tree, cost }
          }
        best = better
      }
      if (best === before) break
    }
    return best
  }
  return plans.map(slide).reduce((best, plan) => (plan.cost < best.cost - leastGain ? plan : best)).tree
}
