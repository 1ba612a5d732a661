import type { Ring } from '../geometry/curve'

/** Twice the signed area of a ring, counter-clockwise positive. */
export const signedDoubleArea = (ring: Ring): number => {
  let sum = 0
  let [px, py] = ring.at(-1) ?? [0, 0]
  for (const [x, y] of ring) {
    sum += px * y - x * py
    px = x
    py = y
  }
  return sum
}

/** The ring as x0, y0, x1, y1 …, turned the way asked for: 1 counter-clockwise, −1 clockwise. */
export const flatRing = (ring: Ring, turn: 1 | -1): Float64Array => {
  const points = signedDoubleArea(ring) * turn < 0 ? [...ring].reverse() : ring
  const flat = new Float64Array(points.length * 2)
  points.forEach(([x, y], index) => {
    flat[2 * index] = x
    flat[2 * index + 1] = y
  })
  return flat
}
