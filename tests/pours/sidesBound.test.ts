import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { toCutRegion } from '../../core/pours/region/cutRegion'
import { halfPerimeter, sidesBound } from '../../core/pours/search/sidesBound'
import { resolveWeights } from '../../core/pours/weights'
import { circle, ft2M2, planter, rectangle, region } from './shapes'

const ftM = 0.3048
const weights = resolveWeights(undefined)

/** Feet of joint that k pours of a region can't do without, none larger than `over` times the k-th part. */
const leastFt = (of: ReturnType<typeof region>, k: number, over = 1): number => {
  const slab = toCutRegion(of)
  const meanM2 = slab.areaM2 / k
  return sidesBound(slab, k, 1 / ftM, { weights, meanM2, capM2: over * meanM2 })
}

describe('the joint that k pours need, by the corners its ends make', () => {
  it('takes the half perimeter of regular polygons, triangle, square and all but a circle', () => {
    expect(halfPerimeter(3)).toBeCloseTo(Math.sqrt(3 * Math.sqrt(3)), 12)
    expect(halfPerimeter(4)).toBeCloseTo(2, 12)
    expect(halfPerimeter(1e6)).toBeCloseTo(Math.sqrt(Math.PI), 9)
  })

  it('lies above its tangents, as the proof wants', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 3.01, max: 40, noNaN: true }),
        fc.double({ min: 3.01, max: 40, noNaN: true }),
        (n, at) => {
          const slope = (halfPerimeter(at + 1e-5) - halfPerimeter(at - 1e-5)) / 2e-5
          expect(halfPerimeter(n)).toBeGreaterThan(halfPerimeter(at) + slope * (n - at) - 1e-6)
        },
      ),
    )
  })

  it('is all but met by squares, and never passed', () => {
    for (const rows of [2, 3, 5, 10]) {
      const side = 30 * rows
      const joint = 2 * (rows - 1) * side
      const least = leastFt(region(rectangle(0, 0, side, side)), rows * rows)
      expect(least).toBeLessThanOrEqual(joint)
      expect(least).toBeGreaterThan(0.98 * joint)
    }
  })

  it('of a round slab is never more than its spokes, the least joint for equal sectors up to six', () => {
    for (const k of [3, 4, 5, 6]) {
      const least = leastFt(region(circle(0, 0, 25)), k)
      expect(least).toBeLessThanOrEqual(25 * k)
      expect(least).toBeGreaterThan(0.6 * 25 * k)
    }
  })

  it('counts what passing an opening costs', () => {
    const slab = region(rectangle(0, 0, 60, 60), planter(28, 28, 4, 4))
    // Two joints across, less the sides of the planter they pass, with one piece of joint more.
    expect(leastFt(slab, 4)).toBeLessThanOrEqual(2 * (60 - 4) + weights.extraJoint)
    expect(leastFt(slab, 4)).toBeGreaterThan(80)
  })

  it('grows with k and shrinks where a pour may be larger', () => {
    const slab = region(rectangle(0, 0, 120, 80))
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 60 }), fc.double({ min: 1, max: 1.4, noNaN: true }), (k, over) => {
        expect(leastFt(slab, k + 1)).toBeGreaterThan(leastFt(slab, k))
        expect(leastFt(slab, k, over)).toBeLessThanOrEqual(leastFt(slab, k) + 1e-9)
      }),
    )
  })

  it('falls back to circles on an outline traced in thousands of sides', () => {
    const n = 3000
    const traced = Array.from({ length: n }, (_, i) => {
      const turn = (i / n) * 2 * Math.PI
      return { edgeId: `e${i}`, from: [20 * Math.cos(turn), 20 * Math.sin(turn)] as [number, number] }
    })
    const outer = traced.map((edge, i) => ({ ...edge, to: traced[(i + 1) % n]!.from }))
    const areaFt2 = (Math.PI * 20 * 20) / ft2M2
    const least = leastFt({ outer, holes: [] }, 20)
    const circles = (20 * 2 * Math.sqrt((Math.PI * areaFt2) / 20) - (2 * Math.PI * 20) / ftM) / 2
    expect(least).toBeLessThanOrEqual(circles + 1e-3)
    expect(least).toBeGreaterThan(0.99 * circles)
  })
})
