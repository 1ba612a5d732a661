import type { CurveEdge, CurveRing } from './curve'

export function reverseEdge({ edgeId, from, to, arc }: CurveEdge): CurveEdge {
  return arc ? { edgeId, from: to, to: from, arc: { ...arc, sweepRad: -arc.sweepRad } } : { edgeId, from: to, to: from }
}

/** The same ring (or open chain) walked the other way; every edge keeps its id. */
export function reverseRing(ring: CurveRing): CurveRing {
  return ring.map(reverseEdge).reverse()
}
