/** What a split is asked by, and what it answers. */
import type { Pt } from '../../shared/document/primitives'
import type { Finding } from '../../shared/problem'
import type { CurveRegion } from '../geometry/curve'
import type { LoadGround } from './loadGround'
import type { GridLines } from './pourCost'
import type { Weights } from './weights'
import type { JointWishes } from './wishes/jointWishes'

export interface SplitInput {
  readonly slabId: string
  readonly part: 'whole' | 'field' | 'border'
  readonly region: CurveRegion
  readonly capM2: number
  /** Pours asked for; the fewest possible when absent. */
  readonly pourCount?: number
  /** Direction of the stamp pattern in the drawing, degrees counter-clockwise from drawing-right. */
  readonly patternDeg?: number
  /** 'any' allows twelve directions, 15° apart: for textures without a direction of their own. */
  readonly directions?: 'edges' | 'any'
  readonly weights?: Partial<Weights>
  /** Sides the search may visit; 'small' while dragging. Never a time. */
  readonly budget?: 'small' | 'full' | number
  readonly grid?: readonly GridLines[]
  /** What trucks cost by the area of a pour; free when absent. */
  readonly loads?: LoadGround
  /** Where joints have to lie, may not lie or are out of sight. */
  readonly wishes?: JointWishes
  /** Lays the pours out in lanes no wider than this (m) instead of searching. */
  readonly laneM?: number
}

export interface CostTerm {
  readonly term: string
  /** Feet of joint. */
  readonly value: number
}

export interface ProposedPour {
  readonly region: CurveRegion
  readonly areaM2: number
  /** Length ÷ width of the least rectangle around the pour. */
  readonly aspect: number
  /** Sharpest true corner; null where the pour has none. */
  readonly minCornerDeg: number | null
  /** What this pour adds to the cost of the plan; a joint counts by half. Absent where nothing was split. */
  readonly cost?: readonly CostTerm[]
}

export interface ProposedJoint {
  readonly from: Pt
  readonly to: Pt
  readonly lengthM: number
  /** Indices of the pours along it. */
  readonly pours: readonly number[]
  /** The required line it lies on. */
  readonly wishId?: string
}

export interface Proposal {
  readonly pours: readonly ProposedPour[]
  readonly joints: readonly ProposedJoint[]
  /** Fewest pours the area needs. */
  readonly lowerBound: number
  /** Feet of joint by term of the weight table; they sum to totalCost. */
  readonly cost: readonly CostTerm[]
  readonly totalCost: number
  /** True when no plan made of the candidate cuts is cheaper. */
  readonly proven: boolean
  /** How far the plan may be above the cheapest, as a share of its cost; 0 when proven. */
  readonly gap: number
  readonly findings: readonly Finding[]
}

/** The same pours as before, so that what hangs on their regions is not done again. */
export const keepRegions = (now: Proposal, before: Proposal): Proposal => ({
  ...now,
  pours: now.pours.map((pour, i) => ({ ...pour, region: before.pours[i]!.region })),
  joints: before.joints,
})
