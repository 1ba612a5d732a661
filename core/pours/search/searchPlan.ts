/** The search for one plan: a beam over cut trees, aligned joints, and for few pours the proof. */
import type { CutRegion } from '../region/cutRegion'
import { alignJoints } from './alignJoints'
import { boundSlab } from './bounds'
import type { CutTree } from './cutTree'
import { mostDirections, turnsFreely } from './directions'
import { type DivideState, type Division, divide, nearShare, startDividing } from './divide'
import { mendCorners } from './mendCorners'
import { replay } from './replay'
import { type Direction, makeContext, type SearchContext } from './searchContext'
import { searchMany } from './searchMany'
import { cheapest, type Settled } from './settled'
import { spokePlans } from './spokePlans'
import { teeCost } from './teeCost'
import { type PourCosts, treeCost } from './treeCost'
import { coarse, fine, turnJoints } from './turnJoints'

export interface FoundPlan {
  readonly tree: CutTree
  readonly pourCount: number
  /** Cost without the price of pours beyond the fewest, feet of joint. */
  readonly cost: number
  /** No plan of as many pours from the candidate cuts costs less than this. */
  readonly bound: number
  readonly context: SearchContext
}

const beamBreadth = (k: number): number => (k <= 2 ? 10 : k <= 4 ? 6 : k <= 8 ? 3 : k <= 24 ? 2 : 1)
/** Pours tried beyond the fewest before the search gives up. */
const mostExtraPours = 4
/** Up to this many pours the optimum over the candidate cuts is proven if the budget allows. */
export const provenUpTo = 5
const mostAligned = 20
/** Most pours for which cuts that turn at an opening are tried. */
const mostTurnedPours = 8
/**
 * Plans whose joints are turned, where they may be: many by coarse steps, of these the best few by fine ones; and its
 * share of the work.
 */
const mostLooked = 6
const mostSpokes = 4
const mostTurned = 3
const turnShare = 0.6
const turnShareOfMany = 0.3
/** Share of the work for mending sharp corners of many pours, where there are any. */
const mendShare = 0.2
/** Work of a search while dragging: the long search never answers with a dearer plan. */
export const quickBudget = 100_000
const severalOpenings = 2
/**
 * Work of a search at rest. Many pours are given more: each of them is looked at; so are few pours among
 * several openings, each of which multiplies the cuts to follow.
 */
export function fullBudget(pours: number, openings: number): number {
  if (pours <= provenUpTo) return openings < severalOpenings ? 1_000_000 : 3_000_000
  return Math.max(1_500_000, 35_000 * pours)
}
/** Before the proof many first cuts are followed a little way: curved slabs hide good plans behind dear ones. */
const firstCuts = 60
const laterCuts = 4
/** The rest of the work is left to the proof. */
const wideShare = 0.45

/** What a search of any number of pours stands on. */
export interface SearchGround
  extends Omit<SearchContext, 'meanM2' | 'pours' | 'work' | 'workLimit' | 'mostTurnedPours' | 'besideTee'> {
  /** The other parts of the slab, where they are planned apart: the mean pour is that of the whole. */
  readonly rest: { readonly areaM2: number; readonly pours: number }
}

