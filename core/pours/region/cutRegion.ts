/**
 * The working form of a region while it is being cut: rings of sides with prefix sums, so that the area and the
 * perimeter on either side of a cut are read in constant time. Meters; outer ring first, counter-clockwise; holes
 * clockwise: the material lies on the left of every side.
 */
import type { CurveEdge, CurveRegion, CurveRing } from '../../geometry/curve'

/** One side, a line or an arc of at most 45°. It ends where the next one starts. */
export interface Side {
  readonly edgeId: string
  readonly x: number
  readonly y: number
  /** Center and radius of an arc; all three are 0 for a line. */
  readonly cx: number
  readonly cy: number
  readonly r: number
  /** Radians, > 0 counter-clockwise; 0 for a line. */
  readonly sweep: number
  /** Number of the joint this side lies on, −1 for an edge of the slab. */
  readonly joint: number
  /** Interior angle of the uncut slab at the start point, degrees; 0 where the slab has no vertex. */
  readonly slabDeg: number
}

export interface CutRing {
  readonly sides: readonly Side[]
  /** cross[i] = twice the signed area swept from the origin along the first i sides, arc segments included. */
  readonly cross: Float64Array
  readonly length: Float64Array
  /** Interior angles at the starts of the sides, degrees, once somebody has asked for them. */
  degs: Float64Array | null
}

export interface CutRegion {
  readonly rings: readonly CutRing[]
  readonly areaM2: number
  readonly perimeterM: number
  /** Length of the sides that lie on joints. */
  readonly jointM: number
  /** Origin of the cross products, the same for every part of one slab. */
  readonly ox: number
  readonly oy: number
}

const maxSweep = Math.PI / 4

/** Twice the area between an arc and its chord: R²(θ − sin θ). For small θ the difference is summed as a series. */
export function segmentTerm(r: number, sweep: number): number {
  const s2 = sweep * sweep
  const rest = Math.abs(sweep) < 0.05 ? ((sweep * s2) / 6) * (1 - s2 / 20 + (s2 * s2) / 840) : sweep - Math.sin(sweep)
  return r * r * rest
}

/** All sides are made here: code that reads objects of one make stays fast. */
export const makeSide = (
  edgeId: string,
  x: number,
  y: number,
  cx: number,
  cy: number,
  r: number,
  sweep: number,
  joint: number,
  slabDeg: number,
): Side => ({ edgeId, x, y, cx, cy, r, sweep, joint, slabDeg })

export function makeRing(sides: readonly Side[], ox: number, oy: number): CutRing {
  const n = sides.length
  const cross = new Float64Array(n + 1)
  const length = new Float64Array(n + 1)
  for (let i = 0; i < n; i++) {
    const s = sides[i]!
    const e = sides[i + 1 === n ? 0 : i + 1]!
    const step = (s.x - ox) * (e.y - oy) - (s.y - oy) * (e.x - ox)
    cross[i + 1] = cross[i]! + (s.sweep === 0 ? step : step + segmentTerm(s.r, s.sweep))
    length[i + 1] =
      length[i]! +
      (s.sweep === 0 ? Math.sqrt((e.x - s.x) * (e.x - s.x) + (e.y - s.y) * (e.y - s.y)) : s.r * Math.abs(s.sweep))
  }
  return { sides, cross, length, degs: null }
}

export const ringArea = (ring: CutRing): number => ring.cross[ring.sides.length]! / 2
export const ringLength = (ring: CutRing): number => ring.length[ring.sides.length]!

export function makeRegion(rings: readonly CutRing[], ox: number, oy: number): CutRegion {
  let areaM2 = 0
  let perimeterM = 0
  let jointM = 0
  for (const ring of rings) {
    areaM2 += ringArea(ring)
    perimeterM += ringLength(ring)
    for (let i = 0; i < ring.sides.length; i++)
      if (ring.sides[i]!.joint >= 0) jointM += ring.length[i + 1]! - ring.length[i]!
  }
  return { rings, areaM2, perimeterM, jointM, ox, oy }
}

function sidesOf(edge: CurveEdge): Side[] {
  const [x, y] = edge.from
  if (!edge.arc) return [makeSide(edge.edgeId, x, y, 0, 0, 0, 0, -1, 0)]
  const { center, radiusM, sweepRad } = edge.arc
  const parts = Math.max(1, Math.ceil(Math.abs(sweepRad) / maxSweep - 1e-9))
  const start = Math.atan2(y - center[1], x - center[0])
  const sides: Side[] = []
  for (let i = 0; i < parts; i++) {
    const angle = start + (sweepRad * i) / parts
    const px = i === 0 ? x : center[0] + radiusM * Math.cos(angle)
    const py = i === 0 ? y : center[1] + radiusM * Math.sin(angle)
    sides.push(makeSide(edge.edgeId, px, py, center[0], center[1], radiusM, sweepRad / parts, -1, 0))
  }
  return sides
}

