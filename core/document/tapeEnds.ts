/** Where the ends of tape dimensions lie, and what they hold on to. */
import type { Path } from '../../shared/document/path'
import type { Id, Pt } from '../../shared/document/primitives'
import type { TapeDimension, TapeEnd } from '../../shared/document/shown'
import type { Site } from '../../shared/document/site'
import { onceFrozen } from '../../shared/onceFrozen'
import { type EdgeSpan, edgeSpans, nearestSpan, pointOnSpan } from '../geometry/edgeSpans'
import { resolvePath } from '../geometry/resolvePath'
import { editablePaths, isClosed } from './commands/findPath'

const spansOf = onceFrozen(
  (path: Path): ReadonlyMap<string, EdgeSpan> => edgeSpans([resolvePath(path, path.id, isClosed(path)).ring]),
)

/** Where an end lies on the site as it is; undefined where its corner or edge is gone. A corner is that of the forms. */
export function placeOfEnd(site: Site, { on, last }: TapeEnd): Pt | undefined {
  if (on.on === 'free') return last
  for (const path of editablePaths(site)) {
    if (on.on === 'vertex') {
      const vertex = path.vertices.find(({ id }) => id === on.vertexId)
      if (vertex) return vertex.at
    } else {
      const span = spansOf(path).get(on.edgeId)
      if (span) return pointOnSpan(span, on.t)
    }
  }
  return undefined
}

/** An end is on what it lies on within this (m). */
const onM = 1e-6

/** An end at a place: on the corner or the edge that lies there, of those named where any are, else in the open. */
export function endAt(site: Site, at: Pt, among?: readonly Id[]): TapeEnd {
  const paths = editablePaths(site)
  if (!among) {
    const corner = paths
      .flatMap(({ vertices }) => vertices)
      .find(v => Math.hypot(v.at[0] - at[0], v.at[1] - at[1]) <= onM)
    if (corner) return { on: { on: 'vertex', vertexId: corner.id }, last: corner.at }
  }
  const spans = paths.flatMap(path => [...spansOf(path)]).filter(([edgeId]) => !among || among.includes(edgeId))
  const near = nearestSpan(spans, at, onM)
  return { on: near ? { on: 'edge', edgeId: near.edgeId, t: near.t } : { on: 'free' }, last: [at[0], at[1]] }
}

export const tapeLength = ({ ends: [a, b] }: TapeDimension): number =>
  Math.hypot(b.last[0] - a.last[0], b.last[1] - a.last[1])
