import { Clipper, EndType, JoinType } from 'clipper2-ts'
import { describe, expect, it } from 'vitest'
import { unionNonZero } from '../../core/geometry/clip'
import type { Ring } from '../../core/geometry/curve'
import { flatRingArea } from '../../core/geometry/flatArea'
import { cleanRing } from '../../core/sun/cleanRing'
import { type RoofPiece, straightSkeleton } from '../../core/sun/straightSkeleton'
import type { Pt } from '../../shared/document/primitives'
import { box, seeded } from './fixtures'

const hip = (ring: Ring): readonly RoofPiece[] => {
  const pieces = straightSkeleton(
    ring,
    ring.map(() => 1),
  )
  if (pieces === null) throw new Error(`no roof over ${JSON.stringify(ring)}`)
  return pieces
}

/** Space between eave plane and roof at 12 in 12: fans of triangles, area times mean height. */
const volume = (pieces: readonly RoofPiece[]): number => {
  let sum = 0
  for (const { points } of pieces)
    for (let i = 2; i < points.length; i++) {
      const [a, b, c] = [points[0]!, points[i - 1]!, points[i]!]
      const area = ((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])) / 2
      sum += (area * (a[2] + b[2] + c[2])) / 3
    }
  return sum
}

const highest = (pieces: readonly RoofPiece[]): number => Math.max(...pieces.flatMap(p => p.points.map(q => q[2])))

/** Area of the roof higher than `inset`, from the pieces. */
const areaAbove = (pieces: readonly RoofPiece[], inset: number): number => {
  let sum = 0
  for (const { points } of pieces) {
    const kept: Pt[] = []
    points.forEach((a, i) => {
      const b = points[(i + 1) % points.length]!
      if (a[2] >= inset) kept.push([a[0], a[1]])
      if (a[2] >= inset !== b[2] >= inset) {
        const t = (inset - a[2]) / (b[2] - a[2])
        kept.push([a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t])
      }
    })
    if (kept.length >= 3) sum += flatRingArea(kept)
  }
  return sum
}

const unitsPerM = 1e7

/** Area of the ring moved in with mitered corners by a general offsetting library. */
const offsetArea = (ring: Ring, insetM: number, steps: number): number => {
  let paths = [ring.map(([x, y]) => ({ x: Math.round(x * unitsPerM), y: Math.round(y * unitsPerM) }))]
  for (let step = 0; step < steps; step++)
    paths = Clipper.inflatePaths(paths, (-insetM / steps) * unitsPerM, JoinType.Miter, EndType.Polygon, 1000)
  return paths.reduce((sum, each) => sum + Clipper.area(each), 0) / unitsPerM ** 2
}

/** How far the pieces are from the offset. In one step the lines of edges that are gone by then still trim their
 * neighbors; ten steps follow the wavefront closely enough, with rounding in each. The nearer of the two counts. */
const offsetGap = (ring: Ring, pieces: readonly RoofPiece[], insetM: number): number => {
  const areaM2 = areaAbove(pieces, insetM)
  return Math.min(...[1, 10].map(steps => Math.abs(areaM2 - offsetArea(ring, insetM, steps))))
}

const star = (random: () => number): Ring => {
  const corners = 3 + Math.floor(random() * 14)
  return cleanRing(
    Array.from({ length: corners }, (_, i): Pt => {
      const angle = (2 * Math.PI * (i + 0.7 * random())) / corners
      const radius = 3 + 6 * random()
      return [radius * Math.cos(angle), radius * Math.sin(angle)]
    }),
  )
}

/** A house plan of equal squares grown at random: many events at one height. Null if it closed around a court. */
const blockPlan = (random: () => number, turnRad: number, sideM: number): Ring | null => {
  const cells: Pt[] = [[0, 0]]
  const count = 2 + Math.floor(random() * 12)
  while (cells.length < count) {
    const [x, y] = cells[Math.floor(random() * cells.length)]!
    const [dx, dy] = ([[1, 0], [0, 1], [-1, 0], [0, -1]] as const)[Math.floor(random() * 4)]! // biome-ignore format: one line
    if (!cells.some(([cx, cy]) => cx === x + dx && cy === y + dy)) cells.push([x + dx, y + dy])
  }
  const [only, ...others] = unionNonZero(cells.map(([x, y]) => box(x * sideM, y * sideM, sideM, sideM)))
  if (only === undefined || others.length > 0 || only.holes.length > 0) return null
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)]
  return cleanRing(only.ring.map(([x, y]): Pt => [x * c - y * s, x * s + y * c]))
}

