import type { Path } from '../../shared/document/path'

/**
 * For each edge id of a resolved ring the document edges it belongs to: an edge to itself, the rounding arc
 * `${vertexId}~` to both of the edges it joins.
 */
export function edgeOwners(path: Path): ReadonlyMap<string, readonly string[]> {
  const owners = new Map<string, readonly string[]>()
  const n = path.edges.length
  path.edges.forEach((edge, i) => {
    owners.set(edge.id, [edge.id])
    const vertex = path.vertices[i]
    const before = path.edges[(i + n - 1) % n]
    if (vertex && before) owners.set(`${vertex.id}~`, [before.id, edge.id])
  })
  return owners
}
