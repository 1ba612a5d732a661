import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { edgeBounds } from '../../core/geometry/bounds'
import { centroid } from '../../core/geometry/centroid'
import {
  distanceToEdge,
  flatRegionContains,
  flatRingContains,
  regionContains,
  ringContains,
} from '../../core/geometry/contains'
import { convexHull } from '../../core/geometry/convexHull'
import { cornerAngles } from '../../core/geometry/cornerAngles'
import type { CurveEdge, CurveRing } from '../../core/geometry/curve'
import { pointAt, tangentAt } from '../../core/geometry/edgeAt'
import { edgeLength } from '../../core/geometry/edgeLength'
import { flatArea, flatRingArea } from '../../core/geometry/flatArea'
import { drawingSagittaM, flattenRing } from '../../core/geometry/flattenRing'
import { interiorPoint } from '../../core/geometry/interiorPoint'
import { intersectEdges } from '../../core/geometry/intersectEdges'
import { lengthInside } from '../../core/geometry/lengthInside'
import { minAreaRectangle } from '../../core/geometry/minAreaRectangle'
import { edgeFromRise, resolvePath } from '../../core/geometry/resolvePath'
import { reverseRing } from '../../core/geometry/reverseRing'
import { ringArea, segmentArea } from '../../core/geometry/ringArea'
import { ringLength } from '../../core/geometry/ringLength'
import { circlePath, drawPath, rectangle } from './drawSlab'

const π = Math.PI
const ringOf = (...drawn: Parameters<typeof drawPath>): CurveRing => resolvePath(drawPath(...drawn), 's1').ring

describe('circular segments agree with the table of segments of circles for radius 1', () => {
  /**
   * Center angle, length of arc, height, chord, area; four places.
   * E. Oberg, F. D. Jones, H. L. Horton, H. H. Ryffel, Machinery's Handbook, Industrial Press, "Segments of Circles for
   * Radius = 1" (rows from memory, each checked by hand against A = (θ − sin θ)/2).
   */
  const rows = [
    '10 0.1745 0.0038 0.1743 0.0004',
    '30 0.5236 0.0341 0.5176 0.0118',
    '45 0.7854 0.0761 0.7654 0.0391',
    '60 1.0472 0.1340 1.0000 0.0906',
    '90 1.5708 0.2929 1.4142 0.2854',
    '120 2.0944 0.5000 1.7321 0.6142',
    '150 2.6180 0.7412 1.9319 1.0590',
    '180 3.1416 1.0000 2.0000 1.5708',
  ]
  it.each(rows)('%s', row => {
    const [degrees, arcLength, height, chord, area] = row.split(' ').map(Number) as [
      number,
      number,
      number,
      number,
      number,
    ]
    // the table gives the height to four places only: draw with the exact one, then look the others up
    const rise = 1 - Math.cos((degrees * π) / 360)
    expect(rise).toBeCloseTo(height, 4)
    const edge = edgeFromRise('e1', [0, 0], [2 * Math.sin((degrees * π) / 360), 0], rise)
    expect(edge.to[0]).toBeCloseTo(chord, 3.9)
    expect(edgeLength(edge)).toBeCloseTo(arcLength, 3.9)
    expect(edge.arc!.radiusM).toBeCloseTo(1, 12)
    expect(segmentArea(edge.arc!)).toBeCloseTo(area, 3.9)
  })
})

