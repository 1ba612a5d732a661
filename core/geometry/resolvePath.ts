import type { Edge, Path, Vertex } from '../../shared/document/path'
import type { Pt } from '../../shared/document/primitives'
import type { Finding } from '../../shared/problem'
import type { CurveEdge, CurveRing } from './curve'
import { roundCorners } from './roundCorners'

/** Two points nearer than this are one: far below anything built, far above rounding. */
export const samePointM = 1e-6
/** A mid-ordinate below this is a straight edge (over a 100 m chord the area changes by less than 1e-5 m²). */
const straightRiseM = 1e-7
/** The arc would turn by more than 348°: nothing a form can follow. */
const riseToChordLimit = 10

/**
 * The arc over a chord, from its mid-ordinate (rise) `riseM`, + = bulging to the right of travel:
 * sweep θ = 4 atan(2s/c), radius R = (c²/4 + s²)/(2|s|), center (c²/4 − s²)/(2s) to the left of the chord's middle.
 * Valid for any rise ≠ 0, beyond the half circle (|s| > c/2) included.
 * Source: circular segment, chord and height, CRC Standard Mathematical Tables, "Plane figures".
 */
export function edgeFromRise(edgeId: string, from: Pt, to: Pt, riseM: number | undefined): CurveEdge {
  if (riseM === undefined || Math.abs(riseM) < straightRiseM) return { edgeId, from, to }
  const dx = to[0] - from[0]
  const dy = to[1] - from[1]
  const chord = Math.hypot(dx, dy)
  const quarter = (chord * chord) / 4
  const away = (quarter - riseM * riseM) / (2 * riseM)
  return {
    edgeId,
    from,
    to,
    arc: {
      center: [(from[0] + to[0]) / 2 - (dy / chord) * away, (from[1] + to[1]) / 2 + (dx / chord) * away],
      radiusM: (quarter + riseM * riseM) / (2 * Math.abs(riseM)),
      sweepRad: 4 * Math.atan2(2 * riseM, chord),
    },
  }
}

export interface ResolvedPath {
  /** Closed, or the open chain of a band's line; empty after a stop. */
  readonly ring: CurveRing
  readonly findings: readonly Finding[]
}

/**
 * A path of the document with exact arcs and rounded corners, walked as it is stored.
 * `entityId` is what a finding points at (a slab, an opening, a band); `closed` false for a line with two ends.
 * A zero edge is left out with a `check`; a corner radius that does not fit leaves the corner sharp with a `check`.
 */
export function resolvePath(path: Path, entityId: string, closed = true): ResolvedPath {
  const { vertices, edges } = path
  const findings: Finding[] = []
  const tell = (code: Finding['code'], severity: Finding['severity'], point?: Pt, values: Finding['values'] = {}) => {
    findings.push({ code, severity, values, at: point ? { entityId, point } : { entityId } })
  }
  const first = vertices[0]
  if (edges.length !== (closed ? vertices.length : vertices.length - 1)) {
    tell('edgeCountMismatch', 'stop', first?.at, { vertices: vertices.length, edges: edges.length })
    return { ring: [], findings }
  }
  const curved = edges.some(e => e.riseM !== undefined && Math.abs(e.riseM) >= straightRiseM)
  const least = closed && !curved ? 3 : 2
  if (vertices.length < least) {
    tell('pathTooShort', 'stop', first?.at, { vertices: vertices.length, least })
    return { ring: [], findings }
  }

  const kept: { start: Vertex; edge: Edge; to: Pt }[] = []
  for (let i = 0; i < edges.length; i++) {
    const edge = edges[i] as Edge
    const start = vertices[i] as Vertex
    const to = (vertices[(i + 1) % vertices.length] as Vertex).at
    const chordM = Math.hypot(to[0] - start.at[0], to[1] - start.at[1])
    if (chordM < samePointM) {
      tell('zeroEdge', 'check', start.at, { edgeId: edge.id })
    } else if (edge.riseM !== undefined && Math.abs(edge.riseM) > riseToChordLimit * chordM) {
      tell('riseTooLarge', 'stop', start.at, { edgeId: edge.id, riseM: edge.riseM, chordM })
      return { ring: [], findings }
    } else kept.push({ start, edge, to })
  }
  const curves = kept.map(({ start, edge, to }, i) => {
    const next = kept[i + 1] ?? (closed ? kept[0] : undefined)
    return edgeFromRise(edge.id, start.at, next?.start.at ?? to, edge.riseM)
  })
  const leastEdges = !closed ? 1 : curves.some(c => c.arc) ? 2 : 3
  if (curves.length < leastEdges) {
    tell('pathTooShort', 'stop', first?.at, { vertices: curves.length + (closed ? 0 : 1), least })
    return { ring: [], findings }
  }

  const { ring, tooLarge } = roundCorners(
    curves,
    kept.map(k => ({ id: k.start.id, roundM: k.start.roundM })),
    closed,
  )
  for (const t of tooLarge) tell('roundTooLarge', 'check', t.at, { vertexId: t.vertexId, roundM: t.roundM })
  return { ring, findings }
}
