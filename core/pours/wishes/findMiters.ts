/** Where the borders of a slab are mitered. */
import type { Pt } from '../../../shared/document/primitives'
import type { Border } from '../../../shared/document/slab'
import type { CurveEdge, CurveRing } from '../../geometry/curve'
import type { Miter } from './jointWishes'

/** A corner that turns by less has no miter worth the name (rad): 10°. */
const leastTurnRad = 0.1745

/** Unit tangent at the start or the end of an edge. */
function tangent(edge: CurveEdge, atEnd: boolean): readonly [number, number] {
  const p = atEnd ? edge.to : edge.from
  const [dx, dy] = edge.arc
    ? [
        -(p[1] - edge.arc.center[1]) * Math.sign(edge.arc.sweepRad),
        (p[0] - edge.arc.center[0]) * Math.sign(edge.arc.sweepRad),
      ]
    : [edge.to[0] - edge.from[0], edge.to[1] - edge.from[1]]
  const length = Math.hypot(dx, dy)
  return [dx / length, dy / length]
}

/** Width of all borders that run around the corner between two edges. */
const widthAround = (borders: readonly Border[], before: CurveEdge, after: CurveEdge): number =>
  borders.reduce((sum, { edges, widthM }) => {
    const has = (id: string) => edges === 'all' || edges.includes(id)
    return has(before.edgeId) && has(after.edgeId) ? sum + widthM : sum
  }, 0)

export interface FoundMiter extends Miter {
  /** The slab's corner is under 180° inside. */
  readonly isConvex: boolean
}

/**
 * The miters along one ring (material on its left): from each corner that a border runs around to the border's inner
 * corner, at w ÷ sin(θ/2) along the bisector of the interior angle θ. A rounded corner has none.
 */
export function findMiters(ring: CurveRing, borders: readonly Border[]): FoundMiter[] {
  return ring.flatMap((before, i): FoundMiter[] => {
    const after = ring[(i + 1) % ring.length]!
    const widthM = widthAround(borders, before, after)
    if (widthM === 0) return []
    const [ax, ay] = tangent(before, true)
    const [bx, by] = tangent(after, false)
    const turn = Math.atan2(ax * by - ay * bx, ax * bx + ay * by)
    if (Math.abs(turn) < leastTurnRad) return []
    const half = (Math.PI - turn) / 2
    const reachM = widthM / Math.sin(half)
    // The next edge turned left by half of the interior angle.
    const [c, s] = [Math.cos(half), Math.sin(half)]
    const corner: Pt = before.to
    const inner: Pt = [corner[0] + reachM * (c * bx - s * by), corner[1] + reachM * (s * bx + c * by)]
    return [{ from: corner, to: inner, isConvex: turn > 0 }]
  })
}
