/**
 * The ground within a given depth to the left of a ring's (or an open line's) edges, as overlapping pieces: one strip per
 * edge with its inner side parallel (an arc's: concentric), a miter at every re-entrant corner, and a wedge where a strip
 * runs on to the edge that cuts it. Filled non-zero and clipped to the slab, the pieces are the exact mitered band.
 */
import type { Pt } from '../../shared/document/primitives'
import type { CurveEdge, CurveRing } from './curve'
import { tangentAt } from './edgeAt'
import { intersectSupports, type Support, supportOf } from './intersectSupports'

/** Depth to the left of an edge, meters; 0 = no strip there. */
export interface StripEdge {
  readonly edge: CurveEdge
  readonly depthM: number
}

/** Below this sine two edges run on smoothly. */
const smoothSine = 1e-6
/**
 * A strip runs on to the edge that cuts it where its tip is no sharper than 45°, as at the miter of a square corner; a
 * sharper one would be a feather that no form holds, and the end is square. Common practice, no source.
 */
const leastCutSine = Math.SQRT1_2 - 1e-9
/** A miter longer than this many depths is cut off square; a strip's end is extended no farther. */
export const miterLimit = 10

const add = (p: Pt, v: Pt, k: number): Pt => [p[0] + v[0] * k, p[1] + v[1] * k]
const dot = (a: Pt, b: Pt) => a[0] * b[0] + a[1] * b[1]
const cross = (a: Pt, b: Pt) => a[0] * b[1] - a[1] * b[0]
const left = (t: Pt): Pt => [-t[1], t[0]]

/** The names the pieces' edges carry: what became a band's inner side, and what is only a cut across it. */
export interface StripNames {
  readonly inner: string
  readonly cut: string
}

function straight(edgeId: string, points: readonly Pt[]): CurveEdge[] {
  const edges: CurveEdge[] = []
  for (let i = 1; i < points.length; i++) edges.push({ edgeId, from: points[i - 1]!, to: points[i]! })
  return edges
}

/** Moves the edge's ends to the left by its depth. */
function innerEnds(edge: CurveEdge, depthM: number): [Pt, Pt] {
  return [add(edge.from, left(tangentAt(edge, 0)), depthM), add(edge.to, left(tangentAt(edge, 1)), depthM)]
}

/** The strip along one edge, counter-clockwise. Inside an arc tighter than the depth it is the sector to the center. */
function stripOf(edge: CurveEdge, depthM: number, from: Pt, to: Pt, names: StripNames): CurveRing {
  if (!edge.arc)
    return [
      edge,
      ...straight(names.cut, [edge.to, to]),
      { edgeId: names.inner, from: to, to: from },
      ...straight(names.cut, [from, edge.from]),
    ]
  const { center, radiusM, sweepRad } = edge.arc
  const inner = radiusM - Math.sign(sweepRad) * depthM
  if (inner <= 1e-6) return [edge, ...straight(names.cut, [edge.to, center, edge.from])]
  return [
    edge,
    ...straight(names.cut, [edge.to, to]),
    { edgeId: names.inner, from: to, to: from, arc: { center, radiusM: inner, sweepRad: -sweepRad } },
    ...straight(names.cut, [from, edge.from]),
  ]
}

/** The miter outside a re-entrant corner at `v`, between the strips' inner corners `a` and `b`. */
function miterOf(
  v: Pt,
  t1: Pt,
  t2: Pt,
  d1: number,
  d2: number,
  a: Pt,
  b: Pt,
  names: StripNames,
): CurveRing | undefined {
  const sine = -cross(t1, t2)
  const cosine = dot(t1, t2)
  const beyond1 = (d2 - d1 * cosine) / sine
  const beyond2 = (d1 - d2 * cosine) / sine
  const depth = Math.max(d1, d2)
  const mitered = sine > smoothSine && Math.hypot(beyond1, d1) <= miterLimit * depth
  if (mitered && (beyond1 < 0 || beyond2 < 0)) return undefined
  if (mitered) {
    const tip = add(a, t1, beyond1)
    return [
      ...straight(names.cut, [v, b]),
      { edgeId: names.inner, from: b, to: tip },
      { edgeId: names.inner, from: tip, to: a },
      ...straight(names.cut, [a, v]),
    ]
  }
  // squared off: cut across the bisector at the depth itself, d tan(turn/4) beyond each strip's end
  const quarter = Math.tan(Math.atan2(Math.max(0, sine), cosine) / 4)
  const p = add(a, t1, d1 * quarter)
  const q = add(b, t2, -d2 * quarter)
  return [
    ...straight(names.cut, [v, b]),
    { edgeId: names.inner, from: b, to: q },
    { edgeId: names.inner, from: q, to: p },
    { edgeId: names.inner, from: p, to: a },
    ...straight(names.cut, [a, v]),
  ]
}

function shifted(edge: CurveEdge, depthM: number): Support | undefined {
  const s = supportOf(edge)
  if (s.line) return { line: true, along: s.along, at: add(s.at, left(s.along), depthM) }
  const radiusM = s.radiusM - Math.sign(edge.arc!.sweepRad) * depthM
  return radiusM > 1e-6 ? { line: false, center: s.center, radiusM } : undefined
}

