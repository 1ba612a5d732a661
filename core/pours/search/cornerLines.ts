/**
 * Lines through re-entrant corners in directions of their own: the shortest way across, as over a walk at its bend, the
 * miter of a bend, and the line to another such corner.
 */
import { reentrantAboveDeg } from '../pourCost'
import { type CutRegion, interiorDegs, tangentAt } from '../region/cutRegion'
import { isSameDirection } from './directions'
import type { Direction } from './searchContext'

export interface CornerLine {
  readonly direction: Direction
  readonly offset: number
  /** The corner: start of this side of this ring. */
  readonly ring: number
  readonly side: number
}

/** Sharper bends than this get no miter: it would leave corners under 60° at the far side. */
const miterBelowDeg = 250
/** With more corners than this the lines of the part's own directions must do. */
const mostCorners = 24
/** sin of 20°: a joint from corner to corner runs at most so far off a known direction. */
const mostOffSin = 0.342
/** A way across shorter than this is the corner's own edge (m). */
const leastAcrossM = 0.3

/** The nearest point straight across from the corner, as a direction; null where none lies between its two edges. */
function shortestAcross(region: CutRegion, x: number, y: number, from: readonly [number, number], deg: number) {
  let least = Number.POSITIVE_INFINITY
  let best: Direction | null = null
  const look = (px: number, py: number): void => {
    const dx = px - x
    const dy = py - y
    const d = Math.sqrt(dx * dx + dy * dy)
    if (d >= least || d < leastAcrossM) return
    const turn = (Math.atan2(from[0] * dy - from[1] * dx, from[0] * dx + from[1] * dy) * 180) / Math.PI
    const within = turn < 0 ? turn + 360 : turn
    if (within < 1 || within > deg - 1) return
    least = d
    best = { ux: dx / d, uy: dy / d }
  }
  for (const { sides } of region.rings)
    for (let i = 0; i < sides.length; i++) {
      const s = sides[i]!
      const e = sides[i + 1 === sides.length ? 0 : i + 1]!
      const cx = e.x - s.x
      const cy = e.y - s.y
      if (s.sweep === 0) {
        const t = ((x - s.x) * cx + (y - s.y) * cy) / (cx * cx + cy * cy)
        if (t > 1e-6 && t < 1 - 1e-6) look(s.x + t * cx, s.y + t * cy)
        continue
      }
      const d = Math.sqrt((x - s.cx) * (x - s.cx) + (y - s.cy) * (y - s.cy))
      if (d < 1e-6) continue
      for (const sign of [1, -1]) {
        const px = s.cx + (sign * s.r * (x - s.cx)) / d
        const py = s.cy + (sign * s.r * (y - s.cy)) / d
        // On the arc when it lies on the arc's side of the chord.
        if ((cx * (py - s.y) - cy * (px - s.x)) * s.sweep < 0) look(px, py)
      }
    }
  return best
}

export function cornerLines(region: CutRegion, known: readonly Direction[], toCorners: boolean): CornerLine[] {
  const lines: CornerLine[] = []
  const corners = region.rings.flatMap(ring =>
    ring.sides.filter((_, side) => interiorDegs(ring)[side]! > reentrantAboveDeg),
  )
  if (corners.length > mostCorners) return lines
  for (let ring = 0; ring < region.rings.length; ring++) {
    const whole = region.rings[ring]!
    const degs = interiorDegs(whole)
    for (let side = 0; side < whole.sides.length; side++) {
      const deg = degs[side]!
      if (deg <= reentrantAboveDeg) continue
      const { x, y } = whole.sides[side]!
      const from = tangentAt(whole, side, false)
      const found: Direction[] = []
      const across = shortestAcross(region, x, y, from, deg)
      if (across) found.push(across)
      if (deg < miterBelowDeg) {
        const half = (deg * Math.PI) / 360
        const c = Math.cos(half)
        const s = Math.sin(half)
        found.push({ ux: c * from[0] - s * from[1], uy: s * from[0] + c * from[1] })
      }
      for (const corner of toCorners ? corners : []) {
        const reach = Math.hypot(corner.x - x, corner.y - y)
        if (reach < leastAcrossM) continue
        const to = { ux: (corner.x - x) / reach, uy: (corner.y - y) / reach }
        if (known.some(d => Math.abs(d.ux * to.uy - d.uy * to.ux) < mostOffSin)) found.push(to)
      }
      for (const direction of found)
        if (!known.some(d => isSameDirection(d, direction)))
          lines.push({ direction, offset: -direction.uy * x + direction.ux * y, ring, side })
    }
  }
  return lines
}
