import type { Pt } from '../../shared/document/primitives'
import { ringBounds } from './bounds'
import { regionContains } from './contains'
import type { CurveRegion } from './curve'
import { intersectEdges } from './intersectEdges'

/** Heights, as shares of the box, at which a level line is tried: near the middle first, never through a round share. */
const levels = [0.4993, 0.3717, 0.6291, 0.2411, 0.7583, 0.1193, 0.8807, 0.0411, 0.9589, 0.0071, 0.9929]

/**
 * A point inside the region, well away from its boundary: the middle of the longest level run of three or more tried.
 * Undefined only for a region without area.
 */
export function interiorPoint(region: CurveRegion): Pt | undefined {
  const { minX, minY, maxX, maxY } = ringBounds(region.outer)
  const edges = [region.outer, ...region.holes].flat()
  let best: Pt | undefined
  let longest = 0
  for (const [tried, level] of levels.entries()) {
    if (best && tried >= 3) break
    const y = minY + level * (maxY - minY)
    const line = { edgeId: '', from: [minX - 1, y] as const, to: [maxX + 1, y] as const }
    const xs = edges.flatMap(e => intersectEdges(line, e).map(p => p[0])).sort((a, b) => a - b)
    for (let i = 1; i < xs.length; i++) {
      const run = xs[i]! - xs[i - 1]!
      const middle: Pt = [(xs[i]! + xs[i - 1]!) / 2, y]
      if (run <= longest || !regionContains(region, middle)) continue
      longest = run
      best = middle
    }
  }
  return best
}
