import type { Pt } from '../../shared/document/primitives'
import { edgeMeets, pointBounds } from './bounds'
import type { CurveEdge, CurveRing } from './curve'
import { type EndCuts, miterLimit, type StripNames } from './edgeStrips'
import { intersectSupports, type Support, supportOf } from './intersectSupports'

/** Nearer than this to the band an edge of the slab may have a part in its shape, and booleans decide. */
const clearM = 1e-3
/** An end no farther than this off an edge lies on it, rounding aside. */
const exactM = 1e-9

const along = (p: Pt, t: Pt, k: number): Pt => [p[0] + t[0] * k, p[1] + t[1] * k]

/** How far `p` lies to the left of the line from `from` to `to`, in meters. */
function leftOf(from: Pt, to: Pt, p: Pt): number {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  return (dx * (p[1] - from[1]) - dy * (p[0] - from[0])) / Math.hypot(dx, dy)
}

/** True where a line keeps an edge and a convex counter-clockwise ring clear of each other: one of its sides, or the edge. */
function isBeside(edge: CurveEdge, corners: readonly Pt[]): boolean {
  if (!edge.arc) {
    const offs = corners.map(corner => leftOf(edge.from, edge.to, corner))
    if (offs.every(off => off > clearM) || offs.every(off => off < -clearM)) return true
  }
  // An arc lies within its circle.
  const reaches: readonly (readonly [Pt, number])[] = edge.arc
    ? [[edge.arc.center, edge.arc.radiusM]]
    : [
        [edge.from, 0],
        [edge.to, 0],
      ]
  return corners.some((from, i) => {
    const to = corners[(i + 1) % corners.length]!
    return reaches.every(([p, reachM]) => leftOf(from, to, p) + reachM < -clearM)
  })
}

/**
 * The ring of a straight band whose ends lie square in the slab or on straight edges of it, counter-clockwise; undefined
 * where another edge of the slab comes near it, or an end is not that simple: then it is cut out by booleans, which give
 * the same ring. `boundary`: all edges of the slab; `ends`: those that the line's ends lie on. The band may still lie
 * outside the slab as a whole.
 */
export function plainBand(
  line: readonly CurveEdge[],
  widthM: number,
  boundary: readonly CurveEdge[],
  { start, end }: EndCuts,
  names: StripNames,
): CurveRing | undefined {
  const [edge] = line
  if (!edge || line.length > 1 || edge.arc || start.length > 1 || end.length > 1) return undefined
  const halfM = widthM / 2
  const axis = supportOf(edge) as Support & { readonly line: true }
  const aside: Pt = [-axis.along[1], axis.along[0]]
  const cornerAt = (at: Pt, [cutter]: readonly CurveEdge[], side: number): Pt | undefined => {
    const square = along(at, aside, side * halfM)
    if (!cutter) return square
    if (cutter.arc || Math.abs(leftOf(cutter.from, cutter.to, at)) > exactM) return undefined
    const [corner] = intersectSupports({ ...axis, at: square }, supportOf(cutter))
    if (!corner || Math.hypot(corner[0] - square[0], corner[1] - square[1]) >= miterLimit * halfM) return undefined
    const { at: foot, along: run } = supportOf(cutter) as Support & { readonly line: true }
    const t = (corner[0] - foot[0]) * run[0] + (corner[1] - foot[1]) * run[1]
    const lengthM = Math.hypot(cutter.to[0] - cutter.from[0], cutter.to[1] - cutter.from[1])
    return t > clearM && t < lengthM - clearM ? corner : undefined
  }
  const found = [
    cornerAt(edge.from, start, -1),
    cornerAt(edge.to, end, -1),
    cornerAt(edge.to, end, 1),
    cornerAt(edge.from, start, 1),
  ]
  const corners = found.filter(corner => corner !== undefined)
  if (corners.length < found.length) return undefined
  const forward = (from: Pt, to: Pt) => (to[0] - from[0]) * axis.along[0] + (to[1] - from[1]) * axis.along[1] > clearM
  if (!forward(corners[0]!, corners[1]!) || !forward(corners[3]!, corners[2]!)) return undefined
  const box = pointBounds(corners)
  const isClear = boundary.every(
    each => each === start[0] || each === end[0] || !edgeMeets(each, box, clearM) || isBeside(each, corners),
  )
  if (!isClear) return undefined
  return corners.map((from, i) => ({
    edgeId: i % 2 === 0 ? names.inner : names.cut,
    from,
    to: corners[(i + 1) % corners.length]!,
  }))
}
