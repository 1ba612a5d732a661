import type { Id } from '../../../shared/document/primitives'
import { type Command, editSite, missing } from './editSite'
import { findVertex } from './findPath'

/** Rounds a corner; undefined makes it sharp. A radius that does not fit is a finding of the slab, not clamped. */
export const setCornerRadius =
  (vertexId: Id, roundM: number | undefined): Command =>
  site =>
    editSite(site, draft => {
      const found = findVertex(draft, vertexId)
      if (found === undefined) return missing('corner', vertexId)
      const vertex = found.path.vertices[found.index]!
      if (roundM === undefined) delete vertex.roundM
      else vertex.roundM = roundM
      return undefined
    })
