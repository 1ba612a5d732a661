/**
 * Recursive division of a part into k pours. With a narrow beam it is a quick search; with `all` it tries every
 * candidate and gives up a branch only when its bound is no better than the best plan: then the answer is the optimum
 * over the candidate cuts.
 */
import { ftM, pourCost } from '../pourCost'
import { splitAtCut } from '../region/cut'
import type { CutRegion } from '../region/cutRegion'
import { leastJointCost } from '../wishes/wishCost'
import { boundPart, boundRest, estimateRest } from './bounds'
import { type Candidate, candidateCuts } from './candidates'
import type { CutTree } from './cutTree'
import { directionsOf, mostDirections } from './directions'
import type { SearchContext } from './searchContext'

export interface Division {
  readonly tree: CutTree
  readonly cost: number
}

interface Known {
  readonly best: Division | null
  /** The search below this cost was made. */
  readonly below: number
  readonly isComplete: boolean
}

export interface DivideOptions {
  readonly all: boolean
  /** Widest beam at the root; deeper levels are narrower. */
  readonly breadth: (k: number) => number
}

export interface DivideState {
  readonly context: SearchContext
  readonly options: DivideOptions
  readonly known: Map<string, Known>
  /** False once a branch was left out for want of budget. */
  complete: boolean
  /** No division of the first part costs less, as far as those left out can tell. */
  least: number
}

export const startDividing = (context: SearchContext, options: DivideOptions): DivideState => ({
  ...{ context, options, known: new Map() },
  complete: true,
  least: 0,
})

const capSlack = 1 + 1e-9
/** How much dearer than the cheapest a division may be to be aligned as well. */
export const nearShare = 0.06
/** Work of judging one pour, in visits of each of its sides. */
const pourCostWork = 12

/** Work a pour beyond the budget where joints or pours may not be anywhere: such a search may never find a thing. */
const lastWork = 15_000

const isHopeless = ({ forbidden, refuses, work, workLimit, pours }: SearchContext): boolean =>
  (forbidden !== null || refuses !== null) && work.done > workLimit + lastWork * pours

/** Names a part by its corners to 10 µm, whatever ring start or order of cuts led to it. */
function nameOf(region: CutRegion, k: number): string {
  let a = 0
  let b = 0
  for (const ring of region.rings)
    for (const side of ring.sides) {
      const x = Math.round((side.x - region.ox) * 1e5)
      const y = Math.round((side.y - region.oy) * 1e5)
      const h = Math.imul(x, 0x9e3779b1) ^ Math.imul(y ^ (x >>> 15), 0x85ebca6b)
      a = (a + Math.imul(h ^ (h >>> 13), 0xc2b2ae35)) | 0
      b = (b + Math.imul(h ^ (h >>> 16), 0x27d4eb2f)) | 0
    }
  return `${k}:${a}:${b}:${Math.round(region.areaM2 * 1e3)}`
}

/** Keeps the best of each direction and split, so that one family does not fill the list. */
function diverse(cuts: readonly Candidate[], most: number): Candidate[] {
  const kept: Candidate[] = []
  const counts = new Map<number, number>()
  const quota = Math.max(3, most / 4)
  for (const cut of cuts) {
    const family = cut.family * 1000 + Math.min(cut.upPours, cut.lowPours)
    const count = counts.get(family) ?? 0
    if (count >= quota) continue
    counts.set(family, count + 1)
    kept.push(cut)
    if (kept.length >= most) break
  }
  return kept
}

interface Looked {
  /** Of a pour; not a number for a part still to be divided. */
  readonly cost: number
  readonly estimate: number
  readonly bound: number
}

interface Opened {
  readonly cut: Candidate
  readonly up: CutRegion
  readonly low: CutRegion
  /** Cost that belongs to the cut itself. */
  readonly own: number
  /** Costs of the parts that are pours. */
  readonly upCost: number
  readonly lowCost: number
  /** The lower part costs no less. */
  readonly lowBound: number
  readonly estimate: number
  readonly bound: number
}

/** Cost a part brings along: half of the joints around it. */
const carried = (part: CutRegion, context: SearchContext): number =>
  (leastJointCost(context.wishes, context.weights) * part.jointM) / 2 / ftM

function open(region: CutRegion, cut: Candidate, context: SearchContext, below: number): Opened {
  const { up, low } = splitAtCut(region, cut.chain, cut.measure, 0)
  const own = context.weights.extraJoint * (cut.chain.length - 1)
  const look = (part: CutRegion, k: number): Looked => {
    const sides = part.rings.reduce((n, ring) => n + ring.sides.length, 0)
    context.work.done += sides
    if (k === 1) {
      context.work.done += pourCostWork * sides
      const cost = pourCost(part, context)
      return { cost, estimate: cost, bound: cost }
    }
    const has = carried(part, context)
    const { areaM2, perimeterM } = part
    return {
      cost: Number.NaN,
      estimate: has + estimateRest(areaM2, perimeterM, k, context),
      bound: has + boundRest(areaM2, perimeterM, k, context),
    }
  }
  const one = look(up, cut.upPours)
  const other = look(low, cut.lowPours)
  const estimate = own + one.estimate + other.estimate
  // The closer look is taken where the quick one does not rule the cut out.
  const closer = (part: CutRegion, k: number, has: number, beside: number): number =>
    k === 1 || own + has + beside >= below ? has : carried(part, context) + boundPart(part, k, context)
  const upBound = closer(up, cut.upPours, one.bound, other.bound)
  const lowBound = closer(low, cut.lowPours, other.bound, upBound)
  const bound = own + upBound + lowBound
  return { cut, up, low, own, upCost: one.cost, lowCost: other.cost, lowBound, estimate, bound }
}

