/** What of a strip nobody reaches from an edge of the pour. */
import { ringBounds } from '../../geometry/bounds'
import { distanceToEdge, regionContains } from '../../geometry/contains'
import type { CurveEdge, CurveRegion } from '../../geometry/curve'

/** Points looked at stand this far apart, m: an area is told to about a tenth of a square meter. */
const gridM = 0.3

/**
 * Area of the regions (m²) farther than `reachM` from every edge that can be stood on: open edges, headers and older
 * neighbors. Edges against a wall or water are left out by the caller. Counted on a grid of 0.3 m.
 */
export function outOfReach(regions: readonly CurveRegion[], stand: readonly CurveEdge[], reachM: number): number {
  let count = 0
  for (const region of regions) {
    const { minX, minY, maxX, maxY } = ringBounds(region.outer)
    for (let x = minX + gridM / 2; x < maxX; x += gridM)
      for (let y = minY + gridM / 2; y < maxY; y += gridM)
        if (!stand.some(edge => distanceToEdge(edge, [x, y]) <= reachM) && regionContains(region, [x, y])) count++
  }
  return count * gridM ** 2
}
