import type { Pt } from '../../shared/document/primitives'
import { sweepCovers } from './bounds'
import type { CurveEdge, CurveRegion, CurveRing, Region, Ring } from './curve'
import { angleFrom } from './edgeAt'
import { segmentDistance } from './segmentDistance'

/** True where the point lies left of the upward chord, or right of it for a downward one: the crossing test of a ray to +x. */
function chordCrossed(a: Pt, b: Pt, x: number, y: number): boolean {
  if (a[1] > y === b[1] > y) return false
  const side = (b[0] - a[0]) * (y - a[1]) - (x - a[0]) * (b[1] - a[1])
  return b[1] > a[1] ? side > 0 : side < 0
}

/** True where the point lies between an arc and its chord. A point on the chord goes the way the crossing test sends it: to +x, else +y. */
function inSegment({ from, to, arc }: CurveEdge, p: Pt): boolean {
  if (!arc) return false
  const [cx, cy] = arc.center
  if (Math.hypot(p[0] - cx, p[1] - cy) >= arc.radiusM) return false
  const dx = to[0] - from[0]
  const dy = to[1] - from[1]
  const side = dx * (p[1] - from[1]) - dy * (p[0] - from[0]) || -dy || dx
  return arc.sweepRad > 0 ? side < 0 : side > 0
}

/**
 * True where the point lies inside the ring, exact on arcs (even-odd rule). A point on the boundary may fall either way.
 * Each circular segment toggles the answer of the chords' polygon.
 */
export function ringContains(ring: CurveRing, p: Pt): boolean {
  let inside = false
  for (const edge of ring) {
    if (chordCrossed(edge.from, edge.to, p[0], p[1])) inside = !inside
    if (inSegment(edge, p)) inside = !inside
  }
  return inside
}

/** True where the point lies in the region and in none of its holes. */
export function regionContains(region: CurveRegion, p: Pt): boolean {
  return ringContains(region.outer, p) && !region.holes.some(h => ringContains(h, p))
}

/** The even-odd test for a flat ring. */
export function flatRingContains(ring: Ring, p: Pt): boolean {
  let inside = false
  let a = ring[ring.length - 1]
  for (const b of ring) {
    if (a && chordCrossed(a, b, p[0], p[1])) inside = !inside
    a = b
  }
  return inside
}

export function flatRegionContains(region: Region, p: Pt): boolean {
  return flatRingContains(region.ring, p) && !region.holes.some(h => flatRingContains(h, p))
}

/** Distance from a point to the nearest point of an edge, meters. */
export function distanceToEdge({ from, to, arc }: CurveEdge, p: Pt): number {
  if (arc) {
    const [cx, cy] = arc.center
    if (sweepCovers(angleFrom(arc.center, from), arc.sweepRad, angleFrom(arc.center, p)))
      return Math.abs(Math.hypot(p[0] - cx, p[1] - cy) - arc.radiusM)
    return Math.min(Math.hypot(p[0] - from[0], p[1] - from[1]), Math.hypot(p[0] - to[0], p[1] - to[1]))
  }
  return segmentDistance(p[0], p[1], from[0], from[1], to[0], to[1])
}
