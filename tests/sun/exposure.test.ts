import { booleanPointInPolygon, multiPolygon } from '@turf/turf'
import polygonClipping, { type MultiPolygon, type Polygon } from 'polygon-clipping'
import { describe, expect, it } from 'vitest'
import type { Ring } from '../../core/geometry/curve'
import { flatRingArea } from '../../core/geometry/flatArea'
import { coveredCells, type Grid, overGrid } from '../../core/sun/cellCoverage'
import { cellMasks, cellSunMinutes } from '../../core/sun/cellMasks'
import { type Exposure, exposure, updateExposure } from '../../core/sun/exposure'
import type { ResolvedCaster } from '../../core/sun/resolveCaster'
import { shadeAt } from '../../core/sun/shadeAt'
import { sunlitSpans } from '../../core/sun/sunlitSpans'
import { shadowPerMeter } from '../../core/sun/sunPosition'
import { areaMask, cellShare, directSunMinutes, sunShares } from '../../core/sun/sunShares'
import type { Pt } from '../../shared/document/primitives'
import { box, building, cast, cover, dayOf, pathOf, place, seeded, slabOf, tree, wall } from './fixtures'

const day = dayOf('2026-06-15')

const ell: Ring = [[0, 0], [12, 0], [12, 5], [5, 5], [5, 11], [0, 11]] // biome-ignore format: one line

const opaqueCasters = (): ResolvedCaster[] => [
  cast(building([[-9, 0], [-1, 0], [-1, 4], [-5, 4], [-5, 9], [-9, 9]], { id: 'c1', eaveM: 5 })), // biome-ignore format: one line
  cast(building(box(2, -9, 9, 7), { id: 'c2', eaveM: 4, courtyards: [pathOf([...box(4, -7, 4, 3)].reverse(), 60)] })),
  cast(wall([[13, -2], [13, 7], [9, 12]], { id: 'c3', topM: 2.4 })), // biome-ignore format: one line
  cast(cover(box(1, 1, 3, 2), { id: 'c4' })),
  cast(building(box(-4, 13, 6, 5), { id: 'c5', overhangM: 0.5, roof: { form: 'hip', risePer12: 8 } })),
]

const dappleCasters = (): ResolvedCaster[] => [
  cast(tree([14, 3], { id: 'c6' })),
  cast(tree([13, 6], { id: 'c7' })),
  cast(tree([6, -3], { id: 'c8', density: 'open', trunkM: 1 })),
  cast(wall([[-1, -0.3], [6, -0.3], [6, -3]], { id: 'c9', solidity: 0.7, topM: 3 })), // biome-ignore format: one line
]

const center = ({ grid }: Exposure, cell: number): Pt => [
  grid.minX + ((cell % grid.columns) + 0.5) * grid.cellM,
  grid.minY + (Math.floor(cell / grid.columns) + 0.5) * grid.cellM,
]

/** A flat building’s shadow as the union of swept edges: no cycle, no clipping of ours. */
const sweptShadow = (rings: readonly Ring[], [sx, sy]: Pt): MultiPolygon => {
  const close = (ring: Ring): [number, number][] => [...ring, ring[0]!].map(([x, y]) => [x, y])
  const quads = rings.flatMap(ring =>
    ring.map(([x, y], i): Polygon => {
      const [nx, ny] = ring[(i + 1) % ring.length]!
      return [close([[x, y], [nx, ny], [nx + sx, ny + sy], [x + sx, y + sy]])] // biome-ignore format: one line
    }),
  )
  return polygonClipping.union(
    [rings.map(close)],
    [rings.map(ring => close(ring.map(([x, y]): Pt => [x + sx, y + sy])))],
    ...quads.map((quad): MultiPolygon => [quad]),
  )
}

