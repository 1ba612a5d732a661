import type { Path } from '../../../shared/document/path'
import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { fromPointer } from '../jsonPointer'
import { editableSitePaths } from './findPath'
import type { RigidMotion } from './rigidMotion'

/** True of the id of a corner, or of an edge, which stands for both its corners. */
export const isCorner = (id: Id): boolean => /^[ve]\d+$/.test(id)

type Branch = Readonly<Record<string, unknown>>

/** A frozen copy of a branch with `leaf` where the steps lead to; what lies beside them is shared. */
function withLeaf(branch: unknown, [step, ...rest]: readonly string[], leaf: unknown): unknown {
  if (step === undefined) return leaf
  const below = withLeaf((branch as Branch)[step], rest, leaf)
  return Object.freeze(
    Array.isArray(branch) ? branch.with(Number(step), below) : { ...(branch as Branch), [step]: below },
  )
}

/** The path with its chosen corners carried; itself where none is chosen. */
function carryPath(path: Path, chosen: ReadonlySet<Id>, motion: RigidMotion): Path {
  const count = path.vertices.length
  const isGone = path.vertices.map(({ id }) => chosen.has(id))
  path.edges.forEach(({ id }, i) => {
    if (!chosen.has(id)) return
    isGone[i] = true
    isGone[(i + 1) % count] = true
  })
  if (!isGone.includes(true)) return path
  const vertices = path.vertices.map((vertex, i) =>
    isGone[i] ? Object.freeze({ ...vertex, at: Object.freeze(motion.at(vertex.at)) }) : vertex,
  )
  return Object.freeze({ ...path, vertices: Object.freeze(vertices) }) as Path
}

/**
 * The site with corners carried along, or itself where none is among `ids`. Without a draft, whose making costs a hand
 * that pushes a corner more than all else in the document. As-built shapes are left as they were built.
 */
export const carryCorners = (site: Site, ids: readonly Id[], motion: RigidMotion): Site => {
  const chosen = new Set(ids)
  let carried = site
  for (const { path, field } of editableSitePaths(site)) {
    const moved = carryPath(path, chosen, motion)
    if (moved !== path) carried = withLeaf(carried, fromPointer(field), moved) as Site
  }
  return carried
}
