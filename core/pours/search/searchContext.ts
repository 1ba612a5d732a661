import type { CostContext } from '../pourCost'
import type { Work } from '../region/chords'
import type { CutRegion } from '../region/cutRegion'
import type { JointLine } from './cutTree'

/** Everything a search for one plan of pours shares. */
export interface SearchContext extends CostContext {
  /** Pours in the whole plan. */
  readonly pours: number
  /** Unit vectors joints may follow besides those found on each part. */
  readonly wished: readonly Direction[]
  readonly work: Work
  /** Sides the search may visit before it settles for what it has. */
  readonly workLimit: number
  /** Cuts that turn at an opening are tried for parts of at most as many pours: they take time. */
  readonly mostTurnedPours: number
  /** Where a joint may not lie. */
  readonly forbidden: ForbiddenGround | null
  /** True for a pour that may not be. */
  readonly refuses: ((pour: CutRegion) => boolean) | null
  /** Unit vectors tried after all others: along what hides a joint. */
  readonly along: readonly Direction[]
  /** Joints around the region that are planned already. */
  readonly beside: readonly JointLine[]
  /** What those cost as they meet one another. */
  readonly besideTee: number
}

export interface ForbiddenGround {
  forbids(ax: number, ay: number, bx: number, by: number, work: Work): boolean
  /** Offsets of lines along (ux, uy) that pass just beside it. */
  offsetsBeside(ux: number, uy: number): readonly number[]
}

export interface Direction {
  readonly ux: number
  readonly uy: number
}

/** All contexts are made here: code that reads objects of one make stays fast. */
export const makeContext = (of: SearchContext): SearchContext => ({
  weights: of.weights,
  capM2: of.capM2,
  meanM2: of.meanM2,
  slabWidthM: of.slabWidthM,
  grid: of.grid,
  wishes: of.wishes,
  loads: of.loads,
  site: of.site,
  pours: of.pours,
  wished: of.wished,
  work: of.work,
  workLimit: of.workLimit,
  mostTurnedPours: of.mostTurnedPours,
  forbidden: of.forbidden,
  refuses: of.refuses,
  along: of.along,
  beside: of.beside,
  besideTee: of.besideTee,
})

/** Fewest pours an area needs; an area of exactly n caps needs n. */
export const poursNeeded = (areaM2: number, capM2: number): number => Math.max(1, Math.ceil(areaM2 / capM2 - 1e-9))
