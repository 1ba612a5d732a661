import type { CurveRing } from './curve'
import { edgeLength } from './edgeLength'

/** Exact length of a ring or of an open chain of edges, meters. */
export function ringLength(ring: CurveRing): number {
  let sum = 0
  for (const edge of ring) sum += edgeLength(edge)
  return sum
}
