/** What a part still to be divided will cost: an estimate to order the candidates, a bound to end the search. */
import { ftM, imbalanceCost } from '../pourCost'
import type { SearchContext } from './searchContext'

/** Joint still to be made if k equal squares came out of it, m. */
const squareJointM = (areaM2: number, perimeterM: number, k: number): number =>
  k <= 1 ? 0 : Math.max(0, (4 * Math.sqrt(areaM2 * k) - perimeterM) / 2)

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
  (context.weights.jointLength * squareJointM(areaM2, perimeterM, k)) / ftM + imbalanceCost(areaM2, k, context)

/** The imbalance of k pieces is least when they are equal (Jensen). */
export const boundRest = (areaM2: number, perimeterM: number, k: number, context: SearchContext): number =>
  (context.weights.jointLength * circleJointM(areaM2, perimeterM, k, context.capM2)) / ftM +
  imbalanceCost(areaM2, k, context)
