import { describe, expect, it } from 'vitest'
import { distanceToEdge, regionContains } from '../../core/geometry/contains'
import type { CurveRegion } from '../../core/geometry/curve'
import { proposePours } from '../../core/pours/proposePours'
import { toCutRegion } from '../../core/pours/region/cutRegion'
import { innerArea } from '../../core/pours/region/innerArea'
import { minimumBox } from '../../core/pours/region/minimumBox'
import { flatRing } from './curveMeasures'
import { moved, randomSlab } from './randomSlabs'
import { circle, ft2M2, planter, polygon, rectangle, region } from './shapes'

const ftM = 0.3048
const reachM = 12 * ftM

const inner = (of: CurveRegion): number => {
  const cut = toCutRegion(of)
  return innerArea(cut, minimumBox(cut.rings[0]!), reachM)
}

/** Points of a fine grid counted by the definition. */
function counted(of: CurveRegion, stepM: number): number {
  const edges = [of.outer, ...of.holes].flat()
  const points = flatRing(of.outer, 16)
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
  let count = 0
  for (let x = Math.min(...xs); x < Math.max(...xs); x += stepM)
    for (let y = Math.min(...ys); y < Math.max(...ys); y += stepM)
      if (edges.every(edge => distanceToEdge(edge, [x, y]) > reachM) && regionContains(of, [x, y])) count++
  return count * stepM * stepM
}

describe('the part of a pour that nobody reaches from its edges', () => {
  it('is the rectangle 12 ft inside a rectangle, however it lies', () => {
    expect(inner(region(rectangle(0, 0, 30, 40))) / ft2M2).toBeCloseTo(6 * 16, 9)
    expect(inner(moved(region(rectangle(0, 0, 30, 40)), 0.7, 50, -20)) / ft2M2).toBeCloseTo(6 * 16, 6)
  })

  it('is nothing on a walk, bent or not, and nothing where a pour is 24 ft wide', () => {
    expect(inner(region(rectangle(0, 0, 24, 90)))).toBe(0)
    const bent = polygon([
      [0, 0],
      [120, 0],
      [120, 80],
      [112, 80],
      [112, 8],
      [0, 8],
    ])
    expect(inner(region(bent))).toBe(0)
  })

  it('is the smaller circle of a circle, to 2 %', () => {
    const exact = Math.PI * (20 - 12) ** 2
    expect(Math.abs(inner(region(circle(0, 0, 20))) / ft2M2 / exact - 1)).toBeLessThan(0.02)
  })

  it('is the smaller circle of a circle traced in 4,000 short sides, to 2 %', () => {
    const traced = Array.from({ length: 4000 }, (_, i): [number, number] => {
      const turn = (i / 4000) * 2 * Math.PI
      return [30 * Math.cos(turn), 30 * Math.sin(turn)]
    })
    const exact = Math.PI * 18 ** 2
    expect(Math.abs(inner(region(polygon(traced))) / ft2M2 / exact - 1)).toBeLessThan(0.02)
  })

  it('leaves out a quarter circle about a re-entrant corner', () => {
    const l = polygon([
      [0, 0],
      [60, 0],
      [60, 30],
      [30, 30],
      [30, 60],
      [0, 60],
    ])
    // A strip of 18 ft × 6 ft in each leg, and the square of 18 ft between them less the quarter circle.
    const exact = 2 * 18 * 6 + 18 ** 2 - (Math.PI * 12 ** 2) / 4
    expect(Math.abs(inner(region(l)) / ft2M2 / exact - 1)).toBeLessThan(0.03)
  })

  it('ends 12 ft from an opening', () => {
    const ring = region(rectangle(0, 0, 60, 60), planter(28, 28, 4, 4))
    // The inner square less the opening with its rim: 4 × 4 + 4 × 4 × 12 + π × 12².
    const exact = 36 ** 2 - (16 + 4 * 4 * 12 + Math.PI * 144)
    expect(Math.abs(inner(ring) / ft2M2 / exact - 1)).toBeLessThan(0.02)
  })

  it('agrees with a count of points on the pours of 20 random slabs, to 0.4 m²', () => {
    let looked = 0
    for (let seed = 1; seed <= 20; seed++) {
      const { pours } = proposePours({
        ...{ slabId: 's1', part: 'whole', region: randomSlab(seed), capM2: 900 * ft2M2, budget: 'small' },
      })
      for (const pour of pours) {
        const quick = inner(pour.region)
        if (quick === 0) continue
        looked++
        expect(Math.abs(quick - counted(pour.region, 0.15)), `slab ${seed}`).toBeLessThan(0.4)
      }
    }
    expect(looked).toBeGreaterThan(5)
  })
})
