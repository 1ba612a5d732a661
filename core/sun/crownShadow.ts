/** Shadow of an ellipsoid of revolution on a level plane. */
import type { Pt } from '../../shared/document/primitives'
import { convexHull } from '../geometry/convexHull'
import { crownEllipse } from './crownEllipse'
import type { Crown } from './solid'

/** Corners of the drawn ellipse: the polygon misses 0.07 % of its area. */
const corners = 96

const unitCircle = Float64Array.from({ length: 2 * corners }, (_, i) => {
  const turn = (2 * Math.PI * (i >> 1)) / corners
  return i % 2 === 0 ? Math.cos(turn) : Math.sin(turn)
})

/**
 * The crown's shadow on z = `levelM` as one convex counter-clockwise cycle; empty if no part of the crown is above. A
 * crown that reaches below the plane counts above it only: the hull of its cut circle and of the shadow line above the
 * cut.
 * @param kx, ky shadow per meter of height
 * @param out receives x0, y0, x1, y1 …; at most 384 numbers
 * @returns how many numbers were written
 */
export const crownShadow = (crown: Crown, levelM: number, kx: number, ky: number, out: Float64Array): number => {
  const b = (crown.topM - crown.bottomM) / 2
  const a = crown.radiusM
  const heightM = (crown.topM + crown.bottomM) / 2 - levelM
  if (heightM + b <= 0) return 0
  const k = Math.hypot(kx, ky)
  const { cx, cy, ux, uy, alongM: along } = crownEllipse(crown, levelM, kx, ky)
  const [atX, atY] = crown.at
  let o = 0
  for (let i = 0; i < 2 * corners; i += 2) {
    const cosine = unitCircle[i]!
    // The point of the crown that throws this point of the ellipse stands b²·k·cosine/along above the center.
    if (heightM + (b * b * k * cosine) / along < 0) continue
    const alongM = along * cosine
    const acrossM = a * unitCircle[i + 1]!
    out[o++] = cx + alongM * ux - acrossM * uy
    out[o++] = cy + alongM * uy + acrossM * ux
  }
  if (heightM - b >= 0) return o
  const cutM = a * Math.sqrt(Math.max(0, 1 - (heightM / b) ** 2))
  const points: Pt[] = []
  for (let i = 0; i < o; i += 2) points.push([out[i]!, out[i + 1]!])
  for (let i = 0; i < 2 * corners; i += 2) points.push([atX + cutM * unitCircle[i]!, atY + cutM * unitCircle[i + 1]!])
  const hull = convexHull(points).flat()
  out.set(hull)
  return hull.length
}
