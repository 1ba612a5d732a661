import type { Ring } from '../geometry/curve'
import { flatRingArea } from '../geometry/flatArea'

/** The ring as x0, y0, x1, y1 …, turned the way asked for: 1 counter-clockwise, −1 clockwise. */
export const flatRing = (ring: Ring, turn: 1 | -1): Float64Array => {
  const points = flatRingArea(ring) * turn < 0 ? [...ring].reverse() : ring
  const flat = new Float64Array(points.length * 2)
  points.forEach(([x, y], index) => {
    flat[2 * index] = x
    flat[2 * index + 1] = y
  })
  return flat
}
