import type { Region, Ring } from './curve'

/** Signed area of a flat ring, m²: counter-clockwise positive. Coordinates are taken from the first point. */
export function flatRingArea(ring: Ring): number {
  const first = ring[0]
  const last = ring[ring.length - 1]
  if (!first || !last) return 0
  const [ox, oy] = first
  let twice = 0
  let px = last[0] - ox
  let py = last[1] - oy
  for (const p of ring) {
    const qx = p[0] - ox
    const qy = p[1] - oy
    twice += px * qy - py * qx
    px = qx
    py = qy
  }
  return twice / 2
}

/** Area of flat regions, m² (holes run clockwise and subtract themselves). */
export function flatArea(regions: readonly Region[]): number {
  let sum = 0
  for (const { ring, holes } of regions) {
    sum += flatRingArea(ring)
    for (const hole of holes) sum += flatRingArea(hole)
  }
  return sum
}
