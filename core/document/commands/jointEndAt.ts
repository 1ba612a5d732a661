import type { End } from '../../../shared/document/pours'
import type { Pt } from '../../../shared/document/primitives'
import type { Slab } from '../../../shared/document/slab'
import { nearestOnEdge } from '../../geometry/nearestOnEdge'
import { resolvePath } from '../../geometry/resolvePath'

/** An end lies on an edge within this (m). */
const onM = 1e-6

/** An end of a joint line on the edge of its slab that it was put on, else in the open. */
export const jointEndAt = (slab: Slab, at: Pt): End => {
  const last: Pt = [at[0], at[1]]
  const rings = [slab.outline, ...slab.openings.map(({ path }) => path)].flatMap(
    path => resolvePath(path, path.id).ring,
  )
  for (const edge of rings) {
    const near = nearestOnEdge(edge, at)
    if (Math.hypot(near.at[0] - at[0], near.at[1] - at[1]) < onM)
      return { anchor: { on: 'edge', edgeId: edge.edgeId, t: Math.min(1, Math.max(0, near.t)) }, last }
  }
  return { anchor: { on: 'free' }, last }
}
