/** Points and directions along one edge. */
import type { Pt } from '../../shared/document/primitives'
import type { Arc, CurveEdge } from './curve'

/** Angle of a point seen from the arc's center, radians. */
export function angleFrom(center: Pt, p: Pt): number {
  return Math.atan2(p[1] - center[1], p[0] - center[0])
}

/** The point of a circle at an angle. */
export function onCircle(arc: Pick<Arc, 'center' | 'radiusM'>, angleRad: number): Pt {
  return [arc.center[0] + arc.radiusM * Math.cos(angleRad), arc.center[1] + arc.radiusM * Math.sin(angleRad)]
}

/** The point at share `t` (0 … 1) of the edge's length. */
export function pointAt(edge: CurveEdge, t: number): Pt {
  if (t <= 0) return edge.from
  if (t >= 1) return edge.to
  if (edge.arc) return onCircle(edge.arc, angleFrom(edge.arc.center, edge.from) + t * edge.arc.sweepRad)
  return [edge.from[0] + t * (edge.to[0] - edge.from[0]), edge.from[1] + t * (edge.to[1] - edge.from[1])]
}

/** Unit direction of travel at the edge's start (`t` = 0) or end (`t` = 1). */
export function tangentAt(edge: CurveEdge, t: 0 | 1): Pt {
  if (edge.arc) {
    const p = t === 0 ? edge.from : edge.to
    const { center, radiusM, sweepRad } = edge.arc
    const s = Math.sign(sweepRad) / radiusM
    return [-(p[1] - center[1]) * s, (p[0] - center[0]) * s]
  }
  const dx = edge.to[0] - edge.from[0]
  const dy = edge.to[1] - edge.from[1]
  const l = Math.hypot(dx, dy)
  return [dx / l, dy / l]
}
