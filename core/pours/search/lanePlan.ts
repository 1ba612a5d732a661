/**
 * A plan in lanes: continuous strips no wider than one strike-off spans, each cut square into equal pours, their ends in
 * line from strip to strip where the slab lets them.
 */

import { splitAtCut } from '../region/cut'
import type { CutRegion } from '../region/cutRegion'
import { extentOf, minimumBox } from '../region/minimumBox'
import { alignJoints } from './alignJoints'
import { boundSlab } from './bounds'
import { type CutTree, leavesOf } from './cutTree'
import { forbidding, sharpCorners } from './mendCorners'
import { replay } from './replay'
import { cutAtArea, sharesOf, stripsOf, wholeCut } from './rowPlans'
import { type Direction, makeContext, type SearchContext } from './searchContext'
import type { FoundPlan, SearchGround } from './searchPlan'
import type { Settled } from './settled'
import { teeCost } from './teeCost'
import { type PourCosts, treeCost } from './treeCost'

/** Pours beyond the fewest that a plan in lanes may take. */
const mostExtraPours = 6
/** Pours more that lanes may take to be no sliver and to have no corner under 60°. */
const mostForGood = 2
/** A lane less wide than this share of what the strike-off spans is a sliver. */
const sliverShare = 0.5
/** Of lanes with as many pours those with fewer bad ones are taken, unless dearer by this for each (feet of joint). */
const badCost = 60
const alignWork = 400_000
const roundOff = 1 + 1e-6

/** Pours for each lane, from below, each lane as wide as may be; null where one pour alone is wider. */
function widestLanes(
  slab: CutRegion,
  k: number,
  direction: Direction,
  widestM: number,
  context: SearchContext,
): number[] | null {
  const each = slab.areaM2 / k
  const [low, high] = extentOf(slab.rings[0]!, -direction.uy, direction.ux)
  const counts: number[] = []
  let from = low
  for (let done = 0; done < k; ) {
    if (from + widestM >= high) {
      counts.push(k - done)
      break
    }
    const cut = wholeCut(slab, direction, from + widestM, context)
    const upTo = cut ? Math.floor(cut.measure.lowAreaM2 / each + 1e-6) : done
    if (!cut || upTo <= done) return null
    counts.push(upTo - done)
    done = upTo
    const chord = done < k ? cutAtArea(slab, direction, each * (k - done), context)?.chain[0] : null
    if (!chord) return done < k ? null : counts
    from = -direction.uy * chord.a.x + direction.ux * chord.a.y
  }
  return counts
}

function lanesOf(slab: CutRegion, direction: Direction, counts: readonly number[], context: SearchContext) {
  const across = { ux: -direction.uy, uy: direction.ux }
  return stripsOf(slab, direction, counts, context, (lane, count) =>
    stripsOf(
      lane,
      across,
      Array.from({ length: count }, () => 1),
      context,
      pour => ({ pour }),
    ),
  )
}

/** How lanes lie. */
interface Lanes {
  readonly direction: Direction
  readonly widestM: number
  /** Looks at each pour. */
  readonly fits: (pour: CutRegion) => boolean
  readonly context: SearchContext
}

/** The lanes of a region in k pours, evenly shared out in any order and as wide as may be. */
function* lanesIn(region: CutRegion, k: number, lanes: Lanes): Generator<CutTree> {
  const { direction, widestM, fits, context } = lanes
  const widest = widestLanes(region, k, direction, widestM, context)
  if (!widest) return
  const shares = [...sharesOf(k, widest.length), widest, widest.toReversed()]
  for (const counts of shares.filter((own, i) => !shares.slice(0, i).some(other => other.join() === own.join()))) {
    const tree = lanesOf(region, direction, counts, context)
    if (tree && leavesOf(tree).every(fits)) yield tree
  }
}

