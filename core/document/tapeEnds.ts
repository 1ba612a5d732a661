/** Where the ends of tape dimensions lie, and what they hold on to. */
import type { Path } from '../../shared/document/path'
import type { Id, Pt } from '../../shared/document/primitives'
import type { TapeDimension, TapeEnd } from '../../shared/document/shown'
import type { Site } from '../../shared/document/site'
import { type EdgeSpan, edgeSpans, nearestOnSpan, pointOnSpan } from '../geometry/edgeSpans'
import { resolvePath } from '../geometry/resolvePath'
import { editablePaths, isClosed } from './commands/findPath'

const knownSpans = new WeakMap<Path, ReadonlyMap<string, EdgeSpan>>()

const spansOf = (path: Path): ReadonlyMap<string, EdgeSpan> => {
  const known = knownSpans.get(path)
  if (known) return known
  const spans = edgeSpans([resolvePath(path, path.id, isClosed(path)).ring])
  knownSpans.set(path, spans)
  return spans
}

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
  const free: TapeEnd = { on: { on: 'free' }, last: [at[0], at[1]] }
  let best: { readonly end: TapeEnd; readonly farM: number } = { end: free, farM: onM }
  for (const path of editablePaths(site)) {
    if (!among) {
      const vertex = path.vertices.find(v => Math.hypot(v.at[0] - at[0], v.at[1] - at[1]) <= onM)
      if (vertex) return { on: { on: 'vertex', vertexId: vertex.id }, last: vertex.at }
    }
    for (const [edgeId, span] of spansOf(path)) {
      if (among && !among.includes(edgeId)) continue
      const { t, distanceM } = nearestOnSpan(span, at)
      if (distanceM < best.farM)
        best = { end: { on: { on: 'edge', edgeId, t }, last: [at[0], at[1]] }, farM: distanceM }
    }
  }
  return best.end
}

export const tapeLength = ({ ends: [a, b] }: TapeDimension): number =>
  Math.hypot(b.last[0] - a.last[0], b.last[1] - a.last[1])
