import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { Finding } from '../../../shared/problem'
import { pointAt } from '../../geometry/edgeAt'
import { edgeFromRise } from '../../geometry/resolvePath'
import { joinLists } from './edgeLists'
import { type Command, type Edit, editSite, missing } from './editSite'
import { findEdge } from './findPath'

/** The rise of a part of an arc: R(1 − cos(θ/2)), signed as the sweep. Source: circular segment, CRC Standard
 * Mathematical Tables, "Plane figures". */
const riseOf = (radiusM: number, sweepRad: number): number =>
  Math.sign(sweepRad) * radiusM * (1 - Math.cos(sweepRad / 2))

const splitOnDraft = (site: Site, edit: Edit, edgeId: Id, t: number): Finding | undefined => {
  const found = findEdge(site, edgeId)
  if (found === undefined) return missing('edge', edgeId)
  if (!(t > 0 && t < 1))
    return { code: 'badMeasure', severity: 'stop', values: { found: t, what: 'place within the edge' } }
  const { path, index } = found
  const edge = path.edges[index]!
  const from = path.vertices[index]!
  const to = path.vertices[(index + 1) % path.vertices.length]!
  const whole = edgeFromRise(edgeId, from.at, to.at, edge.riseM)
  const newId = edit.make('e')
  const vertexId = edit.make('v')
  const half = (share: number): { riseM?: number } =>
    whole.arc === undefined ? {} : { riseM: riseOf(whole.arc.radiusM, whole.arc.sweepRad * share) }
  path.vertices.splice(index + 1, 0, { id: vertexId, at: pointAt(whole, t) })
  path.edges.splice(index, 1, { id: edgeId, ...half(t) }, { id: newId, ...half(1 - t) })
  edit.successors.set(edgeId, [edgeId, newId])
  joinLists(site, edgeId, newId)
  for (const slab of site.slabs)
    for (const steps of slab.steps) {
      if (steps.edgeId !== edgeId) continue
      // A flight stays where it starts; one that starts on the second half goes with it.
      if (steps.fromT >= t) {
        steps.edgeId = newId
        steps.fromT = (steps.fromT - t) / (1 - t)
      } else steps.fromT = steps.fromT / t
    }
  return undefined
}

/**
 * A new corner at share `t` (0 < t < 1) of an edge's length. The first half keeps the id; the new id joins every list
 * that holds it, and an arc's halves lie on the arc.
 */
export const splitEdge =
  (edgeId: Id, t: number): Command =>
  site =>
    editSite(site, (draft, edit) => splitOnDraft(draft, edit, edgeId, t))
