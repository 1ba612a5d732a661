/** Divides small parts of a large plan anew with a wide beam, and keeps what makes the whole plan cheaper. */
import type { CutRegion } from '../region/cutRegion'
import { type Branch, branchesBySize, type CutTree, leavesOf, replaceBranch } from './cutTree'
import { divide, startDividing } from './divide'
import { countJoints, replay } from './replay'
import type { SearchContext } from './searchContext'
import type { Settled } from './settled'
import { ownCost, type PourCosts, treeCost } from './treeCost'

/** Fewest pours of a part divided anew. */
const fewest = 2

const breadth = (k: number): number => (k <= 2 ? 4 : k <= 4 ? 3 : 2)

/** Only the part is cut again where the numbers of the other joints stay. */
function withPart(slab: CutRegion, tree: CutTree, old: Branch, by: CutTree, context: SearchContext): CutTree | null {
  if (countJoints(by) !== countJoints(old)) return replay(slab, replaceBranch(tree, old, by), 0, 0, context)
  const made = replay(old.region, by, old.joint, 0, context)
  return made && replaceBranch(tree, old, made)
}

/** Parts of at most so many pours, size after size. */
export function improveParts(
  slab: CutRegion,
  tree: CutTree,
  sizes: readonly number[],
  context: SearchContext,
  costs: PourCosts,
  isConcerned: (part: Branch) => boolean = () => true,
): Settled {
  let best = tree
  let cost = treeCost(tree, context, costs)
  const state = startDividing(context, { all: false, breadth })
  for (const most of sizes) {
    const tried = new WeakSet<Branch>()
    for (;;) {
      const branch = branchesBySize(best).find(b => {
        const count = b.upPours + b.lowPours
        return count >= fewest && count <= most && !tried.has(b) && isConcerned(b)
      })
      if (!branch || context.work.done > context.workLimit) break
      tried.add(branch)
      const count = leavesOf(branch).length
      const found = divide(branch.region, count, ownCost(branch, context, costs) - 1e-6, state)
      if (!found) continue
      const whole = withPart(slab, best, branch, found.tree, context)
      if (!whole) continue
      const now = treeCost(whole, context, costs, cost - 1e-6)
      if (now < cost - 1e-6) {
        best = whole
        cost = now
      }
    }
  }
  return { tree: best, cost }
}
