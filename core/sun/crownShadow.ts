/** Shadow of an ellipsoid of revolution on a level plane. */
import type { Crown } from './solid'

/** Corners of the drawn ellipse: the polygon misses 0.07 % of its area. */
const corners = 96

/** The hull of scattered points, counter-clockwise. Source: A. M. Andrew, "Another efficient algorithm for convex hulls
 * in two dimensions", Information Processing Letters 9(5), 1979. */
const convexHull = (points: readonly (readonly [number, number])[]): Float64Array => {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1])
  const half = (run: readonly (readonly [number, number])[]): (readonly [number, number])[] => {
    const chain: (readonly [number, number])[] = []
    for (const p of run) {
      for (let a = chain.at(-2), b = chain.at(-1); a && b; a = chain.at(-2), b = chain.at(-1)) {
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break
        chain.pop()
      }
      chain.push(p)
    }
    chain.pop()
    return chain
  }
  return Float64Array.from([...half(sorted), ...half(sorted.reverse())].flat())
}

/**
 * The crown's shadow on z = `levelM` as one convex counter-clockwise cycle; null if no part of the crown is above. With
 * a = crown radius and b = half-height, the whole crown throws the ellipse with semi-axes √(a² + b²·k²) along the sun
 * (k = shadow per meter) and a across it, about the shadow of the center. A crown that reaches below the plane counts
 * above it only: the hull of its cut circle and of the shadow line above the cut.
 * @param kx, ky shadow per meter of height
 */
export const crownShadow = (crown: Crown, levelM: number, kx: number, ky: number): Float64Array | null => {
  const b = (crown.topM - crown.bottomM) / 2
  const a = crown.radiusM
  const heightM = (crown.topM + crown.bottomM) / 2 - levelM
  if (heightM + b <= 0) return null
  const k = Math.hypot(kx, ky)
  const [ux, uy] = k === 0 ? [1, 0] : [kx / k, ky / k]
  const along = Math.hypot(a, b * k)
  const cx = crown.at[0] + heightM * kx
  const cy = crown.at[1] + heightM * ky
  const at = (alongM: number, acrossM: number): readonly [number, number] => [
    cx + alongM * ux - acrossM * uy,
    cy + alongM * uy + acrossM * ux,
  ]
  const outline: (readonly [number, number])[] = []
  for (let i = 0; i < corners; i++) {
    const turn = (2 * Math.PI * i) / corners
    // The point of the crown that throws this point of the ellipse stands b²·k·cos(turn)/along above the center.
    if (heightM + (b * b * k * Math.cos(turn)) / along >= 0)
      outline.push(at(along * Math.cos(turn), a * Math.sin(turn)))
  }
  if (heightM - b >= 0) return Float64Array.from(outline.flat())
  const cutM = a * Math.sqrt(Math.max(0, 1 - (heightM / b) ** 2))
  for (let i = 0; i < corners; i++) {
    const turn = (2 * Math.PI * i) / corners
    outline.push([crown.at[0] + cutM * Math.cos(turn), crown.at[1] + cutM * Math.sin(turn)])
  }
  return convexHull(outline)
}
