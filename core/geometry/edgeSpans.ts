/** An edge of the document along resolved rings: all its parts in ring order, and places along them. */
import type { Pt } from '../../shared/document/primitives'
import type { CurveEdge, CurveRing } from './curve'
import { pointAt } from './edgeAt'
import { edgeLength } from './edgeLength'
import { nearestOnEdge } from './nearestOnEdge'
import { ringLength } from './ringLength'

/** The parts of one edge, in the order of travel. */
export type EdgeSpan = readonly CurveEdge[]

/** Every edge id of the rings with its parts; where a ring starts in the middle of an edge, that edge still runs on. */
export function edgeSpans(rings: readonly CurveRing[]): ReadonlyMap<string, EdgeSpan> {
  const spans = new Map<string, CurveEdge[]>()
  for (const ring of rings) {
    const n = ring.length
    const start = Math.max(
      0,
      ring.findIndex((edge, i) => ring[(i + n - 1) % n]!.edgeId !== edge.edgeId),
    )
    for (let k = 0; k < n; k++) {
      const edge = ring[(start + k) % n]!
      const span = spans.get(edge.edgeId)
      if (span) span.push(edge)
      else spans.set(edge.edgeId, [edge])
    }
  }
  return spans
}

/** The point at share `t` (0 … 1) of the span's length. */
export function pointOnSpan(span: EdgeSpan, t: number): Pt {
  let left = t * ringLength(span)
  for (const [i, edge] of span.entries()) {
    const length = edgeLength(edge)
    if (left <= length || i === span.length - 1) return pointAt(edge, left / length)
    left -= length
  }
  throw new RangeError('an edge span without edges')
}

/** The share of the span's length nearest to a point, and how far off the point lies, meters. */
function nearestOnSpan(span: EdgeSpan, p: Pt): { readonly t: number; readonly distanceM: number } {
  const whole = ringLength(span)
  let best = { t: 0, distanceM: Infinity }
  let run = 0
  for (const edge of span) {
    const { at, t } = nearestOnEdge(edge, p)
    const length = edgeLength(edge)
    const distanceM = Math.hypot(at[0] - p[0], at[1] - p[1])
    if (distanceM < best.distanceM) best = { t: Math.min(1, (run + t * length) / whole), distanceM }
    run += length
  }
  return best
}

/** A place on an edge of the document. */
export interface SpanPlace {
  readonly edgeId: string
  /** Share of the edge's length, 0 … 1. */
  readonly t: number
  /** How far off the point lies, meters. */
  readonly distanceM: number
}

/** The edge that is nearest to a point and nearer than `withinM`; of those as near, the first. */
export function nearestSpan(
  spans: Iterable<readonly [string, EdgeSpan]>,
  p: Pt,
  withinM = Infinity,
): SpanPlace | undefined {
  let best: SpanPlace | undefined
  for (const [edgeId, span] of spans) {
    const { t, distanceM } = nearestOnSpan(span, p)
    if (distanceM < (best?.distanceM ?? withinM)) best = { edgeId, t, distanceM }
  }
  return best
}
