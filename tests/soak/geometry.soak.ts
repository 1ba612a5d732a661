/** Long runs of the geometry's promises: degenerate booleans against polygon-clipping, tangled slabs against themselves. */
import { describe, expect, it } from 'vitest'
import { intersectRegions, subtractRegions, unionRegions } from '../../core/geometry/clip'
import type { CurveRegion, Ring } from '../../core/geometry/curve'
import { intersectCurves, subtractCurves, unionCurves } from '../../core/geometry/curveBoolean'
import { flatArea } from '../../core/geometry/flatArea'
import type { ResolvedSlab } from '../../core/geometry/resolvedSlab'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { curveArea } from '../../core/geometry/ringArea'
import { degeneratePair, oracle } from '../geometry/booleanOracle'
import { mulberry32 } from '../geometry/mulberry32'
import { mapPaths, randomSlab } from '../geometry/randomSlab'

const straight = (ring: Ring): CurveRegion => ({
  outer: ring.map((from, i) => ({ edgeId: 'e1', from, to: ring[(i + 1) % ring.length]! })),
  holes: [],
})

describe('20,000 degenerate pairs', () => {
  it('agree with polygon-clipping, on the grid and exactly', () => {
    const random = mulberry32(77)
    const wrong: string[] = []
    // the oracle itself throws on a pair now and then; such pairs are counted, not dropped in silence
    let unanswered = 0
    const ask = (question: () => number): number | undefined => {
      try {
        return question()
      } catch {
        unanswered++
        return undefined
      }
    }
    for (let i = 0; i < 20_000; i++) {
      const [a, b] = degeneratePair(random)
      const [p, q] = [[straight(a.ring)], [straight(b.ring)]]
      const checks: readonly [name: string, flat: number, exact: number, expected: number | undefined][] = [
        [
          'union',
          flatArea(unionRegions([a, b])),
          curveArea(unionCurves([...p, ...q]).regions),
          ask(() => oracle.union(a, b)),
        ],
        [
          'intersection',
          flatArea(intersectRegions([a], [b])),
          curveArea(intersectCurves(p, q).regions),
          ask(() => oracle.intersection(a, b)),
        ],
        [
          'difference',
          flatArea(subtractRegions([a], [b])),
          curveArea(subtractCurves(p, q).regions),
          ask(() => oracle.difference(a, b)),
        ],
      ]
      for (const [name, flat, exact, expected] of checks)
        if (expected !== undefined && (Math.abs(flat - expected) > 3e-4 || Math.abs(exact - expected) > 1e-6))
          wrong.push(`${i} ${name}: ${flat} on the grid, ${exact} exactly, expected ${expected}`)
    }
    expect(wrong).toEqual([])
    expect(unanswered).toBeLessThanOrEqual(30)
  })
})

describe('5,000 tangled slabs', () => {
  const figures = (r: ResolvedSlab): number[] => [
    r.netAreaM2,
    r.perimeterM,
    curveArea(r.field),
    ...r.insets.map(i => i.areaM2),
    ...r.bands.flatMap(b => [b.areaM2, b.lengthM]),
    ...r.borders.flatMap(b => [b.areaM2, b.outerLengthM, b.innerLengthM, b.centerLengthM]),
  ]

  // Known limit: of the tangled borders about one in a thousand fills or leaves a pocket of some square inches between
  // two strips when turned, because the clipping library loses it in two frames alike; and in one in some thousand a
  // corner of two nearly tangent edges is a micrometer off, so that the parts miss the whole by some 1e-9.
  it('but for one in 500 add up to a billionth and have the same figures when turned; none is off by a hundredth', () => {
    const wrong: string[] = []
    const odd = new Set<number>()
    for (let seed = 1; seed <= 5_000; seed++) {
      const slab = randomSlab(seed * 7_919)
      const r = resolveSlab(slab)
      const whole = Math.max(1, r.netAreaM2)
      const gap = Math.abs(r.fieldAreaM2 - curveArea(r.field)) / whole
      if (gap > 1e-9) odd.add(seed)
      if (gap > 1e-6) wrong.push(`${seed * 7_919} adds up to ${gap}`)
      const [c, s] = [Math.cos(seed), Math.sin(seed)]
      const turned = resolveSlab(
        mapPaths(slab, path => ({
          ...path,
          vertices: path.vertices.map(v => ({ ...v, at: [v.at[0] * c - v.at[1] * s, v.at[0] * s + v.at[1] * c] })),
        })),
      )
      const other = figures(turned)
      figures(r).forEach((value, i) => {
        const apart = Math.abs(value - other[i]!) / whole
        if (apart > 1e-6) odd.add(seed)
        if (apart > 0.01) wrong.push(`${seed * 7_919} figure ${i}: ${value}, turned ${other[i]}`)
      })
    }
    expect(wrong).toEqual([])
    expect(odd.size).toBeLessThanOrEqual(10)
  })
})
