import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { Finding } from '../../../shared/problem'
import { type FourCorners, makeSquare, type Squareness, squareness } from '../../geometry/field/squareness'
import { type Command, editSite, missing } from './editSite'
import { editablePaths } from './findPath'

const pathOf = (site: Site, pathId: Id) => editablePaths(site).find(({ id }) => id === pathId)

/** Both diagonals of a four-cornered ring; undefined for any other. */
export const squarenessOf = (site: Site, pathId: Id): Squareness | undefined => {
  const corners = pathOf(site, pathId)?.vertices.map(({ at }) => at)
  return corners?.length === 4 ? squareness(corners as unknown as FourCorners) : undefined
}

/** Makes the corners of a four-cornered ring those of a rectangle about the edge that stays; an arc keeps its rise, which is told. */
export const squareUp =
  (pathId: Id, keptEdgeId: Id): Command =>
  site =>
    editSite(site, (draft, edit): Finding | undefined => {
      const path = pathOf(draft, pathId)
      if (path === undefined) return missing('outline', pathId)
      const n = path.vertices.length
      if (n !== 4)
        return { code: 'notFourCorners', severity: 'stop', values: { vertices: n }, at: { entityId: pathId } }
      const first = path.edges.findIndex(({ id }) => id === keptEdgeId)
      if (first < 0) return missing('edge', keptEdgeId)
      const turned = [0, 1, 2, 3].map(i => path.vertices[(first + i) % 4]!)
      if (turned[0]!.at[0] === turned[1]!.at[0] && turned[0]!.at[1] === turned[1]!.at[1])
        return { code: 'zeroEdge', severity: 'stop', values: { edgeId: keptEdgeId }, at: { entityId: pathId } }
      const square = makeSquare(turned.map(({ at }) => at) as unknown as FourCorners)
      turned.forEach((vertex, i) => {
        vertex.at = square[i]!
      })
      const rises = path.edges.flatMap(({ riseM }) => (riseM === undefined || riseM === 0 ? [] : [Math.abs(riseM)]))
      if (rises.length > 0)
        edit.tell('arcsKept', 'note', pathId, {
          arcs: rises.length,
          leastM: Math.min(...rises),
          mostM: Math.max(...rises),
        })
      return undefined
    })
