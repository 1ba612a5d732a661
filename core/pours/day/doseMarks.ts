/** A dose change as a place on the forms: tape distances along the form edges from named corners. */
import type { Pt } from '../../../shared/document/primitives'
import { distanceToEdge } from '../../geometry/contains'
import { cornerAngles } from '../../geometry/cornerAngles'
import type { CurveEdge, CurveRegion } from '../../geometry/curve'
import { edgeLength } from '../../geometry/edgeLength'
import { runAlong } from '../../geometry/intersectEdges'

export interface NamedCorner {
  /** A, B, C … counter-clockwise from the lowest, leftmost corner. */
  readonly name: string
  readonly at: Pt
}

export interface TapeMark {
  readonly at: Pt
  readonly corner: string
  /** Along the form, bends included. */
  readonly distanceM: number
}

/** A turn under this is no corner to hook a tape on. */
const cornerTurnRad = (10 * Math.PI) / 180

const letters = (index: number): string =>
  (index >= 26 ? letters(Math.floor(index / 26) - 1) : '') + String.fromCharCode(65 + (index % 26))

/** Distances along the outer ring at which its edges start. */
const runs = (ring: readonly CurveEdge[]): number[] => {
  let sum = 0
  return ring.map(edge => {
    const from = sum
    sum += edgeLength(edge)
    return from
  })
}

interface Corner extends NamedCorner {
  readonly alongM: number
}

function cornersOf(region: CurveRegion): Corner[] {
  const ring = region.outer
  const along = runs(ring)
  const sharp = cornerAngles(ring)
    .map(({ at, angleRad }, i) => ({ at, alongM: along[i]!, turnRad: Math.abs(Math.PI - angleRad) }))
    .filter(({ turnRad }) => turnRad > cornerTurnRad)
  // A round pour has no corner: its edges' first point is marked on the form instead.
  const found = sharp.length > 0 ? sharp : [{ at: ring[0]!.from, alongM: 0, turnRad: 0 }]
  const first = found.reduce((least, corner, i) => {
    const [x, y] = corner.at
    const [lx, ly] = found[least]!.at
    return y < ly - 1e-6 || (Math.abs(y - ly) <= 1e-6 && x < lx) ? i : least
  }, 0)
  return found.map((_, i) => {
    const { at, alongM } = found[(first + i) % found.length]!
    return { name: letters(i), at, alongM }
  })
}

export const nameCorners = (region: CurveRegion): readonly NamedCorner[] =>
  cornersOf(region).map(({ name, at }) => ({ name, at }))

/** The nearer corner by the form for a point on the outer ring; null where the point is on an opening. */
export function tapeMark(region: CurveRegion, at: Pt): TapeMark | null {
  const ring = region.outer
  const along = runs(ring)
  const wholeM = along.at(-1)! + edgeLength(ring.at(-1)!)
  const on = ring.findIndex(edge => distanceToEdge(edge, at) < 1e-4)
  if (on < 0) return null
  const edge = ring[on]!
  const pointM = along[on]! + runAlong(edge, at)
  const marks = cornersOf(region).map(({ name, alongM }) => {
    const apart = Math.abs(pointM - alongM)
    return { at, corner: name, distanceM: Math.min(apart, wholeM - apart) }
  })
  return marks.reduce((nearest, mark) => (mark.distanceM < nearest.distanceM - 1e-9 ? mark : nearest))
}

/** Both ends of a line across the pour; fewer where one lies on an opening. */
export const tapeMarks = (region: CurveRegion, from: Pt, to: Pt): readonly TapeMark[] =>
  [tapeMark(region, from), tapeMark(region, to)].flatMap(mark => (mark ? [mark] : []))
