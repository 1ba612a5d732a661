import polygonClipping, { type MultiPolygon, type Polygon } from 'polygon-clipping'
import { describe, expect, it } from 'vitest'
import { unionNonZero } from '../../core/geometry/clip'
import type { Ring } from '../../core/geometry/curve'
import { flatArea, flatRingArea } from '../../core/geometry/flatArea'
import { casterShadow } from '../../core/sun/casterShadow'
import { transmission } from '../../core/sun/transmission'
import { windingNumber } from '../../core/sun/windingNumber'
import type { Caster } from '../../shared/document/caster'
import type { Pt } from '../../shared/document/primitives'
import { box, building, cast, cover, pathOf, seeded, tree, wall } from './fixtures'

const date = '2026-07-01'

const pointsOf = (cycle: Float64Array): Pt[] =>
  Array.from({ length: cycle.length / 2 }, (_, i): Pt => [cycle[2 * i]!, cycle[2 * i + 1]!])

const cyclesOf = (caster: Caster, levelM: number, perMeter: Pt): Float64Array[] =>
  casterShadow(cast(caster), levelM, perMeter, date, undefined).flatMap(part => [...part.cycles])

const shadowArea = (caster: Caster, levelM: number, perMeter: Pt): number =>
  flatArea(unionNonZero(cyclesOf(caster, levelM, perMeter).map(pointsOf)))

const isShaded = (cycles: readonly Float64Array[], [x, y]: Pt): boolean =>
  cycles.reduce((sum, cycle) => sum + windingNumber(cycle, cycle.length, x, y), 0) !== 0

/** Every edge swept along s, with the shape before and after: the shadow by brute force in a general clipping library. */
const sweptUnion = (rings: readonly Ring[], [sx, sy]: Pt): MultiPolygon => {
  const close = (ring: Ring): [number, number][] => [...ring, ring[0]!].map(([x, y]) => [x, y])
  const shifted = rings.map(ring => ring.map(([x, y]): Pt => [x + sx, y + sy]))
  const quads = rings.flatMap(ring =>
    ring.map(([x, y], i): Polygon => {
      const [nx, ny] = ring[(i + 1) % ring.length]!
      return [close([[x, y], [nx, ny], [nx + sx, ny + sy], [x + sx, y + sy]])] // biome-ignore format: one line
    }),
  )
  return polygonClipping.union([rings.map(close)], [shifted.map(close)], ...quads.map((quad): MultiPolygon => [quad]))
}

const multiArea = (shape: MultiPolygon): number =>
  shape.reduce(
    (sum, polygon) =>
      sum + polygon.reduce((own, ring, i) => own + (i === 0 ? 1 : -1) * Math.abs(flatRingArea(ring)), 0),
    0,
  )

const inMulti = (shape: MultiPolygon, [x, y]: Pt): boolean =>
  shape.some(
    polygon =>
      polygon.filter(ring => windingNumber(Float64Array.from(ring.flat()), 2 * ring.length, x, y) !== 0).length % 2 ===
      1,
  )

const star = (random: () => number, radius: number): Ring => {
  const corners = 4 + Math.floor(random() * 10)
  return Array.from({ length: corners }, (_, i): Pt => {
    const angle = (2 * Math.PI * (i + 0.6 * random())) / corners
    const reach = radius * (0.5 + 0.5 * random())
    return [reach * Math.cos(angle), reach * Math.sin(angle)]
  })
}

