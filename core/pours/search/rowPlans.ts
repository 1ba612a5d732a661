/**
 * Plans in rows: joints right across the slab, and each row between two of them cut square into equal pours. Long
 * straight joints with the ends of the short ones in line are what a foreman would draw.
 */

import { splitAtCut } from '../region/cut'
import type { CutRegion } from '../region/cutRegion'
import { extentOf } from '../region/minimumBox'
import type { CutTree } from './cutTree'
import { falsePosition } from './falsePosition'
import { cutsOnLine, type LineCut } from './lineCuts'
import type { Direction, SearchContext } from './searchContext'

/** Steps of the search for a line at an area. */
const mostSteps = 40
/** Rows at most this much longer or shorter than wide pours would have them are tried, as a factor. */
const looseness = 1.6

/** A line that touches an edge or a corner is tried again this far beside it (m). */
const asideM = 1e-5

/** The cut of one whole line across the region; null where the line meets it twice. */
export function wholeCut(
  region: CutRegion,
  direction: Direction,
  offset: number,
  context: SearchContext,
): LineCut | null {
  for (const aside of [0, asideM]) {
    const cuts = cutsOnLine(region, direction, offset + aside, true, context)
    if (cuts.length > 0) return cuts.length === 1 ? cuts[0]! : null
  }
  return null
}

/** The cut of one whole line across the region that leaves the area above it; null where the line meets it twice. */
export function cutAtArea(
  region: CutRegion,
  direction: Direction,
  areaM2: number,
  context: SearchContext,
): LineCut | null {
  const [low, high] = extentOf(region.rings[0]!, -direction.uy, direction.ux)
  const at = (offset: number) => {
    const cut = wholeCut(region, direction, offset, context)
    return cut && { found: cut, miss: cut.measure.upAreaM2 - areaM2 }
  }
  return falsePosition(
    { at: low, miss: region.areaM2 - areaM2 },
    { at: high, miss: -areaM2 },
    at,
    1e-9 * context.capM2,
    mostSteps,
  )
}

/** The region cut into parts of so many pours each by parallel lines, from below; `then` makes each part a tree. */
export function stripsOf(
  region: CutRegion,
  direction: Direction,
  counts: readonly number[],
  context: SearchContext,
  then: (part: CutRegion, count: number) => CutTree | null,
): CutTree | null {
  if (counts.length <= 1) return counts[0] === undefined ? null : then(region, counts[0])
  const sum = (list: readonly number[]): number => list.reduce((total, count) => total + count, 0)
  const halved = (half: number) => {
    const [below, above] = [counts.slice(0, half), counts.slice(half)]
    const [lowPours, upPours] = [sum(below), sum(above)]
    const cut = cutAtArea(region, direction, (region.areaM2 * upPours) / (lowPours + upPours), context)
    return cut && { cut, below, above, lowPours, upPours }
  }
  // Of two middles the shorter cut is made first, from whichever side the strips are counted.
  const one = halved(counts.length >> 1)
  const other = counts.length % 2 === 0 ? null : halved((counts.length + 1) >> 1)
  const first = one && other ? (other.cut.lengthM < one.cut.lengthM - 1e-6 ? other : one) : (one ?? other)
  if (!first) return null
  const { cut, below, above, lowPours, upPours } = first
  const faces = splitAtCut(region, cut.chain, cut.measure, 0)
  const up = stripsOf(faces.up, direction, above, context, then)
  const low = up && stripsOf(faces.low, direction, below, context, then)
  return low && { region, chain: cut.chain, measure: cut.measure, direction, joint: 0, upPours, lowPours, up, low }
}

/** k shared out among rows as evenly as can be, the fuller ones spread. */
function evenShares(k: number, rows: number): number[] {
  const upTo = (row: number): number => Math.floor((row * k) / rows + 0.5)
  return Array.from({ length: rows }, (_, i) => upTo(i + 1) - upTo(i))
}

/** k shared out among rows as evenly as can be, the fuller rows first, last or spread. */
export function sharesOf(k: number, rows: number): number[][] {
  const least = Math.floor(k / rows)
  const more = k - least * rows
  const first = Array.from({ length: rows }, (_, i) => (i < more ? least + 1 : least))
  if (more === 0) return [first]
  const spread = evenShares(k, rows)
  const all = [first, first.toReversed(), spread, spread.toReversed()]
  return all.filter((counts, i) => !all.slice(0, i).some(other => other.join() === counts.join()))
}

/**
 * Plans in rows along each of the directions, one after the other within the budget; none where no line crosses the slab
 * in one stretch.
 */
export function* rowPlans(
  slab: CutRegion,
  directions: readonly Direction[],
  context: SearchContext,
): Generator<CutTree> {
  const k = context.pours
  for (const { ux, uy } of directions) {
    const [low, high] = extentOf(slab.rings[0]!, -uy, ux)
    const [left, right] = extentOf(slab.rings[0]!, ux, uy)
    const ideal = Math.sqrt((k * (high - low)) / (right - left))
    const most = Math.min(k, Math.floor(ideal * looseness))
    for (let rows = Math.max(1, Math.ceil(ideal / looseness)); rows <= most; rows++)
      for (const counts of sharesOf(k, rows)) {
        if (context.work.done > context.workLimit) return
        const pours = (count: number): number[] => Array.from({ length: count }, () => 1)
        const across = { ux: -uy, uy: ux }
        const plan = stripsOf(slab, { ux, uy }, counts, context, (row, count) =>
          stripsOf(row, across, pours(count), context, pour => ({ pour })),
        )
        if (plan) yield plan
      }
  }
}