describe('a cell is shaded when its center is', () => {
  it('agrees with point-in-polygon on swept shadows, cell by cell and hour by hour', () => {
    const random = seeded(31)
    const rings: Ring[][] = []
    const casters: ResolvedCaster[] = []
    for (let n = 0; n < 12; n++) {
      const [x, y, w, d] = [26 * random() - 8, 26 * random() - 8, 2 + 4 * random(), 2 + 4 * random()]
      const outline: Ring =
        n % 2 === 0 ? box(x, y, w, d) : [[x, y], [x + w, y + 0.4], [x + w, y + d], [x + w / 2, y + d / 3], [x, y + d]] // biome-ignore format: one line
      const holes = n % 6 === 0 ? [box(x + w / 3, y + d / 4, w / 4, d / 4)] : []
      const courtyards = holes.map(hole => pathOf([...hole].reverse(), 70))
      rings.push([outline, ...holes])
      casters.push(cast(building(outline, { id: `c${n + 1}`, eaveM: 1 + n / 4, courtyards })))
    }
    const exposed = exposure(slabOf(ell), casters, place, day, 60, undefined)
    let asked = 0
    let shaded = 0
    let mismatches = 0
    exposed.lit.forEach((index, step) => {
      const [kx, ky] = shadowPerMeter(exposed.sun[index]!, 0)
      const shadows = rings.map((each, n) => multiPolygon(sweptShadow(each, [kx * (1 + n / 4), ky * (1 + n / 4)])))
      for (let cell = step % 3; cell < exposed.grid.columns * exposed.grid.rows; cell += 3) {
        const isShaded = shadows.some(shadow => booleanPointInPolygon([...center(exposed, cell)], shadow))
        if (isShaded !== (cellShare(exposed, cell, step) === 0)) mismatches++
        if (isShaded) shaded++
        asked++
      }
    })
    expect(asked).toBeGreaterThan(20_000)
    expect(shaded).toBeGreaterThan(5000)
    expect(mismatches).toBe(0)
  })

  it('agrees with the polygons of the same hour, dapple by dapple', () => {
    const slab = slabOf(ell)
    const exposed = exposure(slab, [...opaqueCasters(), ...dappleCasters()], place, day, 60, undefined)
    let dappled = 0
    exposed.lit.forEach((index, step) => {
      const { opaque, dapple } = shadeAt(slab, exposed.casters, exposed.sun[index]!, place, day.date, undefined)!
      const closed = (ring: Ring): [number, number][] => [...ring, ring[0]!].map(([x, y]) => [x, y])
      const shapes = [...opaque.map(region => ({ region, transmission: 0 })), ...dapple].map(piece => ({
        share: piece.transmission,
        shape: multiPolygon([[closed(piece.region.ring), ...piece.region.holes.map(closed)]]),
      }))
      let mismatches = 0
      let asked = 0
      for (const [i, cell] of exposed.covered.cells.entries()) {
        if (exposed.covered.shares[i] !== 1) continue
        const at = center(exposed, cell)
        const hits = shapes.filter(({ shape }) => booleanPointInPolygon([...at], shape))
        const share = cellShare(exposed, cell, step)
        if (share > 0 && share < 1) dappled++
        asked++
        // The clipping grid may move a shade's edge by 2.5e-6 m over a center.
        if (hits.length > 1 || Math.abs((hits[0]?.share ?? 1) - share) > 1e-9) mismatches++
      }
      expect(asked).toBeGreaterThan(3000)
      expect(mismatches).toBeLessThanOrEqual(2)
    })
    expect(dappled).toBeGreaterThan(500)
  })

  it('holds every step in the masks, bit by bit', () => {
    const exposed = exposure(slabOf(ell), opaqueCasters(), place, day, 15, undefined)
    expect(exposed.lit.length).toBeGreaterThan(32)
    const masks = cellMasks(exposed)
    let wrong = 0
    for (let cell = 0; cell < exposed.grid.columns * exposed.grid.rows; cell++)
      for (let step = 0; step < exposed.lit.length; step++)
        if (((masks[step >> 5]![cell]! >>> (step & 31)) & 1) !== (cellShare(exposed, cell, step) === 0 ? 1 : 0)) wrong++
    expect(wrong).toBe(0)
  })
})