describe('the shadow cycle of an upright building is its whole shadow', () => {
  it('equals the union of its swept edges, concave footprints and courtyards included', () => {
    const random = seeded(5)
    let inside = 0
    for (let n = 0; n < 120; n++) {
      const outer = star(random, 10)
      const holes = n % 2 === 0 ? [] : [star(random, 3.5)]
      const turn = 2 * Math.PI * random()
      const reach = 4 * random()
      const perMeter: Pt = [reach * Math.cos(turn), reach * Math.sin(turn)]
      const house = building(outer, { eaveM: 3, courtyards: holes.map(hole => pathOf([...hole].reverse(), 50)) })
      const swept = sweptUnion([outer, ...holes], [3 * perMeter[0], 3 * perMeter[1]])
      expect(Math.abs(shadowArea(house, 0, perMeter) - multiArea(swept))).toBeLessThan(1e-3)
      const cycles = cyclesOf(house, 0, perMeter)
      for (let k = 0; k < 60; k++) {
        const at: Pt = [40 * random() - 20, 40 * random() - 20]
        expect(isShaded(cycles, at)).toBe(inMulti(swept, at))
        if (isShaded(cycles, at)) inside++
      }
    }
    expect(inside).toBeGreaterThan(1000)
  })

  it('never winds negatively', () => {
    const random = seeded(6)
    for (let n = 0; n < 100; n++) {
      const house = building(star(random, 8), { courtyards: [pathOf([...star(random, 3)].reverse(), 50)] })
      const cycles = cyclesOf(house, 0, [3 * random() - 1.5, 3 * random() - 1.5])
      for (let k = 0; k < 50; k++) {
        const at: Pt = [30 * random() - 15, 30 * random() - 15]
        expect(
          cycles.reduce((sum, cycle) => sum + windingNumber(cycle, cycle.length, ...at), 0),
        ).toBeGreaterThanOrEqual(0)
      }
    }
  })
})

describe('shadow sizes follow height over tan(altitude)', () => {
  // Plane trigonometry: a box w × d × h with the sun square to w shades w · (d + h · cot(altitude)).
  it.each([
    [0, 10 * (6 + 3 * 2)],
    [1, 10 * (6 + 2 * 2)],
    [-1, 10 * (6 + 3 * 2)],
    [3, 0],
    [5, 0],
  ])('of a box 3 m high on a plane at %s m', (levelM, areaM2) => {
    expect(shadowArea(building(box(0, 0, 10, 6)), levelM, [0, 2])).toBeCloseTo(areaM2, 3)
  })

  it('of a floating box leaves the ground beneath free', () => {
    const balcony = building(box(0, 0, 4, 2), { baseM: 3, eaveM: 3.2 })
    const cycles = cyclesOf(balcony, 0, [0, 1])
    expect(isShaded(cycles, [2, 1])).toBe(false)
    expect(isShaded(cycles, [2, 4])).toBe(true)
    expect(shadowArea(balcony, 0, [0, 1])).toBeCloseTo(4 * (2 + 0.2), 3)
  })

  it('of a cover is its outline moved along, plus its edge', () => {
    const sheet = cover(box(0, 0, 4, 3), { undersideM: 2.5, topM: 2.5 })
    expect(shadowArea(sheet, 0, [1, 0])).toBeCloseTo(12, 3)
    expect(isShaded(cyclesOf(sheet, 0, [1, 0]), [2.4, 1])).toBe(false)
    expect(isShaded(cyclesOf(sheet, 0, [1, 0]), [6.4, 1])).toBe(true)
    expect(shadowArea(cover(box(0, 0, 4, 3)), 0, [1, 0])).toBeCloseTo(12 + 3 * 0.2, 3)
  })

  it('of a wall is a parallelogram; edge on to the sun it has none', () => {
    const fence = wall([[0, 0], [8, 0]]) // biome-ignore format: one line
    expect(shadowArea(fence, 0, [0.5, 1.5])).toBeCloseTo(8 * 2 * 1.5, 3)
    expect(cyclesOf(fence, 0, [1.5, 0])).toEqual([])
    expect(shadowArea(fence, 0.5, [0.5, 1.5])).toBeCloseTo(8 * 1.5 * 1.5, 3)
  })

  it('of eaves reaches out by the overhang while the walls stay', () => {
    const house = building(box(0, 0, 10, 6), { overhangM: 0.5 })
    // Straight overhead: the eave outline. From the south: walls 10 wide from 0, eaves 11 wide, moved by 3 · 2.
    expect(shadowArea(house, 0, [0, 0])).toBeCloseTo(11 * 7, 3)
    expect(shadowArea(house, 0, [0, 2])).toBeCloseTo(10 * 5.5 + 11 * 7, 3)
  })

  it('of eaves that meet across a notch covers the notch', () => {
    const notched: Ring = [[0, 0], [10, 0], [10, 6], [5.4, 6], [5.4, 3], [5, 3], [5, 6], [0, 6]] // biome-ignore format: one line
    const house = building(notched, { overhangM: 0.3 })
    expect(shadowArea(house, 0, [0, 0])).toBeCloseTo(10.6 * 6.6, 3)
  })
})