describe('an arc from chord and rise', () => {
  it('bulges to the right of travel for a rise > 0, to the left for a rise < 0', () => {
    expect(pointAt(edgeFromRise('e1', [0, 0], [8, 0], 2), 0.5)[1]).toBeCloseTo(-2, 12)
    expect(pointAt(edgeFromRise('e1', [0, 0], [8, 0], -2), 0.5)[1]).toBeCloseTo(2, 12)
  })

  it('passes through its rise, its ends and its middle on one circle, half circle and beyond included', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 50, noNaN: true }),
        fc.double({ min: 0.01, max: 8, noNaN: true }),
        fc.boolean(),
        (chord, part, rightward) => {
          const rise = chord * part * (rightward ? 1 : -1)
          const { arc, from, to } = edgeFromRise('e1', [3, 4], [3 + chord * 0.6, 4 + chord * 0.8], rise)
          const { center, radiusM, sweepRad } = arc!
          for (const p of [from, to, pointAt({ edgeId: 'e1', from, to, arc: arc! }, 0.5)])
            expect(Math.abs(Math.hypot(p[0] - center[0], p[1] - center[1]) / radiusM - 1)).toBeLessThan(1e-9)
          const middle = pointAt({ edgeId: 'e1', from, to, arc: arc! }, 0.5)
          // middle of the chord, moved by the rise along the right-hand normal (0.8, −0.6)
          expect(middle[0]).toBeCloseTo(3 + chord * 0.3 + 0.8 * rise, 8)
          expect(middle[1]).toBeCloseTo(4 + chord * 0.4 - 0.6 * rise, 8)
          expect(Math.abs(sweepRad) > π).toBe(part > 0.5)
        },
      ),
      { seed: 12 },
    )
  })

  it('goes over into the straight edge without a jump in area', () => {
    // parabola: 2/3 chord × rise, the limit of the segment for small rises
    for (const rise of [1e-3, 1e-5, 1e-6])
      expect(segmentArea(edgeFromRise('e1', [0, 0], [10, 0], rise).arc!) / ((2 / 3) * 10 * rise)).toBeCloseTo(1, 6)
    expect(edgeFromRise('e1', [0, 0], [10, 0], 0).arc).toBeUndefined()
  })

  it('has a box that holds every point and touches the outermost', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -6, max: 6, noNaN: true }),
        fc.double({ min: 0, max: 6.28, noNaN: true }),
        (rise, turn) => {
          const edge = edgeFromRise('e1', [1, 2], [1 + 3 * Math.cos(turn), 2 + 3 * Math.sin(turn)], rise)
          const box = edgeBounds(edge)
          const points = Array.from({ length: 2_001 }, (_, i) => pointAt(edge, i / 2_000))
          const xs = points.map(p => p[0])
          const ys = points.map(p => p[1])
          for (const [value, edgeOfBox] of [
            [Math.min(...xs), box.minX],
            [Math.max(...xs), box.maxX],
            [Math.min(...ys), box.minY],
            [Math.max(...ys), box.maxY],
          ] as const)
            expect(Math.abs(value - edgeOfBox)).toBeLessThan(1e-4)
        },
      ),
      { seed: 13 },
    )
  })
})

describe('walking a ring backwards', () => {
  it('keeps lengths and turns the area over', () => {
    const ring = ringOf(1, rectangle(0, 0, 10, 6), { rises: { 0: 1, 2: -1.5 }, rounds: { 1: 0.5 } })
    expect(ringArea(reverseRing(ring))).toBeCloseTo(-ringArea(ring), 12)
    expect(ringLength(reverseRing(ring))).toBeCloseTo(ringLength(ring), 12)
    expect(reverseRing(reverseRing(ring))).toEqual(ring)
  })
})

describe('chords of an arc', () => {
  it.each([
    [3, drawingSagittaM],
    [0.15, drawingSagittaM],
    [40, 1e-4],
  ])('of radius %d m stay within %d m, and no fewer would do', (radiusM, sagittaM) => {
    const circle = resolvePath(circlePath(1, [0, 0], radiusM), 's1').ring
    const flat = flattenRing(circle, sagittaM)
    const half = π / flat.length
    expect(radiusM * (1 - Math.cos(half))).toBeLessThanOrEqual(sagittaM * (1 + 1e-9))
    // two half circles: one chord less in each
    expect(radiusM * (1 - Math.cos(π / (flat.length - 2)))).toBeGreaterThan(sagittaM)
    for (const p of flat) expect(Math.hypot(p[0], p[1])).toBeCloseTo(radiusM, 9)
  })

  it('lose at most 4t/3R of the area: 0.07 % at 1/16 in on a radius of 3 m', () => {
    const flat = flattenRing(resolvePath(circlePath(1, [0, 0], 3), 's1').ring)
    const lost = 1 - flatRingArea(flat) / (9 * π)
    expect(lost).toBeGreaterThan(0)
    expect(lost).toBeLessThan(0.00071)
  })
})