describe('cells weigh what they cover', () => {
  it('sums to the area of the shape, boundary cells in part', () => {
    const random = seeded(33)
    for (let n = 0; n < 60; n++) {
      const corners = 3 + Math.floor(9 * random())
      const ring = Array.from({ length: corners }, (_, i): Pt => {
        const angle = (2 * Math.PI * (i + 0.6 * random())) / corners
        const radius = 1 + 3.9 * random()
        return [5 + radius * Math.cos(angle), 5 + radius * Math.sin(angle)]
      })
      const grid: Grid = { minX: 0, minY: 0, cellM: 0.37, columns: 28, rows: 28 }
      const shares = overGrid(coveredCells([{ ring, holes: [] }], grid), grid)
      const areaM2 = shares.reduce((sum, share) => sum + share, 0) * 0.37 ** 2
      expect(areaM2).toBeCloseTo(flatRingArea(ring), 9)
      for (const cell of [150, 300, 400, 500]) {
        const [x, y] = [(cell % 28) * 0.37, Math.floor(cell / 28) * 0.37]
        const square = box(x, y, 0.37, 0.37).map(([px, py]): [number, number] => [px, py])
        const both = polygonClipping.intersection([[square]][0]!, [ring.map(([px, py]): [number, number] => [px, py])])
        const partM2 = both.reduce((sum, [outer]) => sum + Math.abs(flatRingArea(outer!)), 0)
        expect(shares[cell]!).toBeCloseTo(partM2 / 0.37 ** 2, 9)
      }
    }
  })

  it('leaves openings out', () => {
    const slab = slabOf(box(0, 0, 10, 10), [[...box(3, 3, 2.5, 1.25)].reverse()])
    const exposed = exposure(slab, [], place, day, 60, undefined)
    const areaM2 = exposed.covered.shares.reduce((sum, share) => sum + share, 0) * exposed.cellSizeM ** 2
    expect(areaM2).toBeCloseTo(100 - 2.5 * 1.25, 9)
  })

  it('takes cells of 6 in on a small slab and 40,000 cells on a large one', () => {
    expect(exposure(slabOf(box(0, 0, 4, 3)), [], place, day, 60, undefined).cellSizeM).toBe(0.1524)
    const large = exposure(slabOf(box(0, 0, 80, 45)), [], place, day, 60, undefined)
    expect(large.cellSizeM).toBeCloseTo(Math.sqrt((80 * 45) / 40_000), 12)
    expect(large.grid.columns * large.grid.rows).toBeLessThan(40_500)
  })
})

describe('sun shares and sun minutes', () => {
  it('are whole without casters, and last as long as the sun is up', () => {
    const exposed = exposure(slabOf(ell), [], place, day, 15, undefined)
    const [span] = sunlitSpans(place, day, undefined).spans
    expect(directSunMinutes(exposed)).toBeCloseTo((span!.toMs - span!.fromMs) / 60_000, 6)
    sunShares(exposed).forEach((share, index) => {
      expect(share).toBe(exposed.lit.includes(index) ? 1 : null)
    })
    expect(exposed.lit).toHaveLength(58)
  })

  it('follow the polygons within the cells that the shade’s edge crosses', () => {
    const slab = slabOf(ell)
    const casters = opaqueCasters()
    const exposed = exposure(slab, casters, place, day, 60, undefined)
    const areaM2 = flatRingArea(ell)
    const shares = sunShares(exposed)
    for (const index of exposed.lit) {
      const { opaque, opaqueAreaM2 } = shadeAt(slab, casters, exposed.sun[index]!, place, day.date, undefined)!
      const edgeM = opaque.reduce(
        (sum, { ring, holes }) =>
          [ring, ...holes].reduce(
            (own, each) =>
              each.reduce((l, [x, y], i) => l + Math.hypot(x - each.at(i - 1)![0], y - each.at(i - 1)![1]), own),
            sum,
          ),
        0,
      )
      // Each cell along the edge may err by half of itself.
      expect(Math.abs(shares[index]! - (1 - opaqueAreaM2 / areaM2))).toBeLessThan(
        (edgeM * exposed.cellSizeM) / 2 / areaM2,
      )
    }
  })

  it('of parts add up to those of the whole', () => {
    const exposed = exposure(slabOf(ell), [...opaqueCasters(), ...dappleCasters()], place, day, 30, undefined)
    const left: Ring = [[0, 0], [5, 0], [5, 11], [0, 11]] // biome-ignore format: one line
    const right: Ring = box(5, 0, 7, 5)
    const [all, one, two] = [undefined, left, right].map(
      ring => directSunMinutes(exposed, ring && [{ ring, holes: [] }])!,
    )
    expect((one! * 55 + two! * 35) / 90).toBeCloseTo(all!, 9)
  })

  it('of all cells are those of each cell, dapple included', () => {
    for (const casters of [opaqueCasters(), [...opaqueCasters(), ...dappleCasters()]]) {
      const exposed = exposure(slabOf(ell), casters, place, day, 30, undefined)
      const minutes = cellSunMinutes(exposed)
      for (let cell = 0; cell < minutes.length; cell += 7)
        expect(minutes[cell]).toBeCloseTo(directSunMinutes(exposed, cell)!, 9)
    }
  })

  it('stay the same when the site and its north turn together', () => {
    const turned = (deg: number): Exposure => {
      const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)]
      // Counter-clockwise by deg: true north then lies deg further counter-clockwise, northDeg = −deg.
      const turn = ([x, y]: Pt): Pt => [x * c - y * s, x * s + y * c]
      const casters = [
        cast(
          building(box(-9, 0, 8, 9).map(turn), {
            eaveM: 5,
            roof: { form: 'gable', risePer12: 6, ridgeAlongEdge: 'e2' },
          }),
        ),
        cast(tree(turn([14, 3]))),
        cast(wall([turn([13, -2]), turn([13, 7])], { topM: 2.4 })),
      ]
      return exposure(slabOf(ell.map(turn)), casters, { ...place, northDeg: -deg }, day, 60, undefined)
    }
    const straight = sunShares(turned(0))
    for (const deg of [90, 33, 200]) {
      const shares = sunShares(turned(deg))
      straight.forEach((share, index) => {
        if (share === null) expect(shares[index]).toBeNull()
        // A boundary of about 40 m over cells of 6 in, of 90 m²: 0.07 at worst, in the mean far less.
        else expect(Math.abs(shares[index]! - share)).toBeLessThan(0.015)
      })
    }
  })
})

