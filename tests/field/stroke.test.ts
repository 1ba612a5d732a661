import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { distanceToEdge } from '../../core/geometry/contains'
import { fitOutline, fitStroke } from '../../core/geometry/field/fitStroke'
import { edgeFromRise } from '../../core/geometry/resolvePath'
import type { Pt } from '../../shared/document/primitives'
import { mulberry32 } from '../geometry/mulberry32'

const along = (corners: readonly Pt[], step: number): Pt[] =>
  corners.slice(1).flatMap((b, i) => {
    const a = corners[i]!
    const n = Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / step)
    return Array.from({ length: n }, (_, k): Pt => [a[0] + ((b[0] - a[0]) * k) / n, a[1] + ((b[1] - a[1]) * k) / n])
  })

const fitted = (points: readonly Pt[], toleranceM: number) => {
  const fit = fitStroke(points, toleranceM)
  if (!fit.ok) throw new Error(JSON.stringify(fit.error))
  return fit.value
}

const edgesOf = ({ closed, corners }: ReturnType<typeof fitted>) =>
  corners
    .slice(0, closed ? undefined : -1)
    .map(({ at, riseM }, i) => edgeFromRise('', at, corners[(i + 1) % corners.length]!.at, riseM))

describe('a freehand stroke', () => {
  it('around a rectangle becomes its four corners, wherever the hand set down', () => {
    const random = mulberry32(4)
    const shake = () => (random() - 0.5) * 0.04
    const loop: Pt[] = [
      [3, 0],
      [8, 0],
      [8, 5],
      [0, 5],
      [0, 0],
      [3, 0],
    ]
    const points = along(loop, 0.05).map(([x, y]): Pt => [x + shake(), y + shake()])
    const fit = fitted(points, 0.08)
    expect(fit.closed).toBe(true)
    expect(fit.corners).toHaveLength(4)
    for (const corner of [
      [0, 0],
      [8, 0],
      [8, 5],
      [0, 5],
    ] as const)
      expect(Math.min(...fit.corners.map(({ at }) => Math.hypot(at[0] - corner[0], at[1] - corner[1])))).toBeLessThan(
        0.2,
      )
    expect(fit.corners.every(({ riseM }) => riseM === undefined)).toBe(true)
  })

  it('along an arc becomes one arc, bulging to its own side', () => {
    for (const side of [1, -1]) {
      const points = Array.from({ length: 80 }, (_, i): Pt => {
        const angle = (Math.PI * i) / 79
        return [-4 * Math.cos(angle), side * 4 * Math.sin(angle)]
      })
      const fit = fitted(points, 0.05)
      expect(fit.corners).toHaveLength(2)
      // Half circle, left of travel for side 1: rise = R, + to the right.
      expect(fit.corners[0]!.riseM).toBeCloseTo(-side * 4, 1)
    }
  })

  it('stays within the tolerance of the hand', () => {
    fc.assert(
      fc.property(fc.integer(), fc.double({ min: 0.05, max: 0.4, noNaN: true }), (seed, toleranceM) => {
        const random = mulberry32(seed)
        const corners = Array.from({ length: 5 }, (): Pt => [random() * 10, random() * 10])
        const points = along(corners, 0.05)
        fc.pre(points.length > 20)
        const edges = edgesOf(fitted(points, toleranceM))
        // The fit sees a thinned stroke; between its points the hand may stray as far again.
        for (const p of points)
          expect(Math.min(...edges.map(edge => distanceToEdge(edge, p)))).toBeLessThan(2 * toleranceM)
      }),
      { seed: 21, numRuns: 20 },
    )
  })

  it('too short to be an edge is refused', () => {
    expect(
      fitStroke(
        [
          [0, 0],
          [0.05, 0],
        ],
        0.05,
      ).ok,
    ).toBe(false)
    expect(fitStroke([], 0.05).ok).toBe(false)
  })

  it('out and back encloses nothing; around it is an outline, closed where the hand stopped short', () => {
    const out = along(
      [
        [0, 0],
        [3, 0.02],
      ],
      0.05,
    )
    const flat = fitOutline([...out, ...out.toReversed()], 0.05)
    expect(!flat.ok && flat.error[0]!.code).toBe('strokeFlat')
    const around = along(
      [
        [0, 0],
        [3, 0],
        [3, 2],
        [0, 2],
        [0, 0.5],
      ],
      0.05,
    )
    const made = fitOutline(around, 0.05)
    expect(made.ok && made.value.length).toBe(5)
  })
})