/** Unit tangent at the start or the end of side i. */
export function tangentAt(ring: CutRing, i: number, atEnd: boolean): readonly [number, number] {
  const s = ring.sides[i]!
  const e = ring.sides[i + 1 === ring.sides.length ? 0 : i + 1]!
  if (s.sweep === 0) {
    const length = Math.sqrt((e.x - s.x) * (e.x - s.x) + (e.y - s.y) * (e.y - s.y))
    return [(e.x - s.x) / length, (e.y - s.y) / length]
  }
  const p = atEnd ? e : s
  const sign = s.sweep > 0 ? 1 / s.r : -1 / s.r
  return [-(p.y - s.cy) * sign, (p.x - s.cx) * sign]
}

/** Interior angles at the starts of the sides, degrees in (0, 360); arcs count by their tangents. */
export function interiorDegs(ring: CutRing): Float64Array {
  if (ring.degs) return ring.degs
  const n = ring.sides.length
  const degs = new Float64Array(n)
  const before = tangentAt(ring, n - 1, true)
  let ax = before[0]
  let ay = before[1]
  for (let i = 0; i < n; i++) {
    const s = ring.sides[i]!
    const e = ring.sides[i + 1 === n ? 0 : i + 1]!
    // The turn needs no unit vectors.
    const sign = s.sweep > 0 ? 1 : -1
    const bx = s.sweep === 0 ? e.x - s.x : -(s.y - s.cy) * sign
    const by = s.sweep === 0 ? e.y - s.y : (s.x - s.cx) * sign
    degs[i] = 180 - (Math.atan2(ax * by - ay * bx, ax * bx + ay * by) * 180) / Math.PI
    ax = s.sweep === 0 ? bx : -(e.y - s.cy) * sign
    ay = s.sweep === 0 ? by : (e.x - s.cx) * sign
  }
  ring.degs = degs
  return degs
}

function cutRing(ring: CurveRing, ox: number, oy: number): CutRing {
  const bare = makeRing(ring.flatMap(sidesOf), ox, oy)
  const degs = interiorDegs(bare)
  const sides = bare.sides.map((s, i) => makeSide(s.edgeId, s.x, s.y, s.cx, s.cy, s.r, s.sweep, s.joint, degs[i]!))
  return makeRing(sides, ox, oy)
}

/** Arcs are cut into parts of at most 45° that keep their edge id. */
export function toCutRegion(region: CurveRegion): CutRegion {
  const [ox, oy] = region.outer[0]!.from
  return makeRegion(
    [region.outer, ...region.holes].map(ring => cutRing(ring, ox, oy)),
    ox,
    oy,
  )
}

const continues = (a: Side, b: Side): boolean =>
  a.sweep !== 0 &&
  b.sweep !== 0 &&
  a.edgeId === b.edgeId &&
  a.r === b.r &&
  a.cx === b.cx &&
  a.cy === b.cy &&
  a.sweep > 0 === b.sweep > 0

function curveRing(ring: CutRing, jointId: (joint: number) => string): CurveRing {
  const n = ring.sides.length
  let start = 0
  for (let i = 0; i < n; i++)
    if (!continues(ring.sides[(i + n - 1) % n]!, ring.sides[i]!)) {
      start = i
      break
    }
  const edges: CurveEdge[] = []
  for (let k = 0; k < n; ) {
    const first = ring.sides[(start + k) % n]!
    let sweepRad = first.sweep
    let last = first
    k++
    while (k < n && continues(last, ring.sides[(start + k) % n]!)) {
      last = ring.sides[(start + k) % n]!
      sweepRad += last.sweep
      k++
    }
    const next = ring.sides[(start + k) % n]!
    const edge = {
      edgeId: first.joint >= 0 ? jointId(first.joint) : first.edgeId,
      from: [first.x, first.y] as const,
      to: [next.x, next.y] as const,
    }
    edges.push(
      first.sweep === 0 ? edge : { ...edge, arc: { center: [first.cx, first.cy], radiusM: first.r, sweepRad } },
    )
  }
  return edges
}

/** Back to the shared form: the parts of one arc become one edge again. */
export function toCurveRegion(region: CutRegion, jointId: (joint: number) => string): CurveRegion {
  const [outer, ...holes] = region.rings.map(ring => curveRing(ring, jointId))
  return { outer: outer!, holes }
}
