/**
 * The search for more pours than can be proven. A scout that follows a few first cuts in haste and plans in rows give
 * starts; the best few have their small parts divided anew, the best of these their larger parts too.
 */
import type { CutRegion } from '../region/cutRegion'
import { alignJoints } from './alignJoints'
import type { CutTree } from './cutTree'
import { directionsOf, mostDirections } from './directions'
import { divide, startDividing } from './divide'
import { improveParts } from './improveParts'
import { replay } from './replay'
import { rowPlans } from './rowPlans'
import { makeContext, type SearchContext } from './searchContext'
import { cheapest, type Settled } from './settled'
import { type PourCosts, treeCost } from './treeCost'

const scoutBreadth = (k: number) => (j: number) => (j === k ? (k > 24 ? 1 : 4) : j <= 4 ? 3 : 1)
/** Up to these shares of the work: scouting, rows, small parts of all starts, larger parts. The rest is for sliding. */
const scoutShare = 0.12
const rowShare = 0.22
const smallShare = 0.6
const largeShare = 0.92
/** Plans in rows that are aligned, and plans of any kind that are improved. */
const mostRows = 4
const mostStarts = 2
const mostLarger = 2
const alignWork = 40_000
/** Most pours of the parts divided anew. */
const smallParts = [4] as const
const largeParts = [6, 9] as const
/** Cuts that turn at an opening are tried for parts of at most as many pours. */
const mostTurnedPours = 3

/**
 * Many pours set out from a patchwork end in one, with strings to stretch at every pour; rows go on from row to row. They
 * are the start unless they are that much dearer.
 */
const mostPatchwork = 24
const rowsWorth = 1.05

const standInRows = (k: number, rows: readonly Settled[], scout: Settled): boolean =>
  k > mostPatchwork && rows.some(({ cost }) => cost < rowsWorth * scout.cost)

export function searchMany(slab: CutRegion, context: SearchContext, costs: PourCosts): Settled | null {
  const k = context.pours
  const { work, workLimit, wished } = context
  // Twelve directions thin a search out: the slab's own give the plan, all of them only improve its small parts.
  const many = wished.length > mostDirections
  const own = many ? makeContext({ ...context, wished: [] }) : context
  const upTo = (share: number): SearchContext => makeContext({ ...own, workLimit: share * workLimit })
  const make = (tree: CutTree): Settled | null => {
    const made = replay(slab, tree, 0, 0, context)
    return made && { tree: made, cost: treeCost(made, context, costs) }
  }
  const align = ({ tree }: Settled, limit: number): Settled =>
    alignJoints(slab, tree, makeContext({ ...context, workLimit: limit }), costs)
  const scouted = divide(
    slab,
    k,
    Number.POSITIVE_INFINITY,
    startDividing(makeContext({ ...upTo(scoutShare), mostTurnedPours: 0 }), { all: false, breadth: scoutBreadth(k) }),
  )
  const scout = scouted && make(scouted.tree)
  const rows: Settled[] = []
  for (const tree of rowPlans(slab, directionsOf(slab, own.wished, mostDirections, []), upTo(rowShare))) {
    const plan = make(tree)
    if (plan) rows.push(plan)
  }
  const aligned = cheapest(rows, mostRows).map(plan =>
    align(plan, Math.min(work.done + alignWork, smallShare * workLimit)),
  )
  const starts = cheapest([...(scout && !standInRows(k, aligned, scout) ? [scout] : []), ...aligned], mostStarts)
  const improving = (limit: number): SearchContext => makeContext({ ...own, workLimit: limit, mostTurnedPours })
  const small = starts.map((plan, i) => {
    const limit = work.done + Math.max(0, smallShare * workLimit - work.done) / (starts.length - i)
    return improveParts(slab, plan.tree, smallParts, improving(limit), costs)
  })
  let best: Settled | null = null
  for (const plan of cheapest(small, mostLarger)) {
    const larger = improveParts(slab, plan.tree, largeParts, improving(largeShare * workLimit), costs)
    const turned = many
      ? improveParts(slab, larger.tree, smallParts, makeContext({ ...context, mostTurnedPours }), costs)
      : larger
    const settled = align(turned, workLimit)
    if (!best || settled.cost < best.cost) best = settled
  }
  return best
}
