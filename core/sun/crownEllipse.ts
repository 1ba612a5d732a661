import type { Crown } from './solid'

/** An ellipse in plan meters: center, direction of the sun's shadows (a unit vector), and its semi-axes. */
export interface ShadowEllipse {
  readonly cx: number
  readonly cy: number
  readonly ux: number
  readonly uy: number
  readonly alongM: number
  readonly acrossM: number
}

/**
 * What a crown throws on z = `levelM` where no part of it lies below. With a = crown radius and b = half-height: the
 * ellipse with semi-axes √(a² + b²·k²) along the sun (k = shadow per meter) and a across it, about the shadow of the
 * center.
 * @param kx, ky shadow per meter of height
 */
export const crownEllipse = (crown: Crown, levelM: number, kx: number, ky: number): ShadowEllipse => {
  const heightM = (crown.topM + crown.bottomM) / 2 - levelM
  const k = Math.hypot(kx, ky)
  return {
    cx: crown.at[0] + heightM * kx,
    cy: crown.at[1] + heightM * ky,
    ux: k === 0 ? 1 : kx / k,
    uy: k === 0 ? 0 : ky / k,
    alongM: Math.hypot(crown.radiusM, ((crown.topM - crown.bottomM) / 2) * k),
    acrossM: crown.radiusM,
  }
}
