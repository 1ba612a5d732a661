import type { Pt } from '../../shared/document/primitives'
import { edgeMeets, pointBounds } from './bounds'
import type { CurveEdge, CurveRing } from './curve'
import { edgeLength } from './edgeLength'
import { type EndCuts, miterLimit, type StripNames } from './edgeStrips'
import { runAlong } from './intersectEdges'
import { intersectSupports, type Support, supportOf } from './intersectSupports'
import { leftOf } from './leftOf'

/** Nearer than this to the band an edge of the slab may have a part in its shape, and booleans decide. */
const clearM = 1e-3
/** An end no farther than this off an edge lies on it, rounding aside. */
const exactM = 1e-9

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
    const square: Pt = [at[0] + aside[0] * side * halfM, at[1] + aside[1] * side * halfM]
    if (!cutter) return square
    if (cutter.arc || Math.abs(leftOf(cutter.from, cutter.to, at)) > exactM) return undefined
    const [corner] = intersectSupports({ ...axis, at: square }, supportOf(cutter))
    if (!corner || Math.hypot(corner[0] - square[0], corner[1] - square[1]) >= miterLimit * halfM) return undefined
    const run = runAlong(cutter, corner)
    return run > clearM && run < edgeLength(cutter) - clearM ? corner : undefined
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
