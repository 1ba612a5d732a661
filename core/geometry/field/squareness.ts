/** Four corners by their diagonals. */
import type { Pt } from '../../../shared/document/primitives'
import { tapeWithinM } from './tapeWithin'

export type FourCorners = readonly [Pt, Pt, Pt, Pt]

export interface Squareness {
  readonly diagonalsM: readonly [number, number]
  /** First diagonal (corners 1–3) less the second (2–4). */
  readonly differenceM: number
  /** Lengths of the sides in order; equal diagonals prove a rectangle only where opposite sides are equal. */
  readonly sidesM: readonly [number, number, number, number]
  /** How far opposite sides differ at most. */
  readonly sidesDifferM: number
}

/** Its diagonals agree, and its opposite sides. */
export const isSquare = ({ differenceM, sidesDifferM }: Squareness): boolean =>
  Math.max(Math.abs(differenceM), sidesDifferM) < tapeWithinM

const between = (a: Pt, b: Pt): number => Math.hypot(b[0] - a[0], b[1] - a[1])

export function squareness([a, b, c, d]: FourCorners): Squareness {
  const diagonalsM = [between(a, c), between(b, d)] as const
  const sidesM = [between(a, b), between(b, c), between(c, d), between(d, a)] as const
  return {
    diagonalsM,
    differenceM: diagonalsM[0] - diagonalsM[1],
    sidesM,
    sidesDifferM: Math.max(Math.abs(sidesM[0] - sidesM[2]), Math.abs(sidesM[1] - sidesM[3])),
  }
}

/**
 * A rectangle in place of four corners, walked the same way around: the first side stays where it is, the depth is the
 * mean of the two sides that leave it. The first side must have a length.
 */
export function makeSquare(corners: FourCorners): FourCorners {
  const [a, b, c, d] = corners
  const { sidesM } = squareness(corners)
  const depthM = (sidesM[1] + sidesM[3]) / 2
  const [ux, uy] = [(b[0] - a[0]) / sidesM[0], (b[1] - a[1]) / sidesM[0]]
  const offSide = (p: Pt, from: Pt) => ux * (p[1] - from[1]) - uy * (p[0] - from[0])
  const sign = offSide(c, b) + offSide(d, a) < 0 ? -1 : 1
  const [nx, ny] = [-uy * depthM * sign, ux * depthM * sign]
  return [a, b, [b[0] + nx, b[1] + ny], [a[0] + nx, a[1] + ny]]
}
