import type { Pt } from '../../shared/document/primitives'

/** How far `p` lies to the left of the line from `from` to another point `to`, meters; less than zero to its right. */
export function leftOf(from: Pt, to: Pt, p: Pt): number {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  return (dx * (p[1] - from[1]) - dy * (p[0] - from[0])) / Math.hypot(dx, dy)
}
