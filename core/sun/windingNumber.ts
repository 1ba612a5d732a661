/** How often a closed cycle (x0, y0, x1, y1 …) winds around a point, counter-clockwise positive. Source: D. Sunday,
 * "Inclusion of a point in a polygon", 2001. */
export const windingNumber = (cycle: Float64Array, count: number, x: number, y: number): number => {
  let winding = 0
  let px = cycle[count - 2]!
  let py = cycle[count - 1]!
  for (let i = 0; i < count; i += 2) {
    const qx = cycle[i]!
    const qy = cycle[i + 1]!
    if (py <= y) {
      if (qy > y && (qx - px) * (y - py) - (x - px) * (qy - py) > 0) winding++
    } else if (qy <= y && (qx - px) * (y - py) - (x - px) * (qy - py) < 0) winding--
    px = qx
    py = qy
  }
  return winding
}
