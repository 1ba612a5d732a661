/** Distance of the point (px, py) from the straight segment a–b, which may have no length. All in one unit. */
export function segmentDistance(px: number, py: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax
  const dy = by - ay
  const l2 = dx * dx + dy * dy
  const t = l2 === 0 ? 0 : Math.max(0, Math.min(1, ((px - ax) * dx + (py - ay) * dy) / l2))
  const ex = px - ax - t * dx
  const ey = py - ay - t * dy
  return Math.sqrt(ex * ex + ey * ey)
}
