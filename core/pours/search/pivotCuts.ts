/**
 * Joints from re-entrant corners turned a little off a direction, just far enough for the areas to suit the cap: a leg
 * that is a few square feet too large is still cut off at its corner.
 */
import { reentrantAboveDeg } from '../pourCost'
import { type CutRegion, interiorDegs } from '../region/cutRegion'
import { falsePosition, type Tried } from './falsePosition'
import { cutsOnLine, type LineCut } from './lineCuts'
import type { Direction, SearchContext } from './searchContext'

export interface PivotCut {
  readonly cut: LineCut
  readonly direction: Direction
  /** Place of the direction it is turned off. */
  readonly family: number
}

/** The farthest turn (radians) where no direction is wished, and where the pattern has one. */
const mostTurnRad = (20 * Math.PI) / 180
const mostWishedTurnRad = (5 * Math.PI) / 180
/** Share of the cap by which the untried cut may miss what is allowed. */
const mostMiss = 0.15
const mostSteps = 12
/** Share of the cap by which the turned cut stays inside what is allowed. */
const inside = 1e-6
/** With more corners than this straight lines must do. */
const mostCorners = 24

const turned = ({ ux, uy }: Direction, rad: number): Direction => {
  const c = Math.cos(rad)
  const s = Math.sin(rad)
  return { ux: c * ux - s * uy, uy: s * ux + c * uy }
}

/** `windows`: what the upper face may measure. */
export function pivotCuts(
  region: CutRegion,
  directions: readonly Direction[],
  windows: readonly (readonly [number, number])[],
  context: SearchContext,
): PivotCut[] {
  const found: PivotCut[] = []
  const corners = region.rings.flatMap((ring, r) =>
    Array.from(interiorDegs(ring)).flatMap((deg, side) => (deg > reentrantAboveDeg ? [{ ring: r, side }] : [])),
  )
  if (corners.length > mostCorners) return found
  const insideM2 = inside * context.capM2
  const most = context.wished.length > 0 ? mostWishedTurnRad : mostTurnRad
  for (const corner of corners) {
    const { x, y } = region.rings[corner.ring]!.sides[corner.side]!
    const cutsAt = (direction: Direction): LineCut[] =>
      [true, false].flatMap(onIsAbove =>
        cutsOnLine(region, direction, -direction.uy * x + direction.ux * y, onIsAbove, context, 'inside'),
      )
    for (const [family, direction] of directions.entries())
      for (const startsHere of [true, false]) {
        const from = ({ chain }: LineCut): boolean => {
          const end = startsHere ? chain[0]!.a : chain[0]!.b
          return chain.length === 1 && end.vertex && end.ring === corner.ring && end.side === corner.side
        }
        const straight = cutsAt(direction).find(from)
        if (!straight) continue
        const areaM2 = straight.measure.upAreaM2
        if (windows.some(([low, high]) => areaM2 >= low && areaM2 <= high)) continue
        for (const targetM2 of windows.flatMap(([low, high]) => [low + insideM2, high - insideM2])) {
          const missM2 = areaM2 - targetM2
          if (Math.abs(missM2) > mostMiss * context.capM2) continue
          const tryAt = (rad: number): Tried<LineCut> | null => {
            const cut = cutsAt(turned(direction, rad)).find(from)
            return cut ? { found: cut, miss: cut.measure.upAreaM2 - targetM2 } : null
          }
          for (const rad of [most, -most]) {
            const far = tryAt(rad)
            const cut =
              far && falsePosition({ at: 0, miss: missM2 }, { at: rad, miss: far.miss }, tryAt, insideM2 / 2, mostSteps)
            if (cut) {
              const { a, b, lengthM } = cut.chain[0]!
              found.push({ cut, direction: { ux: (b.x - a.x) / lengthM, uy: (b.y - a.y) / lengthM }, family })
            }
          }
        }
      }
  }
  return found
}
