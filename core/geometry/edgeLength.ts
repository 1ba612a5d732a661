import type { CurveEdge } from './curve'

/** Exact length of one edge in meters: the chord, or Rθ for an arc. */
export function edgeLength(edge: CurveEdge): number {
  if (edge.arc) return edge.arc.radiusM * Math.abs(edge.arc.sweepRad)
  return Math.hypot(edge.to[0] - edge.from[0], edge.to[1] - edge.from[1])
}
