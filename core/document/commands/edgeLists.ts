/** The lists of a document that edges belong to: borders, thickened edges, edges against existing work. */
import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { Slab } from '../../../shared/document/slab'

export interface EdgeList {
  /** What the list says of its edges, in trade words. */
  readonly where: string
  readonly ids: readonly Id[]
  write(ids: Id[]): void
}

export const edgeLists = (slab: Slab): readonly EdgeList[] => [
  ...slab.borders.flatMap((border): readonly EdgeList[] =>
    border.edges === 'all'
      ? []
      : [
          {
            where: 'border',
            ids: border.edges,
            write: ids => {
              border.edges = ids
            },
          },
        ],
  ),
  ...slab.thickened.map(
    (part): EdgeList => ({
      where: 'thickening',
      ids: part.edges,
      write: ids => {
        part.edges = ids
      },
    }),
  ),
  {
    where: 'joint against existing work',
    ids: slab.againstExisting,
    write: ids => {
      slab.againstExisting = ids
    },
  },
]

/** The new second half of a cut edge joins every list that holds the first. */
export const joinLists = (site: Site, edgeId: Id, newId: Id): void => {
  for (const slab of site.slabs)
    for (const { ids, write } of edgeLists(slab)) {
      const at = ids.indexOf(edgeId)
      if (at >= 0) write([...ids.slice(0, at + 1), newId, ...ids.slice(at + 1)])
    }
}
