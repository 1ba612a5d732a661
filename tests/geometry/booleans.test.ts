import { describe, expect, it } from 'vitest'
import {
  intersectRegions,
  offsetRegions,
  subtractRegions,
  unionNonZero,
  unionRegions,
  unionShadow,
} from '../../core/geometry/clip'
import type { CurveRegion, Region } from '../../core/geometry/curve'
import { intersectCurves, subtractCurves, unionCurves } from '../../core/geometry/curveBoolean'
import { flatArea } from '../../core/geometry/flatArea'
import { resolvePath } from '../../core/geometry/resolvePath'
import { curveArea } from '../../core/geometry/ringArea'
import { degeneratePair, oracle } from './booleanOracle'
import { circlePath, drawPath, rectangle } from './drawSlab'
import { mulberry32 } from './mulberry32'

const straight = ({ ring, holes }: Region): CurveRegion => {
  const edges = (r: Region['ring']) => r.map((from, i) => ({ edgeId: 'e1', from, to: r[(i + 1) % r.length]! }))
  return { outer: edges(ring), holes: holes.map(edges) }
}

/** Grid rounding moves an edge by at most two units: area by perimeter × 5e-6. */
const gridToleranceM2 = 3e-4

describe('booleans agree with polygon-clipping on 2,000 degenerate pairs', () => {
  const random = mulberry32(20_240_611)
  const pairs = Array.from({ length: 2_000 }, () => degeneratePair(random))
  const expected = pairs.map(
    ([a, b]) => [oracle.union(a, b), oracle.intersection(a, b), oracle.difference(a, b)] as const,
  )

  it('on the clipping grid', () => {
    pairs.forEach(([a, b], i) => {
      const [union, common, left] = expected[i]!
      expect(Math.abs(flatArea(unionRegions([a, b])) - union)).toBeLessThan(gridToleranceM2)
      expect(Math.abs(flatArea(intersectRegions([a], [b])) - common)).toBeLessThan(gridToleranceM2)
      expect(Math.abs(flatArea(subtractRegions([a], [b])) - left)).toBeLessThan(gridToleranceM2)
    })
  })

  it('and to a millionth once corners are put back exactly', () => {
    let worst = 0
    pairs.forEach(([a, b], i) => {
      const [union, common, left] = expected[i]!
      const [p, q] = [[straight(a)], [straight(b)]]
      worst = Math.max(
        worst,
        Math.abs(curveArea(unionCurves([...p, ...q]).regions) - union),
        Math.abs(curveArea(intersectCurves(p, q).regions) - common),
        Math.abs(curveArea(subtractCurves(p, q).regions) - left),
      )
    })
    expect(worst).toBeLessThan(1e-6)
  })

  it('and add up', () => {
    for (const [a, b] of pairs.slice(0, 500)) {
      const [p, q] = [[straight(a)], [straight(b)]]
      const whole = curveArea(p)
      const parts = curveArea(intersectCurves(p, q).regions) + curveArea(subtractCurves(p, q).regions)
      expect(Math.abs(parts - whole)).toBeLessThan(1e-6)
    }
  })
})

describe('booleans of arcs are exact', () => {
  const disc = (key: number, x: number, y: number, r: number): CurveRegion => ({
    outer: resolvePath(circlePath(key, [x, y], r), 's1').ring,
    holes: [],
  })
  const near = (value: number, expected: number) => expect(Math.abs(value - expected)).toBeLessThan(1e-9)

  // lens of two circles: E. W. Weisstein, "Circle-Circle Intersection", MathWorld, eq. 14
  const lensArea = (d: number, R: number, r: number) =>
    r * r * Math.acos((d * d + r * r - R * R) / (2 * d * r)) +
    R * R * Math.acos((d * d + R * R - r * r) / (2 * d * R)) -
    Math.sqrt((-d + r + R) * (d + r - R) * (d - r + R) * (d + r + R)) / 2

  it.each([
    [3, 2, 2],
    [1, 2, 1.5],
    [4.9, 3, 2],
    [1.02, 3, 2],
    [2.5, 20, 2],
  ])('two circles %d m apart, radii %d and %d: common part, union and what is left', (d, R, r) => {
    const [a, b] = [disc(1, 0, 0, R), disc(2, d * 0.6, d * 0.8, r)]
    const lens = d + r <= R ? Math.PI * r * r : lensArea(d, R, r)
    near(curveArea(intersectCurves([a], [b]).regions), lens)
    near(curveArea(unionCurves([a, b]).regions), Math.PI * (R * R + r * r) - lens)
    near(curveArea(subtractCurves([a], [b]).regions), Math.PI * R * R - lens)
  })

  it('circles that touch from outside have nothing in common', () => {
    near(curveArea(intersectCurves([disc(1, 0, 0, 2)], [disc(2, 3, 0, 1)]).regions), 0)
    near(curveArea(unionCurves([disc(1, 0, 0, 2), disc(2, 3, 0, 1)]).regions), 5 * Math.PI)
  })

  it('a circle that touches from inside', () => {
    near(curveArea(subtractCurves([disc(1, 0, 0, 2)], [disc(2, 1, 0, 1)]).regions), 3 * Math.PI)
  })

  it('the same circle drawn from another start is the same circle', () => {
    const other: CurveRegion = {
      outer: resolvePath(
        drawPath(
          2,
          [
            [2 * Math.cos(1), 2 * Math.sin(1)],
            [2 * Math.cos(4), 2 * Math.sin(4)],
          ],
          {
            rises: { 0: 2 * (1 - Math.cos(1.5)), 1: 2 * (1 - Math.cos(Math.PI - 1.5)) },
          },
        ),
        's1',
      ).ring,
      holes: [],
    }
    near(curveArea([other]), 4 * Math.PI)
    near(curveArea(unionCurves([disc(1, 0, 0, 2), other]).regions), 4 * Math.PI)
    near(curveArea(subtractCurves([disc(1, 0, 0, 2)], [other]).regions), 0)
  })

  it('a line across a circle cuts a segment', () => {
    const half: CurveRegion = { outer: resolvePath(drawPath(3, rectangle(-5, 1, 10, 10)), 's1').ring, holes: [] }
    const sweep = 2 * Math.acos(1 / 3)
    near(curveArea(intersectCurves([disc(1, 0, 0, 3)], [half]).regions), (9 * (sweep - Math.sin(sweep))) / 2)
  })

  it('does not change what it is given', () => {
    const freeze = <T>(value: T): T => {
      if (typeof value === 'object' && value !== null) {
        Object.freeze(value)
        for (const part of Object.values(value)) freeze(part)
      }
      return value
    }
    const [a, b] = [freeze(disc(1, 0, 0, 2)), freeze(disc(2, 1, 0, 2))]
    expect(curveArea(unionCurves([a, b]).regions)).toBeGreaterThan(12)
    const [p, q] = freeze(degeneratePair(mulberry32(5)))
    expect(flatArea(unionRegions([p, q]))).toBeGreaterThan(0)
  })
})