describe('moving one caster', () => {
  it('gives what starting over gives, opaque or translucent, and leaves the old exposure alone', () => {
    const casters = [...opaqueCasters(), ...dappleCasters()]
    const before = exposure(slabOf(ell), casters, place, day, 30, undefined)
    const kept = before.opaque.slice()
    const keptCounts = before.dapple.map(each => each.counts.map(plane => plane.slice()))
    const part = [{ ring: box(0.3, 0.4, 4, 6), holes: [] }]
    const mask = areaMask(before, part)
    const moves: readonly (readonly [number, ResolvedCaster])[] = [
      [5, cast(tree([9, 7], { id: 'c6' }))],
      [7, cast(tree([6, -3], { id: 'c8', density: 'dense' }))],
      [0, cast(building(box(-6, 2, 5, 5), { id: 'c1', eaveM: 7 }))],
      [8, cast(wall([[-1, -0.3], [6, -0.3]], { id: 'c9', solidity: 1, topM: 3 }))], // biome-ignore format: one line
    ]
    for (const [index, moved] of moves) {
      const after = casters.with(index, moved)
      const updated = updateExposure(before, after)
      const fresh = exposure(slabOf(ell), after, place, day, 30, undefined)
      expect(sunShares(updated)).toEqual(sunShares(fresh))
      expect(sunShares(updated, mask)).toEqual(sunShares(fresh, areaMask(fresh, part)))
      expect(updated.opaque).toEqual(fresh.opaque)
      expect(cellSunMinutes(updated)).toEqual(cellSunMinutes(fresh))
      expect(sunShares(updated)).not.toEqual(sunShares(before))
    }
    expect(before.opaque).toEqual(kept)
    expect(before.dapple.map(each => each.counts)).toEqual(keptCounts)
  })

  it('keeps the opaque planes themselves when a tree moves', () => {
    const casters = [...opaqueCasters(), ...dappleCasters()]
    const before = exposure(slabOf(ell), casters, place, day, 60, undefined)
    expect(updateExposure(before, casters.with(5, cast(tree([9, 7], { id: 'c6' })))).opaque).toBe(before.opaque)
  })
})

describe('days of other lengths and places', () => {
  it.each([
    ['2026-03-08', 92],
    ['2026-11-01', 100],
  ])('%s has %s quarter hours, each with a share or none', (date, count) => {
    const exposed = exposure(slabOf(ell), opaqueCasters(), place, dayOf(date), 15, undefined)
    expect(sunShares(exposed)).toHaveLength(count)
    const spanMin = sunlitSpans(place, dayOf(date), undefined).spans.reduce(
      (sum, s) => sum + (s.toMs - s.fromMs) / 60_000,
      0,
    )
    expect(exposed.litMin.reduce((sum, minutes) => sum + minutes, 0)).toBeCloseTo(spanMin, 6)
  })

  it('in the polar night has no step at all, on the polar day every one', () => {
    const far = { ...place, latDeg: 78.2, lonDeg: 15.6, zone: 'Arctic/Longyearbyen' }
    const night = exposure(slabOf(ell), opaqueCasters(), far, dayOf('2026-12-21', far.zone), 60, undefined)
    expect(sunShares(night).every(share => share === null)).toBe(true)
    expect(directSunMinutes(night)).toBe(0)
    const bright = exposure(slabOf(ell), [], far, dayOf('2026-06-21', far.zone), 60, undefined)
    expect(sunShares(bright)).toEqual(Array.from({ length: 24 }, () => 1))
    expect(directSunMinutes(bright)).toBeCloseTo(1440, 9)
  })
})
