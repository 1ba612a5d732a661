import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CurveRegion } from '../../core/geometry/curve'
import { curveArea } from '../../core/geometry/ringArea'
import { nameCorners, tapeMarks } from '../../core/pours/day/doseMarks'
import { areaBehind, cutStrips, placingDirections } from '../../core/pours/day/strips'
import { toCutRegion } from '../../core/pours/region/cutRegion'
import { rectangle, ring, washer } from './curveShapes'

const ell: CurveRegion = {
  outer: ring(
    [
      [0, 0],
      [9, 0],
      [9, 3],
      [4, 3],
      [4, 8],
      [0, 8],
    ],
    'l',
  ),
  holes: [],
}

describe('strips', () => {
  it('the area behind a line of a disc is the circular segment (r²(θ − sin θ)/2)', () => {
    const disc = toCutRegion({ ...washer(2, 0.5), holes: [] })
    for (const c of [-1.9, -1, 0, 0.7, 1.99]) {
      const theta = 2 * Math.acos(-c / 2)
      expect(areaBehind(disc, [1, 0], c)).toBeCloseTo((4 * (theta - Math.sin(theta))) / 2, 9)
      expect(areaBehind(disc, [0.6, 0.8], c)).toBeCloseTo((4 * (theta - Math.sin(theta))) / 2, 9)
    }
  })

  it.each([
    ['a rectangle', rectangle(12, 5)],
    ['an L', ell],
    ['a ring with a square hole', washer(4, 1)],
  ])('of %s have the wanted shares and make up the whole, whatever the direction', (_, region) => {
    const whole = curveArea([region])
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 6 }),
        (angle, shares) => {
          const strips = cutStrips(region, [Math.cos(angle), Math.sin(angle)], shares)
          const sum = shares.reduce((total, share) => total + share, 0)
          expect(strips).toHaveLength(shares.length)
          strips.forEach((strip, i) => {
            expect(strip.areaM2).toBeCloseTo((whole * shares[i]!) / sum, 6)
            expect(curveArea(strip.regions)).toBeCloseTo(strip.areaM2, 9)
          })
          expect(Math.abs(strips.reduce((total, strip) => total + strip.areaM2, 0) - whole) / whole).toBeLessThan(1e-9)
        },
      ),
      { seed: 71, numRuns: 60 },
    )
  })

  it('lie in placing order and keep arcs exact', () => {
    const strips = cutStrips(washer(4, 1), [0, 1], [1, 1, 1, 1])
    const arcs = strips.flatMap(strip => strip.regions.flatMap(({ outer }) => outer.filter(edge => edge.arc)))
    expect(arcs.every(edge => Math.abs(edge.arc!.radiusM - 4) < 1e-12)).toBe(true)
    const ys = strips.map(strip => Math.max(...strip.regions.flatMap(r => r.outer.map(edge => edge.to[1]))))
    expect(ys).toEqual([...ys].sort((a, b) => a - b))
  })

  it('run along the longer side first', () => {
    const [x, y] = placingDirections(rectangle(12, 5))[0]!
    expect([Math.abs(x), Math.abs(y)]).toEqual([expect.closeTo(1, 9), expect.closeTo(0, 9)])
  })
})

describe('dose marks', () => {
  it('corners are named from the lowest left one, counter-clockwise', () => {
    expect(nameCorners(rectangle(6, 4))).toEqual([
      { name: 'A', at: [0, 0] },
      { name: 'B', at: [6, 0] },
      { name: 'C', at: [6, 4] },
      { name: 'D', at: [0, 4] },
    ])
  })

  it('are taped along the form from the nearer corner', () => {
    const marks = tapeMarks(rectangle(6, 4), [1.5, 0], [5, 4])
    expect(marks).toEqual([
      { at: [1.5, 0], corner: 'A', distanceM: expect.closeTo(1.5, 9) },
      { at: [5, 4], corner: 'C', distanceM: expect.closeTo(1, 9) },
    ])
  })

  it('go along an arc, and a round pour is taped from its first point', () => {
    const [mark] = tapeMarks(washer(4, 1), [0, 4], [0, 4])
    expect(mark).toMatchObject({ corner: 'A', distanceM: expect.closeTo(2 * Math.PI, 9) })
  })
})
