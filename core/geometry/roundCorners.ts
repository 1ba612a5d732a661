import type { Pt } from '../../shared/document/primitives'
import type { CurveEdge } from './curve'
import { angleFrom, tangentAt } from './edgeAt'
import { edgeLength } from './edgeLength'
import { intersectSupports, projectOn, type Support, supportOf } from './intersectSupports'

/** The start vertex of an edge: the corner between the edge before and the edge itself. */
export interface Corner {
  readonly id: string
  readonly roundM: number | undefined
}

interface Rounding {
  readonly arc: CurveEdge
  /** Cut off the end of the edge before, and off the start of the edge after, meters of length. */
  readonly trimBeforeM: number
  readonly trimAfterM: number
}

/** Below this sine of the turn the two edges run on smoothly and there is no corner to round. */
const smoothSine = 1e-6

/** The support moved `distanceM` to the left of travel; undefined where an arc's radius would vanish. */
function shift(edge: CurveEdge, distanceM: number): Support | undefined {
  const s = supportOf(edge)
  if (s.line) {
    const [ux, uy] = s.along
    return { line: true, along: s.along, at: [s.at[0] - uy * distanceM, s.at[1] + ux * distanceM] }
  }
  const radiusM = s.radiusM - Math.sign(edge.arc!.sweepRad) * distanceM
  return radiusM > 1e-9 ? { line: false, center: s.center, radiusM } : undefined
}

/** Foot of the rounding's center on the edge's support: the tangent point. */
const foot = (edge: CurveEdge, c: Pt): Pt => projectOn(supportOf(edge), c)
const turnFull = 2 * Math.PI
const wrap = (a: number) => a - Math.floor(a / turnFull) * turnFull

/** Length along the edge from its start (or back from its end) to a point of it; an arc measures on around its circle. */
function runTo(edge: CurveEdge, p: Pt, fromEnd: boolean): number {
  if (!edge.arc) {
    const origin = fromEnd ? edge.to : edge.from
    const [ux, uy] = tangentAt(edge, 0)
    const t = (p[0] - origin[0]) * ux + (p[1] - origin[1]) * uy
    return fromEnd ? -t : t
  }
  const { center, radiusM, sweepRad } = edge.arc
  const here = angleFrom(center, p)
  const d = fromEnd ? angleFrom(center, edge.to) - here : here - angleFrom(center, edge.from)
  return wrap(sweepRad > 0 ? d : -d) * radiusM
}

/** The arc of radius `roundM` tangent to both edges next to their common corner; undefined where there is none. */
function fitRounding(before: CurveEdge, after: CurveEdge, { id, roundM }: Corner): Rounding | 'smooth' | undefined {
  if (roundM === undefined) return 'smooth'
  const u = tangentAt(before, 1)
  const v = tangentAt(after, 0)
  const sine = u[0] * v[1] - u[1] * v[0]
  if (Math.abs(sine) < smoothSine) return u[0] * v[0] + u[1] * v[1] > 0 ? 'smooth' : undefined
  const side = Math.sign(sine)
  const a = shift(before, side * roundM)
  const b = shift(after, side * roundM)
  if (!a || !b) return undefined
  let best: Rounding | undefined
  for (const center of intersectSupports(a, b)) {
    const from = foot(before, center)
    const to = foot(after, center)
    const trimBeforeM = runTo(before, from, true)
    const trimAfterM = runTo(after, to, false)
    const tooLong = trimBeforeM > edgeLength(before) * (1 + 1e-9) || trimAfterM > edgeLength(after) * (1 + 1e-9)
    if (trimBeforeM <= 0 || trimAfterM <= 0 || tooLong) continue
    if (best && trimBeforeM + trimAfterM >= best.trimBeforeM + best.trimAfterM) continue
    const sweepRad = side * wrap(side * (angleFrom(center, to) - angleFrom(center, from)))
    best = { arc: { edgeId: `${id}~`, from, to, arc: { center, radiusM: roundM, sweepRad } }, trimBeforeM, trimAfterM }
  }
  return best
}

/** The edge between two new end points on it. */
function trimEdge(edge: CurveEdge, from: Pt, to: Pt, lengthM: number): CurveEdge {
  if (!edge.arc) return { edgeId: edge.edgeId, from, to }
  const sweepRad = Math.sign(edge.arc.sweepRad) * (lengthM / edge.arc.radiusM)
  return { edgeId: edge.edgeId, from, to, arc: { ...edge.arc, sweepRad } }
}

export interface RoundedCorners {
  readonly ring: CurveEdge[]
  /** Corners left sharp because their radius does not fit between their neighbors. */
  readonly tooLarge: readonly { readonly vertexId: string; readonly roundM: number; readonly at: Pt }[]
}

/**
 * Puts a tangent arc, id `${vertexId}~`, at every corner with a radius: between lines and arcs in any combination.
 * `corners[i]` is the corner before `edges[i]`; on an open chain the first corner is an end and never rounded.
 * Where two roundings need more of an edge than it has, both corners stay sharp (so that the answer does not depend
 * on where the ring starts). An edge wholly used up by its roundings disappears.
 */
export function roundCorners(edges: readonly CurveEdge[], corners: readonly Corner[], closed: boolean): RoundedCorners {
  const n = edges.length
  const fits: (Rounding | undefined)[] = new Array<Rounding | undefined>(n).fill(undefined)
  const failed = new Set<number>()
  for (let i = closed ? 0 : 1; i < n; i++) {
    const fit = fitRounding(edges[(i + n - 1) % n]!, edges[i]!, corners[i]!)
    if (fit === undefined) failed.add(i)
    else if (fit !== 'smooth') fits[i] = fit
  }
  for (let i = 0; i < n; i++) {
    const next = closed ? (i + 1) % n : i + 1
    const head = fits[i]
    const tail = next < n ? fits[next] : undefined
    if (!head || !tail) continue
    if (head.trimAfterM + tail.trimBeforeM > edgeLength(edges[i]!) * (1 + 1e-9)) {
      failed.add(i)
      failed.add(next)
    }
  }
  for (const i of failed) fits[i] = undefined

  const ring: CurveEdge[] = []
  for (let i = 0; i < n; i++) {
    const edge = edges[i]!
    const next = closed ? (i + 1) % n : i + 1
    const head = fits[i]
    const tail = next < n ? fits[next] : undefined
    if (head) ring.push(head.arc)
    if (!head && !tail) {
      ring.push(edge)
      continue
    }
    const left = edgeLength(edge) - (head?.trimAfterM ?? 0) - (tail?.trimBeforeM ?? 0)
    if (left > 1e-9) ring.push(trimEdge(edge, head?.arc.to ?? edge.from, tail?.arc.from ?? edge.to, left))
  }
  const tooLarge = [...failed]
    .sort((a, b) => a - b)
    .map(i => ({ vertexId: corners[i]!.id, roundM: corners[i]!.roundM!, at: edges[i]!.from }))
  return { ring: joinEnds(ring, closed), tooLarge }
}

/** Makes every edge start at the very point where the one before ends. */
function joinEnds(ring: CurveEdge[], closed: boolean): CurveEdge[] {
  return ring.map((edge, i) => {
    const before = i > 0 ? ring[i - 1]! : closed ? ring[ring.length - 1]! : undefined
    return before && before.to !== edge.from ? { ...edge, from: before.to } : edge
  })
}