/** Walks the sun's ray from a point in small steps of height and asks whether it meets the house. */
const meetsHouse = (
  [x, y]: Pt,
  [kx, ky]: Pt,
  topM: number,
  isBody: (x: number, y: number, z: number) => boolean,
  roofGap: (x: number, y: number, z: number) => number | null,
): boolean => {
  const steps = 4000
  let before: number | null = null
  for (let step = 0; step <= steps; step++) {
    const z = (topM * step) / steps
    const px = x - z * kx
    const py = y - z * ky
    if (isBody(px, py, z)) return true
    const gap = roofGap(px, py, z)
    if (gap !== null && before !== null && gap >= 0 !== before >= 0) return true
    before = gap
  }
  return false
}

const within = (x: number, y: number, w: number, d: number, outM: number): boolean =>
  x >= -outM && x <= w + outM && y >= -outM && y <= d + outM

describe('a pitched roof throws the shade of its ridge', () => {
  const w = 12
  const d = 8
  const slope = 0.5
  const roofs: readonly (readonly [string, Caster, number, (x: number, y: number) => number])[] = [0, 0.6].flatMap(
    o =>
      [
        [
          `gable along the long side, overhang ${o}`,
          building(box(0, 0, w, d), { overhangM: o, roof: { form: 'gable', risePer12: 6, ridgeAlongEdge: 'e1' } }),
          o,
          (_x: number, y: number) => 3 + slope * Math.min(y + o, d + o - y),
        ],
        [
          `gable along the short side, overhang ${o}`,
          building(box(0, 0, w, d), { overhangM: o, roof: { form: 'gable', risePer12: 6, ridgeAlongEdge: 'e2' } }),
          o,
          (x: number) => 3 + slope * Math.min(x + o, w + o - x),
        ],
        [
          `hip, overhang ${o}`,
          building(box(0, 0, w, d), { overhangM: o, roof: { form: 'hip', risePer12: 6 } }),
          o,
          (x: number, y: number) => 3 + slope * Math.min(x + o, w + o - x, y + o, d + o - y),
        ],
      ] as const,
  )

  it.each(roofs)('%s: as walking the rays says', (_, house, o, roofAt) => {
    const random = seeded(9)
    let compared = 0
    let shaded = 0
    for (let n = 0; n < 14; n++) {
      const turn = 2 * Math.PI * random()
      const reach = 0.3 + 3 * random()
      const perMeter: Pt = [reach * Math.cos(turn), reach * Math.sin(turn)]
      const cycles = cyclesOf(house, 0, perMeter)
      for (let k = 0; k < 40; k++) {
        const far = (3 + slope * 6.6) * random()
        const at: Pt = [w * random() * 1.4 - 2 + far * perMeter[0], d * random() * 1.4 - 2 + far * perMeter[1]]
        const shade = isShaded(cycles, at)
        // Right at the edge of the shade the walk's steps are too coarse to tell.
        const near = [[0.03, 0], [-0.03, 0], [0, 0.03], [0, -0.03]].map(([dx, dy]): Pt => [at[0] + dx!, at[1] + dy!]) // biome-ignore format: one line
        if (near.some(point => isShaded(cycles, point) !== shade)) continue
        const isBody = (x: number, y: number, z: number): boolean => within(x, y, w, d, 0) && z < roofAt(x, y)
        const gap = (x: number, y: number, z: number): number | null =>
          within(x, y, w, d, o) ? z - roofAt(x, y) : null
        expect([at, perMeter, meetsHouse(at, perMeter, 3 + slope * 6.6, isBody, gap)]).toEqual([at, perMeter, shade])
        compared++
        if (shade) shaded++
      }
    }
    expect(compared).toBeGreaterThan(400)
    expect(shaded).toBeGreaterThan(100)
  })

  it('over an L: as the higher of the two wings’ own hips says', () => {
    const ell: Ring = [[0, 0], [12, 0], [12, 4], [6, 4], [6, 10], [0, 10]] // biome-ignore format: one line
    const house = building(ell, { roof: { form: 'hip', risePer12: 12 } })
    const hip = (x: number, y: number, wide: number, deep: number): number => Math.min(x, wide - x, y, deep - y)
    const isBody = (x: number, y: number, z: number): boolean => {
      const inset = Math.max(hip(x, y, 12, 4), hip(x, y, 6, 10))
      return inset >= 0 && z < 3 + inset
    }
    const random = seeded(10)
    let compared = 0
    for (let n = 0; n < 400; n++) {
      const turn = 2 * Math.PI * random()
      const perMeter: Pt = [1.5 * Math.cos(turn), 1.5 * Math.sin(turn)]
      const cycles = cyclesOf(house, 0, perMeter)
      const far = 6 * random()
      const at: Pt = [14 * random() - 1 + far * perMeter[0], 12 * random() - 1 + far * perMeter[1]]
      const shade = isShaded(cycles, at)
      const near = [[0.03, 0], [-0.03, 0], [0, 0.03], [0, -0.03]].map(([dx, dy]): Pt => [at[0] + dx!, at[1] + dy!]) // biome-ignore format: one line
      if (near.some(point => isShaded(cycles, point) !== shade)) continue
      expect([at, perMeter, meetsHouse(at, perMeter, 6, isBody, () => null)]).toEqual([at, perMeter, shade])
      compared++
    }
    expect(compared).toBeGreaterThan(350)
  })

  it('stands as high as half the span times the rise', () => {
    const gable = cast(building(box(0, 0, w, d), { roof: { form: 'gable', risePer12: 6, ridgeAlongEdge: 'e1' } }))
    expect(Math.max(...gable.solids.map(solid => solid.topM))).toBeCloseTo(3 + 4 * 0.5, 9)
    const across = cast(building(box(0, 0, w, d), { roof: { form: 'gable', risePer12: 6, ridgeAlongEdge: 'e2' } }))
    expect(Math.max(...across.solids.map(solid => solid.topM))).toBeCloseTo(3 + 6 * 0.5, 9)
  })

  it('runs the ridge the way asked for over a house with a bay', () => {
    // 12 m by 8 m with a bay 3 m wide and 1 m deep on the long side.
    const bay: Ring = [[0, 0], [4, 0], [4, -1], [7, -1], [7, 0], [12, 0], [12, 8], [0, 8]] // biome-ignore format: one line
    const top = (ridgeAlongEdge: string): number => {
      const house = cast(building(bay, { roof: { form: 'gable', risePer12: 12, ridgeAlongEdge } }))
      return Math.max(...house.solids.map(solid => solid.topM))
    }
    expect(top('e7')).toBeCloseTo(3 + 4, 9)
    expect(top('e6')).toBeCloseTo(3 + 6, 9)
  })

  it('ends an L of two wings in two gables', () => {
    const ell: Ring = [[0, 0], [12, 0], [12, 6], [6, 6], [6, 14], [0, 14]] // biome-ignore format: one line
    const house = cast(building(ell, { roof: { form: 'gable', risePer12: 12, ridgeAlongEdge: 'e1' } }))
    const faces = house.solids.flatMap(solid => (solid.form === 'faces' ? solid.faces : []))
    const ridge = faces.flatMap(face =>
      Array.from({ length: face.length / 3 }, (_, i) => [...face.slice(3 * i, 3 * i + 3)]),
    )
    const ends = ridge.filter(([, , z]) => Math.abs(z! - 6) < 1e-9).map(point => point.map(v => v.toFixed(3)).join(' '))
    expect(ends).toContain('12.000 3.000 6.000')
    expect(ends).toContain('3.000 14.000 6.000')
  })
})

