import type { End } from '../../../shared/document/pours'
import type { Pt } from '../../../shared/document/primitives'
import type { Slab } from '../../../shared/document/slab'
import { edgeSpans, nearestSpan } from '../../geometry/edgeSpans'
import { resolvePath } from '../../geometry/resolvePath'

/** An end lies on an edge within this (m). */
const onM = 1e-6

/** An end of a joint line on the edge of its slab that it was put on, else in the open. */
export const jointEndAt = (slab: Slab, at: Pt): End => {
  const paths = [slab.outline, ...slab.openings.map(({ path }) => path)]
  const near = nearestSpan(edgeSpans(paths.map(path => resolvePath(path, path.id).ring)), at, onM)
  return {
    anchor: near ? { on: 'edge', edgeId: near.edgeId, t: near.t } : { on: 'free' },
    last: [at[0], at[1]],
  }
}
