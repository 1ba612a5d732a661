/** Shapes with exact arcs, in drawing-frame meters, and their flat counterparts. */
import type { Pt } from '../../shared/document/primitives'

/** A circular arc; `sweepRad` > 0 runs counter-clockwise. */
export interface Arc {
  readonly center: Pt
  readonly radiusM: number
  readonly sweepRad: number
}

/** One resolved edge. A rounding arc has the id `${vertexId}~`. */
export interface CurveEdge {
  readonly edgeId: string
  readonly from: Pt
  readonly to: Pt
  readonly arc?: Arc
}

/** Closed: each edge starts where the one before ends. */
export type CurveRing = readonly CurveEdge[]

/** Outer ring counter-clockwise, holes clockwise: the material lies on the left of every edge. */
export interface CurveRegion {
  readonly outer: CurveRing
  readonly holes: readonly CurveRing[]
}

/** A flat ring, open (the first point is not repeated). */
export type Ring = readonly Pt[]

/** Outer ring counter-clockwise, holes clockwise. */
export interface Region {
  readonly ring: Ring
  readonly holes: readonly Ring[]
}
