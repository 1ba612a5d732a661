import { type CutRegion, interiorDegs } from './cutRegion'

/** A vertex is a corner when the boundary turns by more than this; flattening points of an arc turn by less. */
export const cornerTurnDeg = 10

/** Sharpest true corner, degrees; arcs count by their tangents. Null where the boundary has no corner. */
export function minCorner(region: CutRegion): number | null {
  let least: number | null = null
  for (const ring of region.rings)
    for (const deg of interiorDegs(ring)) {
      if (Math.abs(deg - 180) <= cornerTurnDeg) continue
      if (least === null || deg < least) least = deg
    }
  return least
}
