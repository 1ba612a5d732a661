import type { Id } from '../../../shared/document/primitives'
import { edgeFromRise } from '../../geometry/resolvePath'
import { editEdge } from './editEdge'
import type { Command } from './editSite'

/**
 * Makes the circle that an edge belongs to as large as typed, about its center: every corner and every rise of its
 * path grows by the same share. For a path that is one circle. `radiusM` > 0.
 */
export const setCircleRadius = (edgeId: Id, radiusM: number): Command =>
  editEdge(edgeId, ({ path, edge, from, to }, edit) => {
    edit.onlyMoved = true
    const { arc } = edgeFromRise(edgeId, from.at, to.at, edge.riseM)
    if (!(radiusM > 0 && Number.isFinite(radiusM)) || arc === undefined)
      return { code: 'badMeasure', severity: 'stop', values: { foundM: radiusM, what: 'radius of a circle' } }
    const grow = radiusM / arc.radiusM
    const [x, y] = arc.center
    for (const vertex of path.vertices) vertex.at = [x + (vertex.at[0] - x) * grow, y + (vertex.at[1] - y) * grow]
    for (const each of path.edges) if (each.riseM !== undefined) each.riseM *= grow
    return undefined
  })
