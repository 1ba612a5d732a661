import type { Pt } from '../../shared/document/primitives'
import { type Box, edgeBounds } from './bounds'
import type { CurveEdge, CurveRing } from './curve'
import { intersectEdges } from './intersectEdges'

/** Edges nearer than this meet. */
const nearM = 1e-7

/** A common point of two edges other than the corner(s) they share. */
function meetElsewhere(a: CurveEdge, b: CurveEdge, shared: readonly Pt[]): Pt | undefined {
  return intersectEdges(a, b, nearM).find(p => !shared.some(s => Math.hypot(s[0] - p[0], s[1] - p[1]) <= 1e-6))
}

/**
 * A point where a ring crosses or touches itself, arcs included: the first along a sweep in x; undefined where the ring
 * is simple. Touching counts: a ring pinched to a point, or running back over itself, has no sure inside.
 */
export function findSelfCrossing(ring: CurveRing): Pt | undefined {
  const n = ring.length
  const order = ring
    .map((edge, i): { i: number; edge: CurveEdge; box: Box } => ({ i, edge, box: edgeBounds(edge) }))
    .sort((p, q) => p.box.minX - q.box.minX)
  for (let k = 0; k < n; k++) {
    const { i, edge, box } = order[k]!
    for (let m = k + 1; m < n; m++) {
      const other = order[m]!
      if (other.box.minX > box.maxX + nearM) break
      if (other.box.minY > box.maxY + nearM || other.box.maxY < box.minY - nearM) continue
      const shared: Pt[] = []
      if ((i + 1) % n === other.i) shared.push(edge.to)
      if ((other.i + 1) % n === i) shared.push(edge.from)
      const meet = meetElsewhere(edge, other.edge, shared)
      if (meet) return meet
    }
  }
  return undefined
}
