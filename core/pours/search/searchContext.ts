import type { CostContext } from '../pourCost'
import type { Work } from '../region/chords'

/** Everything a search for one plan of pours shares. */
export interface SearchContext extends CostContext {
  /** Pours in the whole plan. */
  readonly pours: number
  /** Unit vectors joints may follow besides those found on each part. */
  readonly wished: readonly Direction[]
  readonly work: Work
  /** Sides the search may visit before it settles for what it has. */
  readonly workLimit: number
  /** True when a joint may not lie there. */
  readonly forbids: ((ax: number, ay: number, bx: number, by: number) => boolean) | null
}

export interface Direction {
  readonly ux: number
  readonly uy: number
}

/** Fewest pours an area needs; an area of exactly n caps needs n. */
export const poursNeeded = (areaM2: number, capM2: number): number => Math.max(1, Math.ceil(areaM2 / capM2 - 1e-9))
