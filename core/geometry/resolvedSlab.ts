/** What a slab is once its arcs, roundings, openings, borders, bands and insets are worked out. */
import type { Opening, Placed } from '../../shared/document/slab'
import type { Finding } from '../../shared/problem'
import type { CurveEdge, CurveRegion, CurveRing } from './curve'

export interface ResolvedOpening {
  readonly id: string
  readonly kind: Opening['kind']
  readonly pool?: Opening['pool']
  /** Clockwise. */
  readonly ring: CurveRing
  readonly areaM2: number
  readonly perimeterM: number
}

/** A part of the slab with a finish of its own. `areaM2` is what it claims: no square meter is claimed twice. */
export interface Claim {
  readonly id: string
  readonly finishId: string
  readonly placed: Placed
  readonly shape: readonly CurveRegion[]
  readonly areaM2: number
  /** True where a part had to keep chords (≤ 0.1 mm from the arc). */
  readonly chordsKept: boolean
}

export interface ResolvedBorder extends Claim {
  readonly pathId: string
  readonly widthM: number
  /** What it starts from: the bordered edges, or the inner sides of the borders outside it. */
  readonly outerSide: readonly CurveEdge[]
  readonly outerLengthM: number
  /** Length of the band's inner boundary inside the slab. */
  readonly innerLengthM: number
  /** Length of the half-width offset, clipped to the slab. */
  readonly centerLengthM: number
}

export interface ResolvedBand extends Claim {
  readonly widthM: number
  /** Length of its center line inside the slab. */
  readonly lengthM: number
}

export interface ResolvedSlab {
  readonly id: string
  readonly name: string
  readonly levelM: number
  readonly finishId: string
  readonly outline: CurveRing
  readonly openings: readonly ResolvedOpening[]
  /** Outline less openings; one region unless an opening cuts the slab in two (then a finding says so). */
  readonly net: readonly CurveRegion[]
  readonly grossAreaM2: number
  readonly openingAreaM2: number
  readonly netAreaM2: number
  readonly perimeterM: number
  readonly openingPerimeterM: number
  readonly borders: readonly ResolvedBorder[]
  readonly bands: readonly ResolvedBand[]
  readonly insets: readonly Claim[]
  readonly field: readonly CurveRegion[]
  readonly fieldAreaM2: number
  readonly findings: readonly Finding[]
}
