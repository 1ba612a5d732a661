/** Pours of simple shape for the tests of strips. */
import type { CurveRegion } from '../../core/geometry/curve'

export const ring = (points: readonly (readonly [number, number])[], name: string) =>
  points.map((from, i) => ({ edgeId: `${name}${i}`, from, to: points[(i + 1) % points.length]! }))

export const rectangle = (width: number, height: number): CurveRegion => ({
  outer: ring(
    [
      [0, 0],
      [width, 0],
      [width, height],
      [0, height],
    ],
    'e',
  ),
  holes: [],
})

/** A disc of two half arcs with a square hole. */
export const washer = (radius: number, half: number): CurveRegion => ({
  outer: [
    { edgeId: 'a', from: [radius, 0], to: [-radius, 0], arc: { center: [0, 0], radiusM: radius, sweepRad: Math.PI } },
    { edgeId: 'b', from: [-radius, 0], to: [radius, 0], arc: { center: [0, 0], radiusM: radius, sweepRad: Math.PI } },
  ],
  holes: [
    ring(
      [
        [-half, -half],
        [-half, half],
        [half, half],
        [half, -half],
      ],
      'h',
    ),
  ],
})