/** Lanes on either side of an opening that is wider than a lane: a joint through its middle parts them. */
function* lanesBeside(region: CutRegion, k: number, lanes: Lanes): Generator<CutTree> {
  const { direction, widestM, context } = lanes
  const across = { ux: -direction.uy, uy: direction.ux }
  for (const hole of region.rings.slice(1)) {
    const [low, high] = extentOf(hole, across.ux, across.uy)
    if (high - low < widestM) continue
    const [from, to] = extentOf(hole, -across.uy, across.ux)
    const middle = wholeCut(region, across, (from + to) / 2, context)
    const upPours = middle ? Math.round((middle.measure.upAreaM2 * k) / region.areaM2) : 0
    const lowPours = k - upPours
    if (upPours < 1 || lowPours < 1) continue
    const cut = cutAtArea(region, across, (region.areaM2 * upPours) / k, context)
    if (!cut) continue
    const faces = splitAtCut(region, cut.chain, cut.measure, 0)
    const lows = [...lanesIn(faces.low, lowPours, lanes)]
    for (const up of lanesIn(faces.up, upPours, lanes))
      for (const below of lows)
        yield {
          ...{ region, chain: cut.chain, measure: cut.measure, direction: across, joint: 0 },
          ...{ upPours, lowPours, up, low: below },
        }
  }
}

export interface LanePlan {
  readonly plan: FoundPlan | null
  /** Where there is no plan: whether lanes would lie well but for what was asked of joints and pours. */
  readonly stopped: 'shape' | 'wishes' | null
}

/**
 * Lanes over one face of a slab in at least `fewest` pours, along the first of the directions that has any: those
 * without slivers and corners under 60° where few pours more do, else those with the fewest.
 */
export function lanePlan(
  slab: CutRegion,
  fewest: number,
  directions: readonly Direction[],
  widestM: number,
  asked: SearchGround,
): LanePlan {
  const { rest, ...shared } = asked
  const { narrowM } = asked.weights
  const isMisfit = (pour: CutRegion): boolean => {
    const { shortM } = minimumBox(pour.rings[0]!)
    return shortM > widestM * roundOff || shortM < narrowM
  }
  const sliverM = Math.min(sliverShare * widestM, asked.slabWidthM)
  const isGood = (pour: CutRegion): boolean =>
    minimumBox(pour.rings[0]!).shortM * roundOff >= sliverM && sharpCorners(pour, asked.weights.acuteBelowDeg) === 0
  const badIn = (tree: CutTree): number => leavesOf(tree).filter(pour => !isGood(pour)).length
  let stopped: LanePlan['stopped'] = 'shape'
  let least: { readonly plan: FoundPlan; readonly bad: number } | null = null
  let first = Number.POSITIVE_INFINITY
  for (let k = fewest; k <= fewest + mostExtraPours; k++) {
    if (k > first + mostForGood) break
    const ground = makeContext({
      ...shared,
      refuses: pour => isMisfit(pour) || (asked.refuses?.(pour) ?? false),
      meanM2: (slab.areaM2 + rest.areaM2) / (k + rest.pours),
      pours: k,
      work: { done: 0 },
      workLimit: alignWork,
      mostTurnedPours: 0,
      besideTee: teeCost(asked.beside, asked.weights),
    })
    // Lanes have few ways to lie: of them the one without corners under 60° is taken, whatever it costs.
    const context = makeContext({ ...ground, weights: { ...asked.weights, ...forbidding } })
    const costs: PourCosts = new WeakMap()
    const fits = (pour: CutRegion): boolean => !isMisfit(pour)
    for (const direction of directions) {
      let best: Settled | null = null
      for (const lanes of [lanesIn, lanesBeside])
        for (const drawn of best ? [] : lanes(slab, k, { direction, widestM, fits, context })) {
          const tree = replay(slab, drawn, 0, 0, context)
          if (!tree) stopped = 'wishes'
          const cost = tree ? treeCost(tree, context, costs) + badCost * badIn(tree) : Number.POSITIVE_INFINITY
          if (tree && cost < (best?.cost ?? Number.POSITIVE_INFINITY)) best = { tree, cost }
        }
      if (!best) continue
      const { tree } = alignJoints(slab, best.tree, context, costs)
      const bound = boundSlab(slab, k, ground)
      const cost = treeCost(tree, ground, new WeakMap())
      const plan = { tree, cost, pourCount: k, bound, context: ground }
      const bad = badIn(tree)
      if (bad === 0) return { plan, stopped: null }
      if (!least || bad < least.bad) least = { plan, bad }
      first = Math.min(first, k)
    }
  }
  return { plan: least?.plan ?? null, stopped: least ? null : stopped }
}
