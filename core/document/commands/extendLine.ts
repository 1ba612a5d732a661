import type { Id } from '../../../shared/document/primitives'
import type { ShapeCorner } from './drawShape'
import { type Command, editSite, missing } from './editSite'
import { editablePaths, isClosed } from './findPath'

/** A new corner beyond an end of an open line (a band's). */
export const extendLine =
  (pathId: Id, at: 'start' | 'end', { at: [x, y], riseM }: ShapeCorner): Command =>
  site =>
    editSite(site, (draft, edit) => {
      const path = editablePaths(draft).find(({ id }) => id === pathId)
      if (path === undefined || isClosed(path)) return missing('open line', pathId)
      const vertex = { id: edit.make('v'), at: [x, y] as const }
      const edge = { id: edit.make('e'), ...(riseM === undefined || riseM === 0 ? {} : { riseM }) }
      if (at === 'end') {
        path.vertices.push(vertex)
        path.edges.push(edge)
      } else {
        path.vertices.unshift(vertex)
        path.edges.unshift(edge)
      }
      return undefined
    })
