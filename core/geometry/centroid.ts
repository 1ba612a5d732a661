import type { Pt } from '../../shared/document/primitives'
import type { CurveRegion } from './curve'
import { ringArea, segmentArea } from './ringArea'

/**
 * Center of area of regions, exact on arcs; undefined where they have no area.
 * Triangles from a local origin, plus each circular segment, whose center lies 4R sin³(θ/2) / (3(θ − sin θ)) from the
 * arc's center. Source: centroid of a circular segment, CRC Standard Mathematical Tables.
 */
export function centroid(regions: readonly CurveRegion[]): Pt | undefined {
  const origin = regions[0]?.outer[0]?.from
  if (!origin) return undefined
  const [ox, oy] = origin
  let area = 0
  let mx = 0
  let my = 0
  for (const { outer, holes } of regions)
    for (const ring of [outer, ...holes]) {
      area += ringArea(ring)
      for (const { from, to, arc } of ring) {
        const ax = from[0] - ox
        const ay = from[1] - oy
        const bx = to[0] - ox
        const by = to[1] - oy
        const twice = ax * by - ay * bx
        mx += (twice * (ax + bx)) / 6
        my += (twice * (ay + by)) / 6
        if (!arc) continue
        const segment = segmentArea(arc)
        // moment about the arc's center: 2/3 (R sin(θ/2))³ along the bisector, which stands right of the chord
        const chord = Math.hypot(bx - ax, by - ay)
        const moment = Math.sign(arc.sweepRad) * (2 / 3) * (arc.radiusM * Math.sin(Math.abs(arc.sweepRad) / 2)) ** 3
        const way = Math.sign(arc.sweepRad)
        const nx = chord > 0 ? (way * (by - ay)) / chord : 0
        const ny = chord > 0 ? (-way * (bx - ax)) / chord : 0
        mx += segment * (arc.center[0] - ox) + moment * nx
        my += segment * (arc.center[1] - oy) + moment * ny
      }
    }
  return Math.abs(area) > 0 ? [ox + mx / area, oy + my / area] : undefined
}
