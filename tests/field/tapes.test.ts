import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { moveVertex } from '../../core/document/commands/moveVertex'
import { squarenessOf, squareUp } from '../../core/document/commands/squareUp'
import { type FourCorners, isSquare, makeSquare, squareness } from '../../core/geometry/field/squareness'
import { tapeTie } from '../../core/geometry/field/tapeTie'
import { traverse } from '../../core/geometry/field/traverse'
import { lPatio } from '../../samples/sites/lPatio'
import { plainRectangle } from '../../samples/sites/plainRectangle'
import type { Pt } from '../../shared/document/primitives'
import type { Result } from '../../shared/problem'
import { done, refusal } from '../commands/edit'

const good = <T>(result: Result<T, readonly unknown[]>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return result.value
}
const codeOf = (result: Result<unknown, readonly { readonly code: string }[]>) =>
  result.ok ? 'ok' : result.error[0]!.code

const coordinate = fc.double({ min: -40, max: 40, noNaN: true })
const place = fc.tuple(coordinate, coordinate)
const apart = (a: Pt, b: Pt) => Math.hypot(b[0] - a[0], b[1] - a[1])

describe('a tape tie', () => {
  it('finds the point that was measured, on its side', () => {
    fc.assert(
      fc.property(place, place, place, place, (p, q, r, third) => {
        const base = apart(p, q)
        const off = ((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])) / base
        fc.pre(base > 0.1 && Math.abs(off) > 0.05 && apart(third, r) > 0.01)
        const tie = good(
          tapeTie(p, q, apart(p, r), apart(q, r), off > 0 ? 'left' : 'right', {
            from: third,
            distanceM: apart(third, r) + 0.02,
          }),
        )
        expect(apart(tie.at, r)).toBeLessThan(1e-9)
        expect(tie.closingErrorM).toBeCloseTo(0.02, 8)
      }),
      { seed: 3, numRuns: 500 },
    )
  })

  it('is the 3-4-5 of every layout', () => {
    // Common practice, no source: 3, 4 and 5 ft make a square corner.
    expect(good(tapeTie([0, 0], [4, 0], 3, 5, 'left')).at).toEqual([0, 3])
    expect(good(tapeTie([0, 0], [4, 0], 3, 5, 'right')).at).toEqual([0, -3])
  })

  it('stands on the line where the tapes only just meet', () => {
    expect(good(tapeTie([0, 0], [7, 0], 3, 4, 'left')).at[0]).toBeCloseTo(3, 12)
    expect(good(tapeTie([0, 0], [7, 0], 10, 3, 'left')).at[0]).toBeCloseTo(10, 12)
  })

  it('that cannot be is refused with how far the tapes miss', () => {
    const short = tapeTie([0, 0], [10, 0], 4, 5, 'left')
    expect(!short.ok && short.error[0]).toMatchObject({ code: 'tapesTooShort', values: { gapM: 1, apartM: 10 } })
    const long = tapeTie([0, 0], [10, 0], 4, 15, 'left')
    expect(!long.ok && long.error[0]).toMatchObject({ code: 'tapesTooLong', values: { gapM: 1 } })
    for (const bad of [0, -1, Number.NaN, Infinity])
      expect(codeOf(tapeTie([0, 0], [1, 0], bad, 1, 'left'))).toBe('badMeasure')
    expect(codeOf(tapeTie([1, 1], [1, 1], 1, 1, 'left'))).toBe('tapesFromOnePoint')
  })
})

describe('squareness', () => {
  it('is the difference of the diagonals: none in a rectangle, its closed form in a leaning one', () => {
    expect(
      squareness([
        [0, 0],
        [4, 0],
        [4, 3],
        [0, 3],
      ]),
    ).toMatchObject({ diagonalsM: [5, 5], differenceM: 0 })
    // A 24 × 14 whose far side slid 0.5: √(24.5² + 14²) − √(23.5² + 14²).
    const lean = squareness([
      [0, 0],
      [24, 0],
      [24.5, 14],
      [0.5, 14],
    ])
    expect(lean.differenceM).toBeCloseTo(Math.hypot(24.5, 14) - Math.hypot(23.5, 14), 12)
  })

  it('is none of a slab that leans either way, nor of one with equal diagonals and unequal sides', () => {
    const shapes = [0, 0.5, -0.5].map(slide =>
      squareness([
        [0, 0],
        [24, 0],
        [24 + slide, 14],
        [slide, 14],
      ]),
    )
    expect(shapes.map(isSquare)).toEqual([true, false, false])
    // An isosceles trapezoid has equal diagonals (elementary geometry).
    const trapezoid = squareness([
      [0, 0],
      [24, 0],
      [22, 14],
      [2, 14],
    ])
    expect(trapezoid.differenceM).toBeCloseTo(0, 12)
    expect(trapezoid.sidesDifferM).toBeCloseTo(4, 12)
    expect(isSquare(trapezoid)).toBe(false)
  })

  it('is made about the side that stays, and lasts', () => {
    fc.assert(
      fc.property(
        place,
        place,
        fc.array(fc.tuple(fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: -1, max: 1, noNaN: true })), {
          minLength: 2,
          maxLength: 2,
        }),
        fc.boolean(),
        (a, b, shake, left) => {
          fc.pre(apart(a, b) > 2)
          const [nx, ny] = [
            ((b[1] - a[1]) / apart(a, b)) * (left ? -5 : 5),
            ((b[0] - a[0]) / apart(a, b)) * (left ? 5 : -5),
          ]
          const corners: FourCorners = [
            a,
            b,
            [b[0] + nx + shake[0]![0], b[1] + ny + shake[0]![1]],
            [a[0] + nx + shake[1]![0], a[1] + ny + shake[1]![1]],
          ]
          const square = makeSquare(corners)
          expect(square[0]).toEqual(a)
          expect(square[1]).toEqual(b)
          expect(Math.abs(squareness(square).differenceM)).toBeLessThan(1e-9)
          expect(apart(square[2], corners[2])).toBeLessThan(3)
          makeSquare(square).forEach((p, i) => {
            expect(apart(p, square[i]!)).toBeLessThan(1e-9)
          })
        },
      ),
      { seed: 8, numRuns: 200 },
    )
  })

  it('is an edit of a four-cornered ring only', () => {
    const plain = plainRectangle()
    const { outline } = plain.slabs[0]!
    const bent = done(moveVertex(outline.vertices[2]!.id, [9, 6])(plain))
    const square = done(squareUp(outline.id, outline.edges[0]!.id)(bent))
    expect(Math.abs(squarenessOf(square, outline.id)!.differenceM)).toBeLessThan(1e-9)
    const other = lPatio().slabs[0]!.outline
    expect(refusal(squareUp(other.id, other.edges[0]!.id)(lPatio()))).toBe('notFourCorners')
  })
})

