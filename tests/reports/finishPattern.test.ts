import { describe, expect, it } from 'vitest'
import { bandStones } from '../../core/reports/pattern/borderStones'
import { patternTile } from '../../core/reports/pattern/finishPattern'
import type { Pt } from '../../shared/document/primitives'
import type { Band } from '../../shared/document/slab'

const area = (points: readonly Pt[]): number =>
  points.reduce((sum, [x, y], i) => {
    const [nx, ny] = points[(i + 1) % points.length]!
    return sum + (x * ny - nx * y) / 2
  }, 0)

const contains = (points: readonly Pt[], x: number, y: number): boolean =>
  points.every(([ax, ay], i) => {
    const [bx, by] = points[(i + 1) % points.length]!
    return (bx - ax) * (y - ay) - (by - ay) * (x - ax) >= 0
  })

const stamped = ['ashlar', 'runningBond', 'plank', 'flagstone', 'cobble'] as const

describe.each(stamped)('the %s tile', name => {
  const tile = patternTile(name)!

  it('covers every spot of itself once', () => {
    let uncovered = 0
    let twice = 0
    for (let i = 0; i < 40; i++)
      for (let j = 0; j < 40; j++) {
        const [x, y] = [((i + 0.37) / 40) * tile.widthM, ((j + 0.61) / 40) * tile.heightM]
        const over = tile.stones.filter(stone => contains(stone.points, x, y)).length
        if (over === 0) uncovered++
        if (over > 1) twice++
      }
    expect({ uncovered, twice }).toEqual({ uncovered: 0, twice: 0 })
  })

  it('has whole stones, drawn counter-clockwise', () => {
    for (const { points } of tile.stones) expect(area(points)).toBeGreaterThan(1e-4)
  })

  it('is the same every time', () => {
    expect(patternTile(name)).toBe(tile)
  })
})

it('a seamless texture and a broomed surface show tones without joints, a plain one neither', () => {
  expect(patternTile('seamless')!.jointed).toBe(false)
  expect(patternTile('broom')!.jointed).toBe(false)
  expect(patternTile('plain')).toBeNull()
})

describe.each(['flagstone', 'cobble'] as const)('the stones of the %s tile', name => {
  it('keep most of themselves where their corners are worn, and never leave their place', () => {
    for (const { points, face = [] } of patternTile(name)!.own) {
      expect(area(face) / area(points)).toBeGreaterThan(0.8)
      expect(area(face)).toBeLessThan(area(points))
      for (const [x, y] of face) {
        const [cx, cy] = [x + (points[0]![0] - x) * 1e-9, y + (points[0]![1] - y) * 1e-9]
        expect(contains(points, cx, cy) || nearTo(points, x, y)).toBe(true)
      }
    }
  })
})

/** On an edge, but for the last digits. */
const nearTo = (points: readonly Pt[], x: number, y: number): boolean =>
  points.some(([ax, ay], i) => {
    const [bx, by] = points[(i + 1) % points.length]!
    return Math.abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) < 1e-9
  })

it('stains lie over jointed patterns alone, as wide and high as their tile', () => {
  for (const name of stamped) {
    const { stains, widthM, heightM } = patternTile(name)!
    expect([stains?.widthM, stains?.heightM]).toEqual([widthM, heightM])
    expect(stains?.stains).toBeNull()
  }
  expect(patternTile('seamless')!.stains).toBeNull()
})

describe('stones across a band', () => {
  const band = (corners: readonly Pt[], closed: boolean): Band => ({
    id: 'd1',
    widthM: 0.3,
    finishId: 'f1',
    placed: 'withField',
    line: {
      id: 'r1',
      vertices: corners.map((at, i) => ({ id: `v${i}`, at })),
      edges: corners.slice(closed ? 0 : 1).map((_, i) => ({ id: `e${i}` })),
    },
  })
  const coverage = (stones: readonly { readonly points: readonly Pt[] }[], spots: readonly Pt[]) =>
    spots.map(([x, y]) => stones.filter(({ points }) => contains(points, x, y)).length)

  it('cover a bent band once, the corner by its miter', () => {
    const stones = bandStones(
      band(
        [
          [0, 0],
          [4, 0],
          [4, 3],
        ],
        false,
      ),
      'runningBond',
    )
    const along = Array.from({ length: 30 }, (_, i): Pt => [0.017 + (i * 4) / 30, 0.071])
    const up = Array.from({ length: 20 }, (_, i): Pt => [4.062, 0.013 + (i * 3) / 20])
    const outside: readonly Pt[] = [
      [2, 0.4],
      [4.3, 1],
      [3.6, 1],
    ]
    expect(new Set(coverage(stones, [...along, ...up]))).toEqual(new Set([1]))
    expect(new Set(coverage(stones, outside))).toEqual(new Set([0]))
  })

  it('go all around a closed line without a gap at its first corner', () => {
    const stones = bandStones(
      band(
        [
          [0, 0],
          [3, 0],
          [3, 2],
          [0, 2],
        ],
        true,
      ),
      'plank',
    )
    const around: readonly Pt[] = [
      [-0.1, -0.11],
      [0.1, 0.07],
      [1.43, -0.1],
      [3.1, 1.03],
      [-0.1, 1.17],
    ]
    expect(coverage(stones, around)).toEqual([1, 1, 1, 1, 1])
  })
})
