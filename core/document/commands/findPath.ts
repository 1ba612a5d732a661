import { isDraft, original } from 'immer'
import type { Path } from '../../../shared/document/path'
import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { fromPointer, valueAt } from '../jsonPointer'
import { type SitePath, sitePaths } from '../sitePaths'

export interface FoundPath {
  readonly path: Path
  readonly index: number
}

/** Paths that may be edited, with where they stand: as-built shapes are frozen. */
export const editableSitePaths = (site: Site): readonly SitePath[] =>
  sitePaths(site).filter(({ field }) => !/\/poured\//.test(field))

export const editablePaths = (site: Site): readonly Path[] => editableSitePaths(site).map(({ path }) => path)

type Part = 'vertices' | 'edges'

const search = (site: Site, part: Part, id: Id): (FoundPath & { readonly field: string }) | undefined => {
  for (const { path, field } of editableSitePaths(site)) {
    const index = path[part].findIndex(row => row.id === id)
    if (index >= 0) return { path, index, field }
  }
  return undefined
}

/** A draft is searched where it came from, which wakes no other part of it; else, if the edit moved it, itself. */
const find = (site: Site, part: Part, id: Id): FoundPath | undefined => {
  if (!isDraft(site)) return search(site, part, id)
  const found = search(original<unknown>(site) as Site, part, id)
  const path = found && (valueAt(site, fromPointer(found.field)) as Path | undefined)
  return found && path?.[part]?.[found.index]?.id === id ? { path, index: found.index } : search(site, part, id)
}

export const findVertex = (site: Site, vertexId: Id): FoundPath | undefined => find(site, 'vertices', vertexId)

export const findEdge = (site: Site, edgeId: Id): FoundPath | undefined => find(site, 'edges', edgeId)

export const isClosed = (path: Path): boolean => path.edges.length === path.vertices.length