describe('non-zero fill', () => {
  const square = (x: number, y: number, w: number): Region => ({ ring: rectangle(x, y, w, w), holes: [] })

  it('fills cycles that run either way, and holes left by cycles that run against each other', () => {
    const back = [...square(1, 1, 1).ring].reverse()
    expect(flatArea(unionNonZero([back]))).toBeCloseTo(1, 12)
    expect(flatArea(unionNonZero([square(0, 0, 3).ring, back]))).toBeCloseTo(8, 12)
  })

  it('is clipped to regions with holes', () => {
    const clip = subtractRegions([square(0, 0, 3)], [square(1, 1, 1)])
    expect(flatArea(unionNonZero([square(-1, -1, 3).ring], clip))).toBeCloseTo(3, 12)
    expect(unionNonZero([square(-1, -1, 3).ring], [])).toEqual([])
  })

  it('gives shadow cycles the same answer however far they reach', () => {
    const random = mulberry32(99)
    const clip = subtractRegions([square(0, 0, 10)], [square(4, 4, 2)])
    const quads = Array.from({ length: 40 }, () => {
      const [x, y, reach] = [random() * 30 - 10, random() * 30 - 10, random() * 400]
      return [
        [x, y],
        [x + 3, y + random()],
        [x + 3 + reach, y + 1 + reach / 3],
        [x + reach, y + 1 + reach / 3],
      ] as const
    })
    const cycles = quads.map(q => Float64Array.from(q.flat()))
    const viaRings = flatArea(unionNonZero(quads, clip))
    expect(viaRings).toBeGreaterThan(1)
    expect(flatArea(unionShadow(cycles, clip))).toBeCloseTo(viaRings, 3)
    expect(flatArea(unionShadow([Float64Array.of(-900, -900, 900, -900, 900, 900, -900, 900)], clip))).toBeCloseTo(
      96,
      9,
    )
    expect(unionShadow([Float64Array.of(20, 20, 30, 20, 30, 30)], clip)).toEqual([])
  })
})

describe('offsets of straight shapes are mitered', () => {
  const ell: Region = {
    ring: [
      [0, 0],
      [10, 0],
      [10, 4],
      [4, 4],
      [4, 9],
      [0, 9],
    ],
    holes: [],
  }
  it('inwards: area − w × perimeter + corners', () => {
    expect(flatArea(offsetRegions([ell], -0.3))).toBeCloseTo(60 - (38 * 0.3 - 4 * 0.09), 7)
  })
  it('outwards', () => {
    expect(flatArea(offsetRegions([ell], 0.3))).toBeCloseTo(60 + (38 * 0.3 + 4 * 0.09), 7)
  })
  it('an acute corner keeps its point', () => {
    expect(
      flatArea(
        offsetRegions(
          [
            {
              ring: [
                [0, 0],
                [4, 0],
                [0, 3],
              ],
              holes: [],
            },
          ],
          -0.4,
        ),
      ),
    ).toBeCloseTo(6 * 0.36, 4)
  })
  it('holes shrink as the slab grows', () => {
    const plate = subtractRegions(
      [{ ring: rectangle(0, 0, 3, 3), holes: [] }],
      [{ ring: rectangle(1, 1, 1, 1), holes: [] }],
    )
    expect(flatArea(offsetRegions(plate, 0.25))).toBeCloseTo(3.5 ** 2 - 0.5 ** 2, 7)
  })
})