function searchCount(slab: CutRegion, given: SearchContext): FoundPlan | null {
  const k = given.pours
  const turns = turnsFreely(slab, given)
  const turned = k > provenUpTo ? turnShareOfMany : turnShare
  const context = turns ? makeContext({ ...given, workLimit: (1 - turned) * given.workLimit }) : given
  const costs: PourCosts = new WeakMap()
  const state = (all: boolean): DivideState => startDividing(context, { all, breadth: beamBreadth })
  const settle = (tree: CutTree): Settled | null => {
    const made = replay(slab, tree, 0, 0, context)
    if (!made) return null
    return alignJoints(slab, made, context, costs)
  }
  const found = k <= provenUpTo ? divide(slab, k, Number.POSITIVE_INFINITY, state(false)) : null
  let best = k > provenUpTo ? searchMany(slab, context, costs) : found && settle(found.tree)
  const plans = best ? [best] : []
  let bound = boundSlab(slab, k, context)
  if (k <= provenUpTo) {
    const near: Division[] = []
    const wide = startDividing(makeContext({ ...context, workLimit: wideShare * context.workLimit }), {
      all: false,
      breadth: j => (j === k ? firstCuts : laterCuts),
    })
    if (k > 2 && context.work.done < context.workLimit / 4)
      divide(slab, k, best ? best.cost * (1 + nearShare) : Number.POSITIVE_INFINITY, wide, near)
    near.sort((a, b) => a.cost - b.cost)
    for (const { tree } of near.slice(0, mostAligned)) {
      const settled = settle(tree)
      if (!settled) continue
      plans.push(settled)
      if (!best || settled.cost < best.cost) best = settled
    }
    const exact = state(true)
    const limit = best ? best.cost * (1 + nearShare) : Number.POSITIVE_INFINITY
    const optimum = divide(slab, k, limit, exact, near)
    if (k === 1) bound = optimum?.cost ?? 0
    else if (optimum || best) bound = Math.min(Math.max(bound, exact.least), best?.cost ?? Number.POSITIVE_INFINITY)
    // Sliding joints can reverse the order of plans that are close: align the best few.
    near.sort((a, b) => a.cost - b.cost)
    for (const { tree } of near.slice(0, mostAligned)) {
      const settled = settle(tree)
      if (!settled) continue
      plans.push(settled)
      if (!best || settled.cost < best.cost) best = settled
    }
  }
  if (turns) {
    const ground = makeContext({ ...given, work: { done: 0 }, workLimit: turned * given.workLimit })
    const spokes = spokePlans(slab, ground).map(tree => ({ tree, cost: treeCost(tree, ground, costs) }))
    const turn = ({ tree, cost }: Settled, finenesses: readonly number[]): Settled =>
      turnJoints(tree, cost, finenesses, ground, costs)
    const looked = [...cheapest(plans, mostLooked), ...cheapest(spokes, mostSpokes)].map(plan => turn(plan, coarse))
    for (const plan of cheapest(looked, mostTurned)) {
      const turnedOn = turn(plan, fine)
      if (!best || turnedOn.cost < best.cost) best = turnedOn
    }
  }
  if (best && k > provenUpTo) {
    const ground = makeContext({ ...given, work: { done: 0 }, workLimit: mendShare * given.workLimit })
    best = mendCorners(slab, best, turns, ground, costs)
  }
  return best && { ...best, tree: replay(slab, best.tree, 0, 0, context) ?? best.tree, pourCount: k, bound, context }
}

/**
 * A plan of as few pours as there is one for, at most `mostExtra` more than `fewest`; null where none was found. Past the
 * fewest a quick look goes first: where joints may not lie anywhere it often finds nothing.
 */
export function searchPlan(
  slab: CutRegion,
  fewest: number,
  ground: SearchGround,
  budget: number,
  mostExtra = mostExtraPours,
): FoundPlan | null {
  const { rest, wished, ...shared } = ground
  const besideTee = teeCost(ground.beside, ground.weights)
  const planOf = (k: number, limit: number): FoundPlan | null => {
    const within = (workLimit: number, along: readonly Direction[]): FoundPlan | null =>
      searchCount(
        slab,
        makeContext({
          ...shared,
          meanM2: (slab.areaM2 + rest.areaM2) / (k + rest.pours),
          pours: k,
          wished: along,
          work: { done: 0 },
          workLimit,
          mostTurnedPours,
          besideTee,
        }),
      )
    // Twelve directions thin the proof out: half of the budget goes to the slab's own.
    const many = wished.length > mostDirections && k <= provenUpTo
    const plan = within(many ? limit / 2 : limit, wished)
    const others = many ? [within(limit / 2, [])] : []
    // Cuts that turn at openings can crowd out straight ones that would slide to a better place.
    if (k <= provenUpTo && limit > quickBudget) others.push(within(quickBudget, wished))
    let best = plan
    for (const other of others)
      if (other && (!best || other.cost < best.cost)) best = { ...other, bound: (plan ?? other).bound }
    return best
  }
  for (let k = fewest; k <= fewest + mostExtra; k++) {
    const quick = k === fewest || budget <= quickBudget ? null : planOf(k, quickBudget)
    if (k > fewest && budget > quickBudget && !quick) continue
    const plan = planOf(k, budget)
    if (plan) return quick && quick.cost < plan.cost ? { ...quick, bound: plan.bound } : plan
    if (quick) return quick
  }
  return null
}