/** The piece of a support from one of its points to another, the short way. */
function pieceOf(s: Support, edgeId: string, from: Pt, to: Pt): CurveEdge {
  if (s.line) return { edgeId, from, to }
  const a = [from[0] - s.center[0], from[1] - s.center[1]] as const
  const b = [to[0] - s.center[0], to[1] - s.center[1]] as const
  const sweepRad = Math.atan2(cross(a, b), dot(a, b))
  return { edgeId, from, to, arc: { center: s.center, radiusM: s.radiusM, sweepRad } }
}

/**
 * The wedge between a strip's square end and the edge that cuts it at an obtuse corner `v`. `atEnd`: the strip's end,
 * cut by the next edge; else its start, cut by the edge before. None where the cut lies more than 10 depths away.
 */
function wedgeOf(strip: StripEdge, cutting: CurveEdge, atEnd: boolean, innerCorner: Pt, names: StripNames) {
  const v = atEnd ? strip.edge.to : strip.edge.from
  const side = shifted(strip.edge, strip.depthM)
  if (!side) return undefined
  const cutter = supportOf(cutting)
  const ahead = add([0, 0], tangentAt(strip.edge, atEnd ? 1 : 0), atEnd ? 1 : -1)
  let tip: Pt | undefined
  let least = miterLimit * strip.depthM
  for (const x of intersectSupports(side, cutter)) {
    const away: Pt = [x[0] - innerCorner[0], x[1] - innerCorner[1]]
    const reach = Math.hypot(away[0], away[1])
    if (reach > 1e-9 && reach < least && dot(away, ahead) > 0) {
      least = reach
      tip = x
    }
  }
  if (!tip) return undefined
  const along = pieceOf(cutter, names.cut, atEnd ? v : tip, atEnd ? tip : v)
  const inner = pieceOf(side, names.inner, atEnd ? tip : innerCorner, atEnd ? innerCorner : tip)
  return atEnd
    ? [along, inner, ...straight(names.cut, [innerCorner, v])]
    : [inner, along, ...straight(names.cut, [v, innerCorner])]
}

/** Edges of the slab that an open line's start and end lie on: its strip runs on to them. */
export interface EndCuts {
  readonly start: readonly CurveEdge[]
  readonly end: readonly CurveEdge[]
}

/**
 * The pieces for a chain of edges, each counter-clockwise; edges of depth 0 only cut the strips of their neighbors.
 * At an acute or right corner the clip against the slab does the cutting; beside a re-entrant corner whose other edge
 * has no strip, beside an obtuse one that turns by less than 45°, and at an end of an open line without an edge to run on
 * to, the end is square.
 */
export function edgeStrips(
  chain: readonly StripEdge[],
  closed: boolean,
  names: StripNames,
  { start, end }: EndCuts = { start: [], end: [] },
): CurveRing[] {
  const n = chain.length
  const inner = chain.map(({ edge, depthM }) => innerEnds(edge, depthM))
  const pieces: CurveRing[] = []
  const joints: { i: number; j: number }[] = []
  for (let i = 0; i < n; i++) {
    const j = i + 1 < n ? i + 1 : closed ? 0 : -1
    if (j >= 0) joints.push({ i, j })
  }
  for (const { i, j } of joints) {
    const a = chain[i]!
    const b = chain[j]!
    const t1 = tangentAt(a.edge, 1)
    const t2 = tangentAt(b.edge, 0)
    const sine = cross(t1, t2)
    const smooth = Math.abs(sine) < smoothSine && dot(t1, t2) > 0
    if (smooth) {
      // one inner corner for both, lest rounding opens a crack between them
      if (a.depthM === b.depthM) inner[j]![0] = inner[i]![1]
      continue
    }
    if (a.depthM > 0 && b.depthM > 0 && sine <= 0) {
      const miter = miterOf(a.edge.to, t1, t2, a.depthM, b.depthM, inner[i]![1], inner[j]![0], names)
      if (miter) pieces.push(miter)
    } else if (sine > 0 && dot(t1, t2) > 0 && sine >= leastCutSine) {
      if (a.depthM * dot(t1, t2) > b.depthM + 1e-9) {
        const wedge = wedgeOf(a, b.edge, true, inner[i]![1], names)
        if (wedge) pieces.push(wedge)
      }
      if (b.depthM * dot(t1, t2) > a.depthM + 1e-9) {
        const wedge = wedgeOf(b, a.edge, false, inner[j]![0], names)
        if (wedge) pieces.push(wedge)
      }
    }
  }
  const ends: readonly [StripEdge | undefined, readonly CurveEdge[], boolean, Pt | undefined][] = [
    [chain[0], start, false, inner[0]?.[0]],
    [chain[n - 1], end, true, inner[n - 1]?.[1]],
  ]
  for (const [strip, cutters, atEnd, corner] of ends)
    for (const cutter of cutters) {
      const wedge = strip && corner && wedgeOf(strip, cutter, atEnd, corner, names)
      if (wedge) pieces.push(wedge)
    }
  chain.forEach(({ edge, depthM }, i) => {
    if (depthM > 0) pieces.push(stripOf(edge, depthM, inner[i]![0], inner[i]![1], names))
  })
  return pieces
}
