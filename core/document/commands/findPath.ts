import type { Path } from '../../../shared/document/path'
import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { sitePaths } from '../sitePaths'

export interface FoundPath {
  readonly path: Path
  readonly index: number
}

/** Paths that may be edited: as-built shapes are frozen. */
export const editablePaths = (site: Site): readonly Path[] =>
  sitePaths(site).flatMap(({ path, field }) => (/\/poured\//.test(field) ? [] : [path]))

export const findVertex = (site: Site, vertexId: Id): FoundPath | undefined => {
  for (const path of editablePaths(site)) {
    const index = path.vertices.findIndex(({ id }) => id === vertexId)
    if (index >= 0) return { path, index }
  }
  return undefined
}

export const findEdge = (site: Site, edgeId: Id): FoundPath | undefined => {
  for (const path of editablePaths(site)) {
    const index = path.edges.findIndex(({ id }) => id === edgeId)
    if (index >= 0) return { path, index }
  }
  return undefined
}

export const isClosed = (path: Path): boolean => path.edges.length === path.vertices.length