describe('a tree’s crown is an ellipsoid', () => {
  /** Hull area of points by gift wrapping. */
  const hullArea = (points: readonly Pt[]): number => {
    const hull: Pt[] = []
    let at = points.reduce((a, b) => (b[0] < a[0] ? b : a))
    do {
      hull.push(at)
      let next = points[0]!
      for (const p of points) {
        const turn = (next[0] - at[0]) * (p[1] - at[1]) - (next[1] - at[1]) * (p[0] - at[0])
        if (next === at || turn < 0) next = p
      }
      at = next
    } while (at !== hull[0])
    return Math.abs(flatRingArea(hull))
  }

  it.each([
    [0, [0, 0]],
    [0, [0, 1]],
    [0, [2, -1.5]],
    [1, [-0.7, 0.2]],
    [4, [1, 1]],
    [6, [2, 0]],
    [7.5, [3, 1]],
  ] as const)('cut at %s m, %s m a meter: shaded as its sampled points are', (levelM, perMeter) => {
    const points: Pt[] = []
    const [a, b, zc] = [3, 3, 5]
    for (let i = 0; i <= 400; i++)
      for (let j = 0; j < 360; j++) {
        const up = Math.sin(Math.PI * (i / 400 - 0.5))
        const z = zc + b * up
        if (z < levelM) continue
        const r = a * Math.sqrt(1 - up * up)
        const angle = (2 * Math.PI * j) / 360
        const h = z - levelM
        points.push([r * Math.cos(angle) + h * perMeter[0], r * Math.sin(angle) + h * perMeter[1]])
      }
    const [cycle, ...others] = cyclesOf(tree([0, 0]), levelM, [...perMeter])
    expect(others).toEqual([])
    const areaM2 = flatRingArea(pointsOf(cycle!))
    expect(Math.abs(areaM2 / hullArea(points) - 1)).toBeLessThan(levelM > 2 ? 0.02 : 0.002)
  })

  it('has the area π · a · √(a² + b²k²)', () => {
    // Projection of an ellipsoid of revolution along a slanted direction: plane analytic geometry.
    const [cycle] = cyclesOf(tree([1, 2]), 0, [1.2, 1.6])
    expect(Math.abs(flatRingArea(pointsOf(cycle!)) / (Math.PI * 3 * Math.hypot(3, 3 * 2)) - 1)).toBeLessThan(0.001)
  })

  it('below the slab shades nothing', () => {
    expect(cyclesOf(tree([0, 0]), 8, [1, 0])).toEqual([])
  })
})

