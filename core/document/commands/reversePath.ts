import type { Path } from '../../../shared/document/path'
import type { Site } from '../../../shared/document/site'
import type { Slab } from '../../../shared/document/slab'
import { edgeLength } from '../../geometry/edgeLength'
import { edgeFromRise } from '../../geometry/resolvePath'
import type { Edit } from './editSite'

/** Whether the path stands as it was drawn, or mirrored: a mirrored bulge stays on its side of travel once reversed. */
type Bulge = 'same' | 'mirrored'

/** Length of edge `index` from corner to corner, arcs included, before any rounding. */
export const edgeLengthOf = (path: Path, index: number): number => {
  const from = path.vertices[index]!
  const to = path.vertices[(index + 1) % path.vertices.length]!
  const edge = path.edges[index]!
  return edgeLength(edgeFromRise(edge.id, from.at, to.at, edge.riseM))
}

const turnSteps = (slab: Slab, path: Path): void => {
  for (const steps of slab.steps) {
    const index = path.edges.findIndex(edge => edge.id === steps.edgeId)
    if (index < 0) continue
    steps.fromT = Math.max(0, 1 - steps.fromT - steps.widthM / edgeLengthOf(path, index))
  }
}

/** Turns a draft's path around: the same corners and edges, ids kept, walked the other way. */
export const reversePath = (site: Site, path: Path, bulge: Bulge, edit: Edit): void => {
  for (const slab of site.slabs)
    if ([slab.outline, ...slab.openings.map(({ path: ring }) => ring)].some(({ id }) => id === path.id))
      turnSteps(slab, path)
  const closed = path.edges.length === path.vertices.length
  const [first, ...rest] = path.vertices
  if (first === undefined) return
  path.vertices = closed ? [first, ...rest.reverse()] : [...rest.reverse(), first]
  path.edges = [...path.edges].reverse()
  for (const edge of path.edges) {
    if (edge.riseM !== undefined && bulge === 'same') edge.riseM = -edge.riseM
    if (!edit.successors.has(edge.id)) edit.successors.set(edge.id, [edge.id])
  }
}
