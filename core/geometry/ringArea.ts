import type { Arc, CurveRegion, CurveRing } from './curve'

/**
 * θ − sin θ, from the series θ³/6 − θ⁵/120 + … below 0.2 rad where the difference would cancel
 * (first dropped term θ¹¹/11! < 6e-16 there).
 */
function thetaLessSine(theta: number): number {
  if (theta > 0.2) return theta - Math.sin(theta)
  const q = theta * theta
  return ((theta * q) / 6) * (1 - (q / 20) * (1 - (q / 42) * (1 - q / 72)))
}

/**
 * Signed area between an arc and its chord, m²: R²(θ − sin θ)/2, positive for a counter-clockwise arc.
 * Source: circular segment, CRC Standard Mathematical Tables (any edition), "Plane figures".
 */
export function segmentArea(arc: Arc): number {
  return (Math.sign(arc.sweepRad) * arc.radiusM * arc.radiusM * thetaLessSine(Math.abs(arc.sweepRad))) / 2
}

/** Exact signed area of a ring, m²: counter-clockwise positive. Coordinates are taken from the ring's first point. */
export function ringArea(ring: CurveRing): number {
  const first = ring[0]
  if (!first) return 0
  const [ox, oy] = first.from
  let twice = 0
  let segments = 0
  for (const { from, to, arc } of ring) {
    twice += (from[0] - ox) * (to[1] - oy) - (from[1] - oy) * (to[0] - ox)
    if (arc) segments += segmentArea(arc)
  }
  return twice / 2 + segments
}

/** Exact area of regions, m² (holes run clockwise and subtract themselves). */
export function curveArea(regions: readonly CurveRegion[]): number {
  let sum = 0
  for (const { outer, holes } of regions) {
    sum += ringArea(outer)
    for (const hole of holes) sum += ringArea(hole)
  }
  return sum
}
