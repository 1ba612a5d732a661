/** Where unbounded lines and full circles meet. */
import type { Pt } from '../../shared/document/primitives'
import type { CurveEdge } from './curve'

export type Support =
  | { readonly line: true; readonly at: Pt /** Unit. */; readonly along: Pt }
  | { readonly line: false; readonly center: Pt; readonly radiusM: number }

/** The line or circle an edge lies on. The edge must have a length. */
export function supportOf({ from, to, arc }: CurveEdge): Support {
  if (arc) return { line: false, center: arc.center, radiusM: arc.radiusM }
  const dx = to[0] - from[0]
  const dy = to[1] - from[1]
  const l = Math.hypot(dx, dy)
  return { line: true, at: from, along: [dx / l, dy / l] }
}

/** The point of the support nearest to `p`; for a circle, `p` may not be its center. */
export function projectOn(s: Support, p: Pt): Pt {
  if (s.line) {
    const t = (p[0] - s.at[0]) * s.along[0] + (p[1] - s.at[1]) * s.along[1]
    return [s.at[0] + t * s.along[0], s.at[1] + t * s.along[1]]
  }
  const dx = p[0] - s.center[0]
  const dy = p[1] - s.center[1]
  const k = s.radiusM / Math.hypot(dx, dy)
  return [s.center[0] + dx * k, s.center[1] + dy * k]
}

function lineLine(a: Pt, u: Pt, b: Pt, v: Pt): Pt[] {
  const den = u[0] * v[1] - u[1] * v[0]
  if (Math.abs(den) < 1e-12) return []
  const t = ((b[0] - a[0]) * v[1] - (b[1] - a[1]) * v[0]) / den
  return [[a[0] + t * u[0], a[1] + t * u[1]]]
}

/** A line that misses a circle by less than `slackM` touches it. */
function lineCircle(a: Pt, u: Pt, center: Pt, radiusM: number, slackM: number): Pt[] {
  const along = (center[0] - a[0]) * u[0] + (center[1] - a[1]) * u[1]
  const foot: Pt = [a[0] + along * u[0], a[1] + along * u[1]]
  const off = (center[0] - a[0]) * -u[1] + (center[1] - a[1]) * u[0]
  const half2 = (radiusM - off) * (radiusM + off)
  if (half2 <= 0) return Math.abs(off) - radiusM <= slackM ? [foot] : []
  const half = Math.sqrt(half2)
  return [
    [foot[0] - half * u[0], foot[1] - half * u[1]],
    [foot[0] + half * u[0], foot[1] + half * u[1]],
  ]
}

function circleCircle(a: Pt, ra: number, b: Pt, rb: number, slackM: number): Pt[] {
  const dx = b[0] - a[0]
  const dy = b[1] - a[1]
  const d = Math.hypot(dx, dy)
  if (d < 1e-9) return []
  const along = (d + ((ra - rb) * (ra + rb)) / d) / 2
  const foot: Pt = [a[0] + (along * dx) / d, a[1] + (along * dy) / d]
  const half2 = (ra - along) * (ra + along)
  if (half2 <= 0) {
    const miss = Math.max(d - ra - rb, Math.abs(ra - rb) - d)
    if (miss > slackM) return []
    const reach = along >= 0 ? ra : -ra
    return [[a[0] + (reach * dx) / d, a[1] + (reach * dy) / d]]
  }
  const half = Math.sqrt(half2)
  return [
    [foot[0] - (half * dy) / d, foot[1] + (half * dx) / d],
    [foot[0] + (half * dy) / d, foot[1] - (half * dx) / d],
  ]
}

/**
 * Common points of two supports: none, one (crossing lines, or a touch within `slackM`) or two.
 * Parallel lines and concentric circles have none here, coincident ones included.
 */
export function intersectSupports(a: Support, b: Support, slackM = 0): Pt[] {
  if (a.line && b.line) return lineLine(a.at, a.along, b.at, b.along)
  if (a.line && !b.line) return lineCircle(a.at, a.along, b.center, b.radiusM, slackM)
  if (!a.line && b.line) return lineCircle(b.at, b.along, a.center, a.radiusM, slackM)
  if (!a.line && !b.line) return circleCircle(a.center, a.radiusM, b.center, b.radiusM, slackM)
  return []
}
