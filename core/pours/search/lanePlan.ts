/**
 * A plan in lanes: continuous strips no wider than one strike-off spans, each cut square into equal pours, their ends in
 * line from strip to strip where the slab lets them.
 */
import type { CutRegion } from '../region/cutRegion'
import { extentOf, minimumBox } from '../region/minimumBox'
import { alignJoints } from './alignJoints'
import { boundRest } from './bounds'
import type { CutTree } from './cutTree'
import { leavesOf } from './cutTree'
import { cutsOnLine } from './lineCuts'
import { replay } from './replay'
import { cutAtArea, evenShares, stripsOf } from './rowPlans'
import { type Direction, makeContext, type SearchContext } from './searchContext'
import type { FoundPlan, SearchGround } from './searchPlan'
import { teeCost } from './teeCost'
import { type PourCosts, treeCost } from './treeCost'

/** Pours beyond the fewest that a plan in lanes may take. */
const mostExtraPours = 6
const alignWork = 400_000
const roundOff = 1 + 1e-6

/** Pours for each lane, from below, each lane as wide as may be; null where one pour alone is wider. */
function widestLanes(slab: CutRegion, direction: Direction, widestM: number, context: SearchContext): number[] | null {
  const k = context.pours
  const each = slab.areaM2 / k
  const [low, high] = extentOf(slab.rings[0]!, -direction.uy, direction.ux)
  const counts: number[] = []
  let from = low
  for (let done = 0; done < k; ) {
    if (from + widestM >= high) {
      counts.push(k - done)
      break
    }
    const cuts = cutsOnLine(slab, direction, from + widestM, true, context)
    const cut = cuts.length === 1 ? cuts[0]! : null
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

export interface LanePlan {
  readonly plan: FoundPlan | null
  /** Where there is no plan: whether lanes would lie well but for what was asked of joints and pours. */
  readonly stopped: 'shape' | 'wishes' | null
}

/** Lanes over one face of a slab in at least `fewest` pours, along the first of the directions that has any. */
export function lanePlan(
  slab: CutRegion,
  fewest: number,
  directions: readonly Direction[],
  widestM: number,
  ground: SearchGround,
): LanePlan {
  const { rest, ...shared } = ground
  const { narrowM } = ground.weights
  const isMisfit = (pour: CutRegion): boolean => {
    const { shortM } = minimumBox(pour.rings[0]!)
    return shortM > widestM * roundOff || shortM < narrowM
  }
  let stopped: LanePlan['stopped'] = 'shape'
  for (let k = fewest; k <= fewest + mostExtraPours; k++) {
    const context = makeContext({
      ...shared,
      refuses: pour => isMisfit(pour) || (ground.refuses?.(pour) ?? false),
      meanM2: (slab.areaM2 + rest.areaM2) / (k + rest.pours),
      pours: k,
      work: { done: 0 },
      workLimit: alignWork,
      mostTurnedPours: 0,
      besideTee: teeCost(ground.beside, ground.weights),
    })
    const costs: PourCosts = new WeakMap()
    for (const direction of directions) {
      const widest = widestLanes(slab, direction, widestM, context)
      if (!widest) continue
      let best: { readonly tree: CutTree; readonly cost: number } | null = null
      for (const counts of [evenShares(k, widest.length), widest]) {
        const drawn = lanesOf(slab, direction, counts, context)
        if (!drawn || leavesOf(drawn).some(isMisfit)) continue
        const tree = replay(slab, drawn, 0, 0, context)
        if (!tree) stopped = 'wishes'
        const cost = tree ? treeCost(tree, context, costs) : Number.POSITIVE_INFINITY
        if (tree && cost < (best?.cost ?? Number.POSITIVE_INFINITY)) best = { tree, cost }
      }
      if (!best) continue
      const aligned = alignJoints(slab, best.tree, context, costs)
      const bound = boundRest(slab.areaM2, slab.perimeterM, k, context)
      return { plan: { ...aligned, pourCount: k, bound, context }, stopped: null }
    }
  }
  return { plan: null, stopped }
}
