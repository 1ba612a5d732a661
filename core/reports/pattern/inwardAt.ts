import type { CurveEdge } from '../../geometry/curve'

/** Unit direction into the concrete at a point of an edge: it lies on the left of travel. */
export function inwardAt({ from, to, arc }: CurveEdge, x: number, y: number): readonly [number, number] {
  if (arc) {
    const turn = arc.sweepRad > 0 ? -1 : 1
    return [(turn * (x - arc.center[0])) / arc.radiusM, (turn * (y - arc.center[1])) / arc.radiusM]
  }
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  return [-(to[1] - from[1]) / length, (to[0] - from[0]) / length]
}