describe('a hip roof over simple plans is the one worked by hand', () => {
  it('over a rectangle has a ridge of length − width at half the width', () => {
    const pieces = hip(box(0, 0, 12, 8))
    const ridge = pieces.flatMap(({ points }) => points).filter(([, , inset]) => Math.abs(inset - 4) < 1e-9)
    const ends = [...new Set(ridge.map(([x, y]) => `${x.toFixed(6)} ${y.toFixed(6)}`))].sort()
    expect(ends).toEqual(['4.000000 4.000000', '8.000000 4.000000'])
    expect(highest(pieces)).toBeCloseTo(4, 12)
    // Prism of the ridge plus the two halves of a pyramid: W²(L − W)/4 + W³/6.
    expect(volume(pieces)).toBeCloseTo((8 * 8 * 4) / 4 + 8 ** 3 / 6, 9)
  })

  it('over a square is a pyramid: a third of base times height', () => {
    const pieces = hip(box(3, -2, 6, 6))
    expect(pieces).toHaveLength(4)
    expect(volume(pieces)).toBeCloseTo((36 * 3) / 3, 9)
  })

  it('over an L of equal wings holds ∫(4 − 2t)(16 − 2t) dt from 0 to 2', () => {
    const ell: Ring = [[0, 0], [10, 0], [10, 4], [4, 4], [4, 10], [0, 10]] // biome-ignore format: one line
    const pieces = hip(ell)
    expect(volume(pieces)).toBeCloseTo(64 * 2 - 20 * 4 + (4 / 3) * 8, 9)
    expect(highest(pieces)).toBeCloseTo(2, 12)
  })

  it('over an L of unequal wings: the wide wing runs on alone above the narrow ridge', () => {
    const ell: Ring = [[0, 0], [12, 0], [12, 4], [6, 4], [6, 10], [0, 10]] // biome-ignore format: one line
    // Inset area (12−2t)(4−2t) + (6−2t)(10−2t) − (6−2t)(4−2t) up to t = 2, then (6−2t)(10−2t) up to 3; integrated by hand.
    const below = (t: number): number => 84 * t - 22 * t * t + (4 * t ** 3) / 3
    const above = (t: number): number => 60 * t - 16 * t * t + (4 * t ** 3) / 3
    const pieces = hip(ell)
    expect(volume(pieces)).toBeCloseTo(below(2) + above(3) - above(2), 9)
    expect(highest(pieces)).toBeCloseTo(3, 12)
  })

  it('over a regular polygon is a cone of faces: area times apothem over 3', () => {
    for (const corners of [3, 5, 6, 12, 97]) {
      const ring = Array.from({ length: corners }, (_, i): Pt => {
        const angle = (2 * Math.PI * i) / corners
        return [5 * Math.cos(angle), 5 * Math.sin(angle)]
      })
      const areaM2 = (corners / 2) * 25 * Math.sin((2 * Math.PI) / corners)
      expect(volume(hip(ring))).toBeCloseTo((areaM2 * 5 * Math.cos(Math.PI / corners)) / 3, 5)
    }
  })

  it('with two sides upright over a rectangle is a gable: half the prism', () => {
    const pieces = straightSkeleton(box(0, 0, 12, 8), [1, 0, 1, 0])!
    expect(volume(pieces)).toBeCloseTo((12 * 8 * 4) / 2, 9)
    const across = straightSkeleton(box(0, 0, 12, 8), [0, 1, 0, 1])!
    expect(highest(across)).toBeCloseTo(6, 12)
    expect(volume(across)).toBeCloseTo((12 * 8 * 6) / 2, 9)
  })
})

describe('a hip roof over any plan', () => {
  it('cut level is the plan moved in: the area a general offsetting library gives', () => {
    const random = seeded(71)
    let compared = 0
    for (let n = 0; n < 100; n++) {
      const ring = star(random)
      const pieces = hip(ring)
      for (const share of [0.1, 0.35, 0.6, 0.85]) {
        const inset = share * highest(pieces)
        expect(offsetGap(ring, pieces, inset)).toBeLessThan(1e-4)
        compared++
      }
    }
    expect(compared).toBe(400)
  })

  it('is found where many corners meet at once, turned and in feet or meters', () => {
    const random = seeded(72)
    let built = 0
    for (let n = 0; n < 300; n++) {
      const ring = blockPlan(random, [0, 0.3, Math.PI / 4][n % 3]!, [1, 0.3048, 3.6576][n % 3]!)
      if (ring === null) continue
      const pieces = hip(ring)
      const inset = 0.4 * highest(pieces)
      expect(offsetGap(ring, pieces, inset)).toBeLessThan(1e-4)
      built++
    }
    expect(built).toBeGreaterThan(290)
  })

  it('is refused over a plan that crosses itself', () => {
    const bow: Ring = [[0, 0], [10, 10], [10, 0], [0, 6]] // biome-ignore format: one line
    expect(straightSkeleton(bow, [1, 1, 1, 1])).toBeNull()
  })
})
