import type { Pt } from '../../shared/document/primitives'
import { sweepCovers } from './bounds'
import type { CurveEdge } from './curve'
import { angleFrom, onCircle } from './edgeAt'

/** The point of an edge nearest to `p`, exact on arcs, and its share `t` (0 … 1) of the edge's length. */
export function nearestOnEdge({ from, to, arc }: CurveEdge, p: Pt): { readonly at: Pt; readonly t: number } {
  if (arc) {
    const start = angleFrom(arc.center, from)
    const angle = angleFrom(arc.center, p)
    if (sweepCovers(start, arc.sweepRad, angle)) {
      const turn = 2 * Math.PI
      const run = Math.sign(arc.sweepRad) * (angle - start)
      return { at: onCircle(arc, angle), t: (run - Math.floor(run / turn) * turn) / Math.abs(arc.sweepRad) }
    }
    const nearFrom = Math.hypot(p[0] - from[0], p[1] - from[1]) <= Math.hypot(p[0] - to[0], p[1] - to[1])
    return nearFrom ? { at: from, t: 0 } : { at: to, t: 1 }
  }
  const dx = to[0] - from[0]
  const dy = to[1] - from[1]
  const l2 = dx * dx + dy * dy
  const t = l2 === 0 ? 0 : Math.max(0, Math.min(1, ((p[0] - from[0]) * dx + (p[1] - from[1]) * dy) / l2))
  return { at: t === 1 ? to : [from[0] + t * dx, from[1] + t * dy], t }
}
