/** What a part still to be divided will cost: an estimate to order the candidates, a bound to end the search. */

import { leastLoadCost } from '../loadGround'
import { aspectCost, ftM, imbalanceCost, reachCost, reentrantAboveDeg } from '../pourCost'
import { type CutRegion, interiorDegs } from '../region/cutRegion'
import type { Weights } from '../weights'
import { leastJointCost } from '../wishes/wishCost'
import type { SearchContext } from './searchContext'
import { leastSeparation, separationOf } from './separation'
import { sidesBound } from './sidesBound'

/**
 * Cost of k equal cells in rows, r rows along one side of the rectangle that has the part's area and perimeter. Whole
 * rows matter: a part one and a half cells high divides badly, which equal squares do not show.
 */
function rowsCost(areaM2: number, perimeterM: number, k: number, w: Weights): number {
  const half = perimeterM / 4
  const root = Math.sqrt(Math.max(0, half * half - areaM2))
  const long = root > 0 ? half + root : Math.sqrt(areaM2)
  const short = areaM2 / long
  let best = Number.POSITIVE_INFINITY
  for (const [a, b] of [
    [long, short],
    [short, long],
  ] as const) {
    const ideal = Math.sqrt((k * b) / a)
    for (const rows of [Math.floor(ideal), Math.ceil(ideal)]) {
      if (rows < 1 || rows > k) continue
      const high = b / rows
      const wide = (a * rows) / k
      const cost =
        (w.jointLength * ((rows - 1) * a + (k - rows) * high)) / ftM +
        k * (aspectCost(Math.max(high, wide) / Math.min(high, wide), w) + reachCost(wide, high, w))
      if (cost < best) best = cost
    }
  }
  return best
}

/**
 * Least joint that divides a part into k pieces of at most the cap, m. Each piece has at least the perimeter of the
 * circle of its area; Σ√a is concave, so it is least when as many pieces as possible are at the cap.
 */
function circleJointM(areaM2: number, perimeterM: number, k: number, capM2: number): number {
  if (k <= 1) return 0
  const full = Math.min(k - 1, Math.floor(areaM2 / capM2))
  const around = full * 2 * Math.sqrt(Math.PI * capM2) + 2 * Math.sqrt(Math.PI * Math.max(0, areaM2 - full * capM2))
  return Math.max(0, (around - perimeterM) / 2)
}

/** Both leave out what the part already carries: half of the joints around it. */
export const estimateRest = (areaM2: number, perimeterM: number, k: number, context: SearchContext): number =>
  (k === 1 ? 0 : rowsCost(areaM2, perimeterM, k, context.weights)) +
  imbalanceCost(areaM2, k, context) +
  (context.loads ? leastLoadCost(areaM2, k, context.loads) : 0)

/** The imbalance of k pieces is least when they are equal (Jensen). */
export const boundRest = (areaM2: number, perimeterM: number, k: number, context: SearchContext): number =>
  (leastJointCost(context.wishes, context.weights) * circleJointM(areaM2, perimeterM, k, context.capM2)) / ftM +
  imbalanceCost(areaM2, k, context) +
  (context.loads ? leastLoadCost(areaM2, k, context.loads) : 0)

/** Re-entrant corners that no end of a joint can meet: k − 1 cuts, each with one joint more for an opening it passes. */
function leastCornersLeft(part: CutRegion, k: number): number {
  let corners = 0
  for (const ring of part.rings) for (const deg of interiorDegs(ring)) if (deg > reentrantAboveDeg) corners++
  return Math.max(0, corners - 2 * (k - 1 + part.rings.length - 1))
}

/** Work of looking at a part's boundary for its bound, in sides visited. */
const separationWork = 60

/** `boundRest` of a part that is there to be looked at: tighter, and still never too much. k ≥ 2. */
export function boundPart(part: CutRegion, k: number, context: SearchContext): number {
  const { weights: w, capM2 } = context
  context.work.done += separationWork
  const loads = context.loads ? leastLoadCost(part.areaM2, k, context.loads) : 0
  // One pour as small as that, the others alike.
  const imbalance = (smallestM2: number): number =>
    imbalanceCost(smallestM2, 1, context) + imbalanceCost(part.areaM2 - smallestM2, k - 1, context)
  const joints = leastSeparation(
    separationOf(part),
    k,
    part.areaM2,
    capM2,
    leastJointCost(context.wishes, w) / ftM,
    imbalance,
    w.extraJoint,
  )
  return (
    Math.max(joints + loads, boundRest(part.areaM2, part.perimeterM, k, context)) +
    w.reentrantLeft * leastCornersLeft(part, k)
  )
}

/** The bound of a whole slab, looked at once: the tightest there is. 0 for one pour. */
export function boundSlab(slab: CutRegion, k: number, context: SearchContext): number {
  if (k < 2) return 0
  const { weights: w } = context
  const bySides = sidesBound(slab, k, leastJointCost(context.wishes, w) / ftM, context)
  const loads = context.loads ? leastLoadCost(slab.areaM2, k, context.loads) : 0
  return Math.max(boundPart(slab, k, context), bySides + loads + w.reentrantLeft * leastCornersLeft(slab, k))
}
