import type { Id } from '../../../shared/document/primitives'
import type { Finding } from '../../../shared/problem'
import { type Command, type Edit, editSite, missing } from './editSite'
import { type FoundPath, findEdge } from './findPath'

type Path = FoundPath['path']

export interface EdgeInHand extends FoundPath {
  readonly edge: Path['edges'][number]
  /** The corners travel leaves and reaches. */
  readonly from: Path['vertices'][number]
  readonly to: Path['vertices'][number]
}

/** An edit that begins at one edge; a finding refuses it. Fails with `entityMissing` where the edge is not there. */
export const editEdge =
  (edgeId: Id, change: (edge: EdgeInHand, edit: Edit) => Finding | undefined): Command =>
  site =>
    editSite(site, (draft, edit) => {
      const found = findEdge(draft, edgeId)
      if (found === undefined) return missing('edge', edgeId)
      const { vertices, edges } = found.path
      const [from, to] = [vertices[found.index]!, vertices[(found.index + 1) % vertices.length]!]
      return change({ ...found, edge: edges[found.index]!, from, to }, edit)
    })