describe('a walk around', () => {
  it('that closes keeps its corners', () => {
    const walk = good(
      traverse(
        [1, 2],
        [0, 90, 90, 90].map((turnDeg, i) => ({ lengthM: i % 2 ? 3 : 7, turnDeg })),
      ),
    )
    expect(walk.closingErrorM).toBeLessThan(1e-12)
    const expected: Pt[] = [
      [1, 2],
      [8, 2],
      [8, 5],
      [1, 5],
    ]
    walk.corners.forEach((corner, i) => {
      expect(apart(corner, expected[i]!)).toBeLessThan(1e-12)
    })
  })

  it('is balanced as in the handbook', () => {
    // P. R. Wolf and C. D. Ghilani, Elementary Surveying, examples 10.3 and 10.4 (compass rule), from memory; checked
    // here against the sums of its own lengths and azimuths. Feet; azimuths clockwise from north.
    const dms = (d: number, m: number, s: number) => d + m / 60 + s / 3600
    const lines = [
      { lengthM: 647.25, azimuth: dms(126, 55, 17), departure: 517.444, latitude: -388.835 },
      { lengthM: 203.03, azimuth: dms(178, 18, 58), departure: 5.964, latitude: -202.948 },
      { lengthM: 720.35, azimuth: dms(15, 31, 54), departure: 192.881, latitude: 694.022 },
      { lengthM: 610.24, azimuth: dms(284, 35, 20), departure: -590.571, latitude: 153.689 },
      { lengthM: 285.13, azimuth: dms(206, 9, 41), departure: -125.718, latitude: -255.928 },
    ]
    const legs = lines.map(({ lengthM, azimuth }, i) => ({
      lengthM,
      turnDeg: i === 0 ? 90 - azimuth : lines[i - 1]!.azimuth - azimuth,
    }))
    const walk = good(traverse([10_000, 5_000], legs))
    expect(walk.walkedM).toBeCloseTo(2466, 9)
    expect(walk.closingErrorM).toBeCloseTo(0.081, 2)
    lines.forEach(({ departure, latitude }, i) => {
      const [a, b] = [walk.corners[i]!, walk.corners[(i + 1) % 5]!]
      expect(Math.abs(b[0] - a[0] - departure)).toBeLessThan(0.002)
      expect(Math.abs(b[1] - a[1] - latitude)).toBeLessThan(0.002)
    })
  })

  it('shares an error of the turns among all corners', () => {
    const legs = [0, 91, 91, 91].map(turnDeg => ({ lengthM: 5, turnDeg }))
    const walk = good(traverse([0, 0], legs, { lastTurnDeg: 91 }))
    expect(walk.turnErrorDeg).toBeCloseTo(4, 12)
    expect(walk.closingErrorM).toBeLessThan(1e-12)
  })

  it('spreads no more than is allowed', () => {
    const legs = [0, 90, 90, 90].map((turnDeg, i) => ({ lengthM: i === 3 ? 4.8 : 5, turnDeg }))
    const open = traverse([0, 0], legs)
    expect(!open.ok && open.error[0]).toMatchObject({ code: 'traverseOpen' })
    const spread = good(traverse([0, 0], legs, { allowedShare: 0.02 }))
    expect(spread.closingErrorM).toBeCloseTo(0.2, 12)
    expect(codeOf(traverse([0, 0], legs.slice(0, 2)))).toBe('traverseShort')
    expect(codeOf(traverse([0, 0], [...legs.slice(1), { lengthM: 0, turnDeg: 0 }]))).toBe('badMeasure')
  })
})
