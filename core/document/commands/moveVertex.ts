import type { Id, Pt } from '../../../shared/document/primitives'
import { type Command, editSite, missing } from './editSite'
import { findVertex } from './findPath'

/** Puts a corner to another place; its radius and the rises of its edges stay. */
export const moveVertex =
  (vertexId: Id, to: Pt): Command =>
  site =>
    editSite(site, (draft, edit) => {
      edit.onlyMoved = true
      const found = findVertex(draft, vertexId)
      if (found === undefined) return missing('corner', vertexId)
      const vertex = found.path.vertices[found.index]!
      if (vertex.at[0] !== to[0] || vertex.at[1] !== to[1]) vertex.at = [to[0], to[1]]
      return undefined
    })
