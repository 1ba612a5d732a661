/** From drawing-frame meters (y up) to points on a page (y down). */
import type { Pt } from '../../shared/document/primitives'
import type { CurveEdge, CurveRegion, CurveRing, Region, Ring } from '../geometry/curve'
import { flattenRing } from '../geometry/flattenRing'
import { closedPath, num, type XY } from './svgPen'

export interface Frame {
  readonly ptPerM: number
  /** Where the drawing's (0, 0) lies on the page. */
  readonly originPt: XY
}

export const toPage = (frame: Frame, [x, y]: Pt): XY => [
  frame.originPt[0] + x * frame.ptPerM,
  frame.originPt[1] - y * frame.ptPerM,
]

export const ringToPage = (frame: Frame, ring: Ring): XY[] => ring.map(p => toPage(frame, p))

export const flatToPage = (frame: Frame, ring: CurveRing): XY[] => ringToPage(frame, flattenRing(ring))

const arcTo = (frame: Frame, edge: CurveEdge): string => {
  const { radiusM, sweepRad, center } = edge.arc!
  const r = num(radiusM * frame.ptPerM)
  const turn = sweepRad > 0 ? 0 : 1
  const to = (p: Pt, large: 0 | 1): string => {
    const [x, y] = toPage(frame, p)
    return `A${r} ${r} 0 ${large} ${turn} ${num(x)} ${num(y)}`
  }
  if (Math.abs(sweepRad) < 1.9 * Math.PI) return to(edge.to, Math.abs(sweepRad) > Math.PI ? 1 : 0)
  // An arc of nearly a whole turn is drawn in halves: an SVG arc needs two distinct ends.
  const angle = Math.atan2(edge.from[1] - center[1], edge.from[0] - center[0]) + sweepRad / 2
  return to([center[0] + radiusM * Math.cos(angle), center[1] + radiusM * Math.sin(angle)], 0) + to(edge.to, 0)
}

/** Path of one edge alone. */
export function edgePath(frame: Frame, edge: CurveEdge): string {
  const [x, y] = toPage(frame, edge.from)
  const [tx, ty] = toPage(frame, edge.to)
  return `M${num(x)} ${num(y)}${edge.arc === undefined ? `L${num(tx)} ${num(ty)}` : arcTo(frame, edge)}`
}

/** Path of a ring with its arcs as true arcs. */
export function curvePath(frame: Frame, ring: CurveRing): string {
  const first = ring[0]
  if (first === undefined) return ''
  const [x0, y0] = toPage(frame, first.from)
  let d = `M${num(x0)} ${num(y0)}`
  for (const edge of ring) {
    if (edge.arc !== undefined) d += arcTo(frame, edge)
    else {
      const [x, y] = toPage(frame, edge.to)
      d += `L${num(x)} ${num(y)}`
    }
  }
  return `${d}Z`
}

export const curveRegionPath = (frame: Frame, region: CurveRegion): string =>
  [region.outer, ...region.holes].map(ring => curvePath(frame, ring)).join('')

export const flatRegionPath = (frame: Frame, region: Region): string =>
  [region.ring, ...region.holes].map(ring => closedPath(ringToPage(frame, ring))).join('')

/** All rings of a region on the page, arcs as chords. */
export const regionRings = (frame: Frame, region: CurveRegion): XY[][] =>
  [region.outer, ...region.holes].map(ring => flatToPage(frame, ring))
