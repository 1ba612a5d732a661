import type { Id } from '../../../shared/document/primitives'
import { edgeFromRise } from '../../geometry/resolvePath'
import { type Command, editSite, missing } from './editSite'
import { findEdge } from './findPath'

/**
 * Makes the circle that an edge belongs to as large as typed, about its center: every corner and every rise of its
 * path grows by the same share. For a path that is one circle. `radiusM` > 0.
 */
export const setCircleRadius =
  (edgeId: Id, radiusM: number): Command =>
  site =>
    editSite(site, (draft, edit) => {
      edit.onlyMoved = true
      const found = findEdge(draft, edgeId)
      if (found === undefined) return missing('edge', edgeId)
      const { path, index } = found
      const to = path.vertices[(index + 1) % path.vertices.length]!
      const { arc } = edgeFromRise(edgeId, path.vertices[index]!.at, to.at, path.edges[index]!.riseM)
      if (!(radiusM > 0 && Number.isFinite(radiusM)) || arc === undefined)
        return { code: 'badMeasure', severity: 'stop', values: { found: radiusM, what: 'radius of a circle' } }
      const grow = radiusM / arc.radiusM
      const [x, y] = arc.center
      for (const vertex of path.vertices) vertex.at = [x + (vertex.at[0] - x) * grow, y + (vertex.at[1] - y) * grow]
      for (const edge of path.edges) if (edge.riseM !== undefined) edge.riseM *= grow
      return undefined
    })
