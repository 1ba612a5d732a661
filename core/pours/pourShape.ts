import type { CurveRegion } from '../geometry/curve'
import { toCutRegion } from './region/cutRegion'
import { minCorner } from './region/minCorner'
import { minimumBox } from './region/minimumBox'

export interface PourShape {
  /** Length ÷ width of the least rectangle around the pour, ≥ 1. */
  readonly aspect: number
  /** Sharpest true corner, degrees; arcs count by their tangents; null where the pour has no corner. */
  readonly minCornerDeg: number | null
}

export function pourShape(region: CurveRegion): PourShape {
  const cut = toCutRegion(region)
  const box = minimumBox(cut.rings[0]!)
  return { aspect: box.longM / box.shortM, minCornerDeg: minCorner(cut) }
}