describe('inside and outside', () => {
  const lens = ringOf(
    1,
    [
      [0, 0],
      [8, 0],
    ],
    { rises: { 0: 2, 1: 2 } },
  )
  const bitten = ringOf(1, rectangle(0, 0, 10, 6), { rises: { 0: -2 } })

  it('is exact on arcs', () => {
    expect(ringContains(lens, [4, 1.999])).toBe(true)
    expect(ringContains(lens, [4, 2.001])).toBe(false)
    expect(ringContains(lens, [4, 0])).toBe(true)
    expect(ringContains(bitten, [5, 1.999])).toBe(false)
    expect(ringContains(bitten, [5, 2.001])).toBe(true)
    expect(ringContains(bitten, [5, 0])).toBe(false)
  })

  it('agrees with a fine flat ring', () => {
    const shape = ringOf(
      1,
      [
        [0, 0],
        [10, 0],
        [10, 4],
        [4, 4],
        [4, 9],
        [0, 9],
      ],
      {
        rises: { 0: 1, 2: -0.5, 5: -2 },
        rounds: { 1: 0.5, 3: 1 },
      },
    )
    const fine = flattenRing(shape, 1e-7)
    fc.assert(
      fc.property(
        fc.double({ min: -3, max: 12, noNaN: true }),
        fc.double({ min: -3, max: 12, noNaN: true }),
        (x, y) => {
          // on the boundary either answer will do
          if (shape.some(e => distanceToEdge(e, [x, y]) < 1e-6)) return
          expect(ringContains(shape, [x, y])).toBe(flatRingContains(fine, [x, y]))
        },
      ),
      { seed: 14, numRuns: 2_000 },
    )
  })

  it('leaves holes out', () => {
    const region = { outer: bitten, holes: [reverseRing(resolvePath(circlePath(2, [5, 4], 1), 'o1').ring)] }
    expect(regionContains(region, [5, 4])).toBe(false)
    expect(regionContains(region, [5, 5.5])).toBe(true)
    const flat = { ring: rectangle(0, 0, 4, 4), holes: [[...rectangle(1, 1, 1, 1)].reverse()] }
    expect(flatRegionContains(flat, [1.5, 1.5])).toBe(false)
    expect(flatRegionContains(flat, [0.5, 1.5])).toBe(true)
    expect(flatArea([flat])).toBeCloseTo(15, 12)
  })

  it('finds a point inside, holes and thin shapes included', () => {
    const ringShape = {
      outer: resolvePath(circlePath(1, [0, 0], 3), 's1').ring,
      holes: [reverseRing(resolvePath(circlePath(2, [0, 0], 2.9), 'o1').ring)],
    }
    for (const region of [
      ringShape,
      { outer: bitten, holes: [] },
      {
        outer: ringOf(1, [
          [0, 0],
          [50, 0.01],
          [50, 0.03],
        ]),
        holes: [],
      },
    ])
      expect(regionContains(region, interiorPoint(region)!)).toBe(true)
  })
})

describe('where edges meet', () => {
  const line = (x0: number, y0: number, x1: number, y1: number): CurveEdge => ({
    edgeId: 'e1',
    from: [x0, y0],
    to: [x1, y1],
  })
  const half = edgeFromRise('e2', [-3, 0], [3, 0], 3)

  it('a line crosses an arc twice, touches it once, misses it', () => {
    expect(intersectEdges(line(-5, -1, 5, -1), half)).toHaveLength(2)
    expect(intersectEdges(line(-5, -3, 5, -3), half)).toHaveLength(1)
    expect(intersectEdges(line(-5, -3.1, 5, -3.1), half)).toHaveLength(0)
    // the other half of the circle is not part of the edge
    expect(intersectEdges(line(-5, 1, 5, 1), half)).toHaveLength(0)
  })

  it('edges along each other meet at the ends of what they share', () => {
    expect(intersectEdges(line(0, 0, 4, 0), line(3, 0, 9, 0))).toEqual([
      [4, 0],
      [3, 0],
    ])
    expect(intersectEdges(line(0, 0, 4, 0), line(5, 0, 9, 0))).toEqual([])
  })

  it('measures the part of a line inside a shape exactly', () => {
    const disc = [{ outer: resolvePath(circlePath(1, [0, 0], 3), 's1').ring, holes: [] }]
    expect(lengthInside([line(-9, 1, 9, 1)], disc)).toBeCloseTo(2 * Math.sqrt(8), 12)
    expect(lengthInside([line(-9, 4, 9, 4)], disc)).toBe(0)
    expect(lengthInside([edgeFromRise('e1', [0, -3], [0, 3], -3)], disc)).toBeLessThanOrEqual(3 * π + 1e-9)
  })
})

