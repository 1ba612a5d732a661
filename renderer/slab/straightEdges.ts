/** The straight edges of slabs and buildings by their corners: what a bearing is read along, or a picture squared to. */
import { findEdge } from '../../core/document/commands/findPath'
import type { Id, Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import { cornerLetter } from '../editor/cornerNames'

export const straightEdges = (site: Site): readonly (readonly [id: Id, words: string])[] =>
  [
    ...site.slabs.map(({ name, outline }) => ({ name, path: outline })),
    ...site.casters.flatMap(caster =>
      caster.kind === 'building' ? [{ name: caster.name, path: caster.footprint }] : [],
    ),
  ].flatMap(({ name, path }) =>
    path.edges.flatMap(({ id, riseM }, i) =>
      riseM === undefined
        ? [[id, `${name}, ${cornerLetter(i)} to ${cornerLetter((i + 1) % path.edges.length)}`] as const]
        : [],
    ),
  )

/** Where an edge starts and ends; undefined where there is none by that id. */
export const edgeEnds = (site: Site, id: Id): readonly [Pt, Pt] | undefined => {
  const found = findEdge(site, id)
  if (!found) return undefined
  const { vertices } = found.path
  return [vertices[found.index]!.at, vertices[(found.index + 1) % vertices.length]!.at]
}