/** The cuts to follow, best first; a quick search opens a short list to see which are really best. */
function* opened(
  region: CutRegion,
  cuts: readonly Candidate[],
  breadth: number,
  state: DivideState,
  best: { below: number },
  isFirst: boolean,
) {
  const { context, options } = state
  const has = carried(region, context)
  if (options.all) {
    const hopeful = cuts.filter(cut => has + cut.bound < best.below)
    if (isFirst) {
      // What is left out when the budget ends is then what costs most.
      const list = hopeful.map(cut => open(region, cut, context, best.below))
      yield* list.sort((a, b) => a.bound - b.bound)
    } else for (const cut of hopeful) if (has + cut.bound < best.below) yield open(region, cut, context, best.below)
    return
  }
  const list = diverse(cuts, Math.max(6, breadth * 3)).map(cut => open(region, cut, context, 0))
  yield* list.sort((a, b) => a.estimate - b.estimate)
}

/** The whole part as one pour; null where it may not be one, or costs `limit` or more. */
function asPour(pour: CutRegion, cost: number, limit: number, context: SearchContext): Division | null {
  if (pour.areaM2 > context.capM2 * capSlack || context.refuses?.(pour)) return null
  return cost < limit ? { tree: { pour }, cost } : null
}

/** Whether a part is looked at before the other: the one with fewer pours, then with less edge. */
function isAhead(part: CutRegion, pours: number, other: CutRegion, otherPours: number): boolean {
  return pours === otherPours ? part.perimeterM < other.perimeterM - 1e-6 : pours < otherPours
}

/** Both parts of a cut divided, below `limit` together; null where that cannot be. */
function follow(region: CutRegion, opened: Opened, limit: number, state: DivideState): Division | null {
  const { cut, up, low, own, upCost, lowCost, lowBound } = opened
  const part = (of: CutRegion, k: number, cost: number, below: number): Division | null =>
    k === 1 ? asPour(of, cost, below, state.context) : divide(of, k, below, state)
  // Which part comes first does not hang on the side from which the line is seen.
  const upFirst = isAhead(up, cut.upPours, low, cut.lowPours)
  const upBound = opened.bound - own - lowBound
  const ahead = upFirst
    ? part(up, cut.upPours, upCost, limit - own - lowBound)
    : part(low, cut.lowPours, lowCost, limit - own - upBound)
  if (!ahead) return null
  const rest = limit - own - ahead.cost
  const behind = upFirst ? part(low, cut.lowPours, lowCost, rest) : part(up, cut.upPours, upCost, rest)
  const [first, second] = upFirst ? [ahead, behind] : [behind, ahead]
  if (!first || !second) return null
  const cost = own + first.cost + second.cost
  if (cost >= limit - 1e-9) return null
  const { chain, measure, direction, upPours, lowPours } = cut
  const tree = { region, joint: 0, chain, measure, direction, upPours, lowPours, up: first.tree, low: second.tree }
  return { cost, tree }
}

/**
 * The cheapest division into k pours found below `limit`, or null. With `near`, every division found within `nearShare`
 * of the cheapest is put there too, one for each first cut.
 */
export function divide(
  region: CutRegion,
  k: number,
  limit: number,
  state: DivideState,
  near: Division[] | null = null,
): Division | null {
  const { context, options } = state
  if (k === 1) return asPour(region, pourCost(region, context), limit, context)
  const name = nameOf(region, k)
  const known = state.known.get(name)
  if (known && !near && (known.best || limit <= known.below)) {
    if (!known.isComplete) state.complete = false
    return known.best && known.best.cost < limit ? known.best : null
  }
  const spent = context.work.done > context.workLimit
  // A plan is known already where there is a limit: without budget nothing more is tried.
  const isBound = options.all && near !== null
  if ((spent && !isBound && (options.all || limit < Number.POSITIVE_INFINITY)) || isHopeless(context)) {
    state.complete = false
    return null
  }
  const breadth = spent ? 1 : options.breadth(k)
  const most = spent || k > 24 ? 3 : k > 8 ? 4 : mostDirections
  const cuts = candidateCuts(region, k, directionsOf(region, context.wished, most, context.along), context)
  let best: Division | null = null
  const limits = { below: limit }
  let tried = 0
  let leftOut = Number.POSITIVE_INFINITY
  for (const cutOpen of opened(region, cuts, breadth, state, limits, near !== null)) {
    const { bound } = cutOpen
    if (!options.all && tried >= breadth && (best || tried >= breadth + 12)) break
    tried++
    if (bound >= limits.below) continue
    const wasComplete = state.complete
    state.complete = true
    const found = follow(region, cutOpen, limits.below, state)
    if (!state.complete) leftOut = Math.min(leftOut, bound)
    state.complete = state.complete && wasComplete
    if (!found) continue
    near?.push(found)
    if (!best || found.cost < best.cost) best = found
    limits.below = Math.min(limit, near ? best.cost * (1 + nearShare) : found.cost)
  }
  if (near) state.least = Math.min(best?.cost ?? limit, limit, leftOut)
  if (best || state.complete) state.known.set(name, { best, below: limit, isComplete: state.complete })
  return best
}
