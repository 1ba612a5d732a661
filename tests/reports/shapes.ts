/** Shapes for the fixtures of the sheets, written in feet. */
import type { CurveEdge, CurveRegion, CurveRing, Region } from '../../core/geometry/curve'
import { flattenRing } from '../../core/geometry/flattenRing'
import { ringArea } from '../../core/geometry/ringArea'
import type { Pt } from '../../shared/document/primitives'

export const ft = 0.3048

/** A corner at (x, y) ft; `round` = radius of its rounding in ft. */
export type Corner = readonly [x: number, y: number, round?: number]

/** Ring through corners; rounded ones get a tangent arc whose id ends with `~`. */
export function ringOf(prefix: string, corners: readonly Corner[]): CurveRing {
  const at = (i: number): Corner => corners[(i + corners.length) % corners.length]!
  const unit = (from: Corner, to: Corner): Pt => {
    const length = Math.hypot(to[0] - from[0], to[1] - from[1])
    return [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
  }
  /** Where the rounding of corner i starts (−1) or ends (+1). */
  const tangent = (i: number, side: -1 | 1): Pt => {
    const [x, y, round = 0] = at(i)
    const u = unit(at(i), at(i + side))
    const [p, q] = [unit(at(i - 1), at(i)), unit(at(i), at(i + 1))]
    const turn = Math.abs(Math.atan2(p[0] * q[1] - p[1] * q[0], p[0] * q[0] + p[1] * q[1]))
    const back = round * Math.tan(turn / 2)
    return [(x + u[0] * back) * ft, (y + u[1] * back) * ft]
  }
  const edges: CurveEdge[] = []
  for (let i = 0; i < corners.length; i++) {
    const round = at(i)[2] ?? 0
    if (round > 0) {
      const [p, q] = [unit(at(i - 1), at(i)), unit(at(i), at(i + 1))]
      const sweepRad = Math.atan2(p[0] * q[1] - p[1] * q[0], p[0] * q[0] + p[1] * q[1])
      const side = Math.sign(sweepRad)
      const from = tangent(i, -1)
      const center: Pt = [from[0] - side * p[1] * round * ft, from[1] + side * p[0] * round * ft]
      edges.push({ edgeId: `${prefix}v${i}~`, from, to: tangent(i, 1), arc: { center, radiusM: round * ft, sweepRad } })
    }
    edges.push({ edgeId: `${prefix}e${i}`, from: tangent(i, 1), to: tangent(i + 1, -1) })
  }
  return edges
}

/** Circle of two half arcs; `turn` 1 = counter-clockwise. */
export function circleOf(prefix: string, x: number, y: number, r: number, turn: 1 | -1): CurveRing {
  const center: Pt = [x * ft, y * ft]
  const [east, west]: [Pt, Pt] = [
    [(x + r) * ft, y * ft],
    [(x - r) * ft, y * ft],
  ]
  const arc = { center, radiusM: r * ft, sweepRad: turn * Math.PI }
  return [
    { edgeId: `${prefix}e1`, from: east, to: west, arc },
    { edgeId: `${prefix}e2`, from: west, to: east, arc },
  ]
}

export const regionOf = (outer: CurveRing, holes: readonly CurveRing[] = []): CurveRegion => ({ outer, holes })

export const areaOf = (region: CurveRegion): number =>
  ringArea(region.outer) - region.holes.reduce((s, hole) => s + Math.abs(ringArea(hole)), 0)

export const flatRegion = (region: CurveRegion): Region => ({
  ring: flattenRing(region.outer),
  holes: region.holes.map(hole => flattenRing(hole)),
})
