/** The search for one plan: a beam over cut trees, aligned joints, and for few pours the proof. */
import type { CostContext } from '../pourCost'
import type { CutRegion } from '../region/cutRegion'
import { type DivideState, divide } from './divide'
import { type Replayed, replay } from './replay'
import type { Direction, SearchContext } from './searchContext'

export interface FoundPlan {
  readonly made: Replayed
  readonly pourCount: number
  /** No plan of as many pours from the candidate cuts costs less than this (feet of joint); null when not known. */
  readonly bound: number | null
}

const beamBreadth = (k: number): number => (k <= 2 ? 10 : k <= 4 ? 6 : k <= 8 ? 3 : k <= 24 ? 2 : 1)
/** Pours tried beyond the fewest before the search gives up. */
const mostExtraPours = 4

export function searchPlan(
  slab: CutRegion,
  fewest: number,
  base: Omit<CostContext, 'meanM2'>,
  wished: readonly Direction[],
  budget: number,
  forbids: SearchContext['forbids'],
): FoundPlan | null {
  for (let k = fewest; k <= fewest + mostExtraPours; k++) {
    const work = { done: 0 }
    const context: SearchContext = {
      ...base,
      meanM2: slab.areaM2 / k,
      pours: k,
      wished,
      work,
      workLimit: budget,
      forbids,
    }
    const state: DivideState = {
      context,
      options: { all: false, breadth: beamBreadth },
      known: new Map(),
      complete: true,
    }
    const found = divide(slab, k, Number.POSITIVE_INFINITY, state)
    const made = found && replay(slab, found.tree, null, context)
    if (made) return { made, pourCount: k, bound: null }
  }
  return null
}
