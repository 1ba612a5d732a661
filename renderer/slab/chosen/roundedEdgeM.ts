import { edgeLength } from '../../../core/geometry/edgeLength'
import { resolveSlab } from '../../../core/geometry/resolveSlab'
import type { Id } from '../../../shared/document/primitives'
import type { Slab } from '../../../shared/document/slab'

/** How much of an edge of the outline its rounded corners leave; 0 where there is no such edge. */
export const roundedEdgeM = (slab: Slab, edgeId: Id): number => {
  const found = resolveSlab(slab).outline.find(each => each.edgeId === edgeId)
  return found ? edgeLength(found) : 0
}
