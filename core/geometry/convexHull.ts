import type { Pt } from '../../shared/document/primitives'
import type { Ring } from './curve'

/**
 * The convex hull of points, counter-clockwise, without points on its edges.
 * Source: A. M. Andrew, "Another efficient algorithm for convex hulls in two dimensions", Inf. Process. Lett. 9 (1979).
 */
export function convexHull(points: readonly Pt[]): Ring {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1])
  const half = (run: readonly Pt[]): Pt[] => {
    const chain: Pt[] = []
    for (const p of run) {
      for (;;) {
        const a = chain[chain.length - 2]
        const b = chain[chain.length - 1]
        if (!a || !b || (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break
        chain.pop()
      }
      chain.push(p)
    }
    chain.pop()
    return chain
  }
  return [...half(sorted), ...half(sorted.reverse())]
}
