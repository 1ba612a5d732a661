/**
 * The shadow cycle of an upright solid: the ring swept along [0, s], as one closed curve whose non-zero winding fill is
 * exactly the sum of ring and segment, for concave rings and (clockwise) holes alike. Edges whose outward normal looks
 * along s are shifted by s, the others stay; where they meet, ±s is inserted. Its winding number at p counts the
 * connected pieces of {p − t·s} inside the ring, so it is never negative.
 * Source: convolution method for Minkowski sums of polygons (CGAL User Manual, "2D Minkowski Sums").
 * @param ring x0, y0, x1, y1 …; outer counter-clockwise, holes clockwise
 * @param ox, oy shift of the whole ring (the shadow of its bottom)
 * @param sx, sy sweep from the shadow of the bottom to the shadow of the top
 * @param out receives the cycle from index `at` on; needs room for 4 numbers a vertex
 * @returns the index after the last number written
 */
export const sweepRing = (
  ring: Float64Array,
  ox: number,
  oy: number,
  sx: number,
  sy: number,
  out: Float64Array,
  at: number,
): number => {
  const count = ring.length
  let o = at
  let x = ring[0]!
  let y = ring[1]!
  let wasFar = (y - ring[count - 1]!) * sx - (x - ring[count - 2]!) * sy > 0
  for (let i = 0; i < count; i += 2) {
    const next = i + 2 < count ? i + 2 : 0
    const nx = ring[next]!
    const ny = ring[next + 1]!
    const isFar = (ny - y) * sx - (nx - x) * sy > 0
    const bx = x + ox
    const by = y + oy
    if (wasFar) {
      out[o++] = bx + sx
      out[o++] = by + sy
      if (!isFar) {
        out[o++] = bx
        out[o++] = by
      }
    } else {
      out[o++] = bx
      out[o++] = by
      if (isFar) {
        out[o++] = bx + sx
        out[o++] = by + sy
      }
    }
    wasFar = isFar
    x = nx
    y = ny
  }
  return o
}
