/** Area and length straight from the definition, apart from the code under test. */
import type { CurveRegion, CurveRing } from '../../core/geometry/curve'

/** Shoelace plus circular segments R²(θ − sin θ)/2; counter-clockwise positive. */
export function ringArea(ring: CurveRing): number {
  const [ox, oy] = ring[0]!.from
  let twice = 0
  for (const { from, to, arc } of ring) {
    twice += (from[0] - ox) * (to[1] - oy) - (from[1] - oy) * (to[0] - ox)
    if (arc) twice += arc.radiusM ** 2 * (arc.sweepRad - Math.sin(arc.sweepRad))
  }
  return twice / 2
}

export const edgeLength = ({ from, to, arc }: CurveRing[number]): number =>
  arc ? arc.radiusM * Math.abs(arc.sweepRad) : Math.hypot(to[0] - from[0], to[1] - from[1])

export const ringLength = (ring: CurveRing): number => ring.reduce((sum, edge) => sum + edgeLength(edge), 0)

export const regionArea = (region: CurveRegion): number =>
  ringArea(region.outer) + region.holes.reduce((sum, hole) => sum + ringArea(hole), 0)

export const regionPerimeter = (region: CurveRegion): number =>
  ringLength(region.outer) + region.holes.reduce((sum, hole) => sum + ringLength(hole), 0)

/** Points along the ring, arcs at `steps` chords each. */
export const flatRing = (ring: CurveRing, steps: number): [number, number][] =>
  ring.flatMap(({ from, arc }) => {
    if (!arc) return [[from[0], from[1]] as [number, number]]
    const start = Math.atan2(from[1] - arc.center[1], from[0] - arc.center[0])
    return Array.from({ length: steps }, (_, i): [number, number] => {
      const angle = start + (arc.sweepRad * i) / steps
      return i === 0
        ? [from[0], from[1]]
        : [arc.center[0] + arc.radiusM * Math.cos(angle), arc.center[1] + arc.radiusM * Math.sin(angle)]
    })
  })
