/** The outline of the eaves: the footprint moved out by the overhang with mitered corners. */
import type { Pt } from '../../shared/document/primitives'
import { unionNonZero } from '../geometry/clip'
import type { Region, Ring } from '../geometry/curve'

const outward = (ring: Ring, index: number): Pt => {
  const [x, y] = ring[index]!
  const [nx, ny] = ring[(index + 1) % ring.length]!
  const length = Math.hypot(nx - x, ny - y)
  return [(ny - y) / length, (x - nx) / length]
}

/** Where the lines of two sides, both moved out, cross. Null if they run the same way. */
const miter = (at: Pt, a: Pt, b: Pt, outM: number): Pt | null => {
  const spread = 1 + a[0] * b[0] + a[1] * b[1]
  if (spread < 1e-9) return null
  return [at[0] + (outM * (a[0] + b[0])) / spread, at[1] + (outM * (a[1] + b[1])) / spread]
}

/**
 * The ring moved out, corner by corner: side i of the answer is side i of the ring.
 * @param ring simple, counter-clockwise, no repeated points
 * @returns null where a side would turn round (a notch narrower than the eaves) or a corner has no miter
 */
export const moveOut = (ring: Ring, outM: number): Ring | null => {
  const count = ring.length
  const normals = ring.map((_, index) => outward(ring, index))
  const moved: Pt[] = []
  for (let i = 0; i < count; i++) {
    const point = miter(ring[i]!, normals[(i + count - 1) % count]!, normals[i]!, outM)
    if (point === null) return null
    moved.push(point)
  }
  for (let i = 0; i < count; i++) {
    const [x, y] = ring[i]!
    const [nx, ny] = ring[(i + 1) % count]!
    const [mx, my] = moved[i]!
    const [mnx, mny] = moved[(i + 1) % count]!
    if ((mnx - mx) * (nx - x) + (mny - my) * (ny - y) <= 0) return null
  }
  return moved
}

/**
 * The eaves as regions: ring, a strip along each side and a mitered corner at each convex vertex, as one. Holds where
 * eaves meet across a notch, which may leave a hole.
 */
export const eaveOutline = (ring: Ring, outM: number): Region[] => {
  const count = ring.length
  const parts: Ring[] = [ring]
  const normals = ring.map((_, index) => outward(ring, index))
  for (let i = 0; i < count; i++) {
    const at = ring[i]!
    const next = ring[(i + 1) % count]!
    const a = normals[(i + count - 1) % count]!
    const b = normals[i]!
    const shift = (point: Pt, normal: Pt): Pt => [point[0] + normal[0] * outM, point[1] + normal[1] * outM]
    parts.push([at, shift(at, b), shift(next, b), next])
    const corner = miter(at, a, b, outM)
    if (a[0] * b[1] - a[1] * b[0] > 0 && corner !== null) parts.push([at, shift(at, a), corner, shift(at, b)])
  }
  return unionNonZero(parts)
}
