import type { Path } from '../../../shared/document/path'
import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { Finding } from '../../../shared/problem'
import { edgeFromRise } from '../../geometry/resolvePath'
import { edgeLists } from './edgeLists'
import { type Command, type Edit, editSite, missing } from './editSite'
import { findVertex, isClosed } from './findPath'
import { edgeLengthOf } from './reversePath'

/** Centers and radii nearer than this belong to one arc. */
const sameArcM = 1e-6

/** The rise of two edges that lie on one arc, taken as one; undefined where they do not. */
const joinedRise = (path: Path, first: number): number | undefined => {
  const n = path.vertices.length
  const [a, b, c] = [first, first + 1, first + 2].map(i => path.vertices[i % n]!.at)
  const before = path.edges[first]!
  const after = path.edges[(first + 1) % path.edges.length]!
  const head = edgeFromRise(before.id, a!, b!, before.riseM).arc
  const tail = edgeFromRise(after.id, b!, c!, after.riseM).arc
  if (head === undefined || tail === undefined) return undefined
  const apart = Math.hypot(head.center[0] - tail.center[0], head.center[1] - tail.center[1])
  if (apart > sameArcM || Math.abs(head.radiusM - tail.radiusM) > sameArcM) return undefined
  const sweep = head.sweepRad + tail.sweepRad
  if (Math.sign(head.sweepRad) !== Math.sign(tail.sweepRad) || Math.abs(sweep) >= 2 * Math.PI) return undefined
  return Math.sign(sweep) * head.radiusM * (1 - Math.cos(sweep / 2))
}

/** `kept` takes over what `gone` belonged to; what that gives to the kept edge is told. */
const mergeLists = (site: Site, edit: Edit, kept: Id, gone: Id): void => {
  for (const slab of site.slabs)
    for (const { where, ids, write } of edgeLists(slab)) {
      if (!ids.includes(gone) && !ids.includes(kept)) continue
      if (ids.includes(gone) !== ids.includes(kept)) edit.tell('membershipsMerged', 'note', kept, { where, gone, kept })
      if (ids.includes(gone))
        write(ids.includes(kept) ? ids.filter(id => id !== gone) : ids.map(id => (id === gone ? kept : id)))
    }
  for (const caster of site.casters)
    if (caster.kind === 'building' && caster.roof.form !== 'flat' && caster.roof.ridgeAlongEdge === gone)
      caster.roof.ridgeAlongEdge = kept
}

const leastVertices = (path: Path): number =>
  !isClosed(path) || path.edges.some(({ riseM }) => riseM !== undefined && riseM !== 0) ? 2 : 3

/** On a draft; used by every command that takes corners away. */
export const removeVertex = (site: Site, edit: Edit, vertexId: Id): Finding | undefined => {
  const found = findVertex(site, vertexId)
  if (found === undefined) return missing('corner', vertexId)
  const { path, index } = found
  const n = path.vertices.length
  const last = n - 1
  if (!isClosed(path) && (index === 0 || index === last)) {
    if (n <= 2) return { code: 'pathTooShort', severity: 'stop', values: { vertices: n - 1, least: 2 } }
    path.vertices.splice(index, 1)
    path.edges.splice(index === 0 ? 0 : index - 1, 1)
    return undefined
  }
  const before = (index + path.edges.length - 1) % path.edges.length
  const riseM = joinedRise(path, before)
  const [kept, gone] = [path.edges[before]!, path.edges[index]!]
  const lengths = [edgeLengthOf(path, before), edgeLengthOf(path, index)] as const
  if (riseM !== undefined) kept.riseM = riseM
  path.vertices.splice(index, 1)
  path.edges.splice(index, 1)
  const least = leastVertices(path)
  if (path.vertices.length < least)
    return { code: 'pathTooShort', severity: 'stop', values: { vertices: path.vertices.length, least } }
  mergeLists(site, edit, kept.id, gone.id)
  const wholeM = lengths[0] + lengths[1]
  for (const slab of site.slabs)
    for (const steps of slab.steps) {
      if (wholeM === 0) continue
      if (steps.edgeId === kept.id) steps.fromT = (steps.fromT * lengths[0]) / wholeM
      else if (steps.edgeId === gone.id) {
        steps.edgeId = kept.id
        steps.fromT = (lengths[0] + steps.fromT * lengths[1]) / wholeM
      }
    }
  edit.successors.set(kept.id, [kept.id])
  edit.successors.set(gone.id, [kept.id])
  edit.successors.set(vertexId, [kept.id])
  return undefined
}

/**
 * Takes a corner away. The earlier of its two edges survives with its rise (with the whole arc's, where both lay on
 * one arc), and takes over the later one's borders, thickening and joints.
 */
export const deleteVertex =
  (vertexId: Id): Command =>
  site =>
    editSite(site, (draft, edit) => removeVertex(draft, edit, vertexId))