describe('what shines through', () => {
  it.each([
    [tree([0, 0], { density: 'open' }), 0.35],
    [tree([0, 0], { density: 'medium' }), 0.2],
    [tree([0, 0], { density: 'dense' }), 0.08],
    [tree([0, 0], { density: 'open', leaves: { from: '04-20', to: '06-30' } }), 0.7],
    [tree([0, 0], { density: 'medium', leaves: { from: '07-02', to: '11-01' } }), 0.6],
    [tree([0, 0], { density: 'dense', leaves: { from: '04-20', to: '07-01' } }), 0.08],
    [tree([0, 0], { density: 'dense', leaves: { from: '10-01', to: '04-15' } }), 0.5],
    [cover(box(0, 0, 1, 1), { light: 'half' }), 0.5],
    [cover(box(0, 0, 1, 1), { light: 'most' }), 0.8],
    [cover(box(0, 0, 1, 1), { light: 0.31 }), 0.31],
    [wall([[0, 0], [1, 0]], { solidity: 0.75 }), 0.25], // biome-ignore format: one line
    [building(box(0, 0, 1, 1)), 0],
  ] as const)('%#: share on 1 July', (caster, share) => {
    expect(transmission(caster, date, undefined)).toBeCloseTo(share, 12)
  })

  it('follows the settings of the site', () => {
    expect(transmission(tree([0, 0]), date, { treeLeafMedium: 0.3 })).toBe(0.3)
  })

  it('counts each screen of an open fence, a solid one once', () => {
    const corner: Pt[] = [[0, 0], [5, 0], [5, 5]] // biome-ignore format: one line
    const parts = (solidity: number) => casterShadow(cast(wall(corner, { solidity })), 0, [-1, 1], date, undefined)
    expect(parts(0.6).map(part => part.cycles.length)).toEqual([1, 1])
    expect(parts(1).map(part => part.cycles.length)).toEqual([2])
    expect(parts(0)).toEqual([])
  })
})