describe('the smallest rectangle around a ring', () => {
  it('is the ring itself for a turned rectangle', () => {
    const turn = 0.4
    const ring = rectangle(-4, -1.5, 8, 3).map(
      ([x, y]) => [7 + x * Math.cos(turn) - y * Math.sin(turn), -2 + x * Math.sin(turn) + y * Math.cos(turn)] as const,
    )
    const box = minAreaRectangle(ring)
    expect(box.lengthM).toBeCloseTo(8, 9)
    expect(box.widthM).toBeCloseTo(3, 9)
    expect(box.aspect).toBeCloseTo(8 / 3, 9)
    expect(box.angleRad).toBeCloseTo(turn, 9)
  })

  it('is never larger than the upright one, and never smaller than the ring', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.double({ min: -9, max: 9, noNaN: true }), fc.double({ min: -9, max: 9, noNaN: true })), {
          minLength: 4,
          maxLength: 30,
        }),
        points => {
          const hull = convexHull(points)
          if (hull.length < 3 || flatRingArea(hull) < 1e-3) return
          const box = minAreaRectangle(points)
          const xs = points.map(p => p[0])
          const ys = points.map(p => p[1])
          const upright = (Math.max(...xs) - Math.min(...xs)) * (Math.max(...ys) - Math.min(...ys))
          expect(box.lengthM * box.widthM).toBeLessThanOrEqual(upright * (1 + 1e-9))
          expect(box.lengthM * box.widthM).toBeGreaterThanOrEqual(flatRingArea(hull) * (1 - 1e-9))
          for (const p of points)
            expect(
              hull.every((a, i) => {
                const b = hull[(i + 1) % hull.length]!
                return (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > -1e-6
              }),
            ).toBe(true)
        },
      ),
      { seed: 15 },
    )
  })
})

describe('true corners', () => {
  const degrees = (ring: CurveRing) => cornerAngles(ring).map(c => Math.round((c.angleRad * 180) / π))
  it('of straight shapes', () => {
    expect(degrees(ringOf(1, rectangle(0, 0, 10, 6)))).toEqual([90, 90, 90, 90])
    expect(
      degrees(
        ringOf(1, [
          [0, 0],
          [10, 0],
          [10, 4],
          [4, 4],
          [4, 9],
          [0, 9],
        ]),
      ),
    ).toEqual([90, 90, 90, 270, 90, 90])
  })
  it('of a half disc are square, of a smooth ring straight', () => {
    expect(
      degrees(
        ringOf(
          1,
          [
            [-3, 0],
            [3, 0],
          ],
          { rises: { 1: 3 } },
        ),
      ),
    ).toEqual([90, 90])
    expect(degrees(resolvePath(circlePath(1, [0, 0], 3), 's1').ring)).toEqual([180, 180])
  })
  it('have unit tangents', () => {
    const edge = edgeFromRise('e1', [0, 0], [8, 0], 2)
    for (const t of [0, 1] as const) expect(Math.hypot(...tangentAt(edge, t))).toBeCloseTo(1, 12)
    expect(tangentAt(edge, 0)[1]).toBeLessThan(0)
    expect(tangentAt(edge, 1)[1]).toBeGreaterThan(0)
  })
})

describe('the center of area', () => {
  it('of a slab with a hole', () => {
    const hole = reverseRing(ringOf(2, rectangle(6, 2, 2, 2)))
    const [x, y] = centroid([{ outer: ringOf(1, rectangle(0, 0, 10, 6)), holes: [hole] }])!
    expect(x).toBeCloseTo((60 * 5 - 4 * 7) / 56, 12)
    expect(y).toBeCloseTo((60 * 3 - 4 * 3) / 56, 12)
  })
  it('of nothing is not told', () => {
    expect(centroid([])).toBeUndefined()
  })
})
