import fc from 'fast-check'
import polygonClipping, { type MultiPolygon } from 'polygon-clipping'
import { describe, expect, it } from 'vitest'
import { distanceToEdge, regionContains } from '../../core/geometry/contains'
import type { CurveEdge, CurveRegion, CurveRing, Ring } from '../../core/geometry/curve'
import { clipCurveRings, subtractCurves } from '../../core/geometry/curveBoolean'
import { edgeStrips } from '../../core/geometry/edgeStrips'
import { flatRingArea } from '../../core/geometry/flatArea'
import { flattenRegion } from '../../core/geometry/flattenRing'
import { lengthInside } from '../../core/geometry/lengthInside'
import { plainBand } from '../../core/geometry/plainBand'
import { resolveBand } from '../../core/geometry/resolveBand'
import type { ResolvedSlab } from '../../core/geometry/resolvedSlab'
import { resolvePath } from '../../core/geometry/resolvePath'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { reverseRing } from '../../core/geometry/reverseRing'
import { curveArea } from '../../core/geometry/ringArea'
import type { Path } from '../../shared/document/path'
import type { Pt } from '../../shared/document/primitives'
import type { Slab } from '../../shared/document/slab'
import { drawBand, drawBorder, drawLine, drawSlab } from './drawSlab'
import { mulberry32 } from './mulberry32'
import { mapPaths, randomSlab } from './randomSlab'

const seeds = fc.integer({ min: 1, max: 2 ** 31 })
const runs = { seed: 7_041, numRuns: 150 }

const claims = (r: ResolvedSlab) => [...r.insets, ...r.bands, ...r.borders]

/** Every figure of a resolved slab, in order. */
const figures = (r: ResolvedSlab): number[] => [
  r.grossAreaM2,
  r.netAreaM2,
  r.openingAreaM2,
  r.perimeterM,
  r.openingPerimeterM,
  r.fieldAreaM2,
  curveArea(r.field),
  ...r.insets.map(i => i.areaM2),
  ...r.bands.flatMap(b => [b.areaM2, b.lengthM]),
  ...r.borders.flatMap(b => [b.areaM2, b.outerLengthM, b.innerLengthM, b.centerLengthM]),
]

const expectSame = (a: ResolvedSlab, b: ResolvedSlab) => {
  const [p, q] = [figures(a), figures(b)]
  const scale = Math.max(1, a.netAreaM2)
  expect(q).toHaveLength(p.length)
  p.forEach((value, i) => {
    expect(Math.abs(value - q[i]!), `figure ${i}`).toBeLessThanOrEqual(1e-6 * scale)
  })
}

const moved = (slab: Slab, turn: number, dx: number, dy: number): Slab => {
  const [c, s] = [Math.cos(turn), Math.sin(turn)]
  return mapPaths(slab, path => ({
    ...path,
    vertices: path.vertices.map(v => ({ ...v, at: [v.at[0] * c - v.at[1] * s + dx, v.at[0] * s + v.at[1] * c + dy] })),
  }))
}

/** Mirrored at the y axis: closed paths are walked backwards to keep their winding, which keeps the sign of each rise. */
const mirrored = (slab: Slab): Slab => {
  const flip = (path: Path): Path => ({
    ...path,
    vertices: path.vertices.map(v => ({ ...v, at: [-v.at[0], v.at[1]] })),
  })
  const backwards = (path: Path): Path => ({
    ...path,
    vertices: [...path.vertices].reverse(),
    edges: path.edges.map((_, i) => path.edges[(2 * path.edges.length - 2 - i) % path.edges.length]!),
  })
  return mapPaths(
    slab,
    path => backwards(flip(path)),
    path => ({
      ...flip(path),
      edges: path.edges.map(e => (e.riseM === undefined ? e : { ...e, riseM: -e.riseM })),
    }),
  )
}

const restarted = (slab: Slab, by: number): Slab => {
  const shift = <T>(list: readonly T[]): T[] => {
    const k = by % list.length
    return [...list.slice(k), ...list.slice(0, k)]
  }
  return mapPaths(
    slab,
    path => ({ ...path, vertices: shift(path.vertices), edges: shift(path.edges) }),
    path => path,
  )
}

describe('every slab', () => {
  it('is claimed without a gap: borders + bands + insets + field = net', () => {
    fc.assert(
      fc.property(seeds, seed => {
        const r = resolveSlab(randomSlab(seed))
        const claimed = claims(r).reduce((sum, c) => sum + c.areaM2, 0)
        expect(Math.abs(claimed + curveArea(r.field) - r.netAreaM2)).toBeLessThanOrEqual(
          1e-9 * Math.max(1, r.netAreaM2),
        )
        expect(r.fieldAreaM2).toBeGreaterThanOrEqual(-1e-9)
        for (const c of claims(r)) expect(c.areaM2).toBeGreaterThanOrEqual(0)
        expect(claims(r).every(c => !c.chordsKept)).toBe(true)
      }),
      { ...runs, numRuns: 300 },
    )
  })

  it('has the same figures wherever it lies and however it is turned', () => {
    fc.assert(
      fc.property(
        seeds,
        fc.double({ min: 0, max: 6.28, noNaN: true }),
        fc.double({ min: -900, max: 900, noNaN: true }),
        (seed, turn, shift) => {
          const slab = randomSlab(seed)
          expectSame(resolveSlab(slab), resolveSlab(moved(slab, turn, shift, shift / 2)))
        },
      ),
      runs,
    )
  })

  it('has the same figures in the mirror', () => {
    fc.assert(
      fc.property(seeds, seed => {
        const slab = randomSlab(seed)
        expectSame(resolveSlab(slab), resolveSlab(mirrored(slab)))
      }),
      runs,
    )
  })

  it('has the same figures from whichever corner it is drawn', () => {
    fc.assert(
      fc.property(seeds, fc.integer({ min: 1, max: 9 }), (seed, by) => {
        const slab = randomSlab(seed)
        expectSame(resolveSlab(slab), resolveSlab(restarted(slab, by)))
      }),
      runs,
    )
  })

  it('has the same border whether it is worked out by parallels or cut out by strips', () => {
    let compared = 0
    fc.assert(
      fc.property(seeds, fc.double({ min: 0.05, max: 0.8, noNaN: true }), (seed, widthM) => {
        const { outline, openings } = randomSlab(seed)
        const slab = drawSlab(outline, {
          openings,
          borders: [outline, ...openings.map(o => o.path)].map((p, i) => drawBorder(`b${i + 1}`, p, widthM)),
        })
        const r = resolveSlab(slab)
        r.borders.forEach((border, i) => {
          const ring = i === 0 ? r.outline : r.openings.find(o => o.id === openings[i - 1]!.id)?.ring
          if (!ring || border.areaM2 === 0) return
          compared++
          const strips = edgeStrips(
            ring.map(edge => ({ edge, depthM: widthM })),
            true,
            { inner: 'in', cut: 'cut' },
          )
          const cut = subtractCurves(
            clipCurveRings(strips, r.net).regions,
            r.borders.slice(0, i).flatMap(b => b.shape),
          )
          expect(Math.abs(curveArea(cut.regions) - border.areaM2)).toBeLessThan(1e-6)
        })
      }),
      runs,
    )
    expect(compared).toBeGreaterThan(150)
  })

  it('has the same straight band whether its corners are worked out or it is cut out by booleans', () => {
    let plain = 0
    for (let seed = 1; seed <= 250; seed++) {
      const slab = randomSlab(seed)
      const { outline, net } = resolveSlab(slab)
      const straight = outline.filter(edge => !edge.arc)
      if (straight.length < 2) continue
      const r = mulberry32(seed)
      const on = ({ from, to }: CurveEdge): Pt => {
        const share = r()
        return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]
      }
      const anyEdge = () => straight[Math.floor(r() * straight.length)]!
      const inside = (): Pt => [4 * r() - 2, 4 * r() - 2]
      const ends: readonly [Pt, Pt] = [r() < 0.7 ? on(anyEdge()) : inside(), r() < 0.7 ? on(anyEdge()) : inside()]
      const band = drawBand('n', drawLine(99, ends), 0.1 + 0.5 * r())
      const line = resolvePath(band.line, band.id, false).ring
      const boundary = net.flatMap(({ outer, holes }) => [outer, ...holes]).flat()
      const at = (p: Pt) => boundary.filter(edge => distanceToEdge(edge, p) <= 1e-3)
      const cuts = { start: at(ends[0]), end: at(ends[1]) }
      const names = { inner: 'n', cut: 'n|' }
      const worked = plainBand(line, band.widthM, boundary, cuts, names)
      if (!worked) continue
      const half = (chain: CurveRing, start: CurveRing, end: CurveRing) =>
        edgeStrips(
          chain.map(edge => ({ edge, depthM: band.widthM / 2 })),
          false,
          names,
          { start, end },
        )
      const strips = [...half(line, cuts.start, cuts.end), ...half(reverseRing(line), cuts.end, cuts.start)]
      const { regions } = clipCurveRings(strips, net)
      const { shape } = resolveBand(band, outline, net)
      const areaM2 = curveArea(regions)
      expect(Math.abs(curveArea(shape.regions) - areaM2), `seed ${seed}`).toBeLessThan(1e-9)
      expect(Math.abs(shape.lengthM - lengthInside(line, net)), `seed ${seed}`).toBeLessThan(1e-9)
      const corners = worked.map(({ from }) => from)
      const middle: Pt = [
        corners.reduce((sum, [x]) => sum + x, 0) / corners.length,
        corners.reduce((sum, [, y]) => sum + y, 0) / corners.length,
      ]
      // Beyond a dent of the outline it lies outside.
      if (!net.some(region => regionContains(region, middle))) continue
      plain += 1
      // Off the grid the halves of the band stay two regions, and meet in points that are no corners.
      const cut = regions.flatMap(({ outer }) => outer)
      for (const { from } of cut)
        expect(Math.min(...worked.map(edge => distanceToEdge(edge, from))), `seed ${seed}`).toBeLessThan(1e-9)
      for (const [x, y] of corners)
        expect(Math.min(...cut.map(({ from }) => Math.hypot(from[0] - x, from[1] - y)))).toBeLessThan(1e-9)
    }
    expect(plain).toBeGreaterThan(60)
  })

  it('is left as it was', () => {
    fc.assert(
      fc.property(seeds, seed => {
        const slab = randomSlab(seed)
        const before = structuredClone(slab)
        resolveSlab(slab)
        expect(slab).toEqual(before)
      }),
      { ...runs, numRuns: 50 },
    )
  })
})

describe('against polygon-clipping, on chords of 0.3 mm', () => {
  const micrometers = (v: number) => Math.round(v * 1e6) / 1e6
  const flat = (regions: readonly CurveRegion[]): MultiPolygon =>
    regions.map(region => {
      const { ring, holes } = flattenRegion(region, 3e-4)
      return [ring, ...holes].map(r =>
        [...r, r[0]!].map(([x, y]): [number, number] => [micrometers(x), micrometers(y)]),
      )
    })
  const openRing = (r: readonly [number, number][]): Ring => r.slice(1)
  const areaOf = (m: MultiPolygon): number =>
    m.reduce(
      (sum, [outer, ...holes]) =>
        sum +
        Math.abs(flatRingArea(openRing(outer!))) -
        holes.reduce((s, h) => s + Math.abs(flatRingArea(openRing(h))), 0),
      0,
    )

  it('no claim leaves the slab and no two claims overlap', () => {
    fc.assert(
      fc.property(seeds, seed => {
        const r = resolveSlab(randomSlab(seed))
        if (r.net.length === 0) return
        const net = flat(r.net)
        const shapes = claims(r)
          .map(c => flat(c.shape))
          .filter(s => s.length > 0)
        shapes.forEach((shape, i) => {
          expect(areaOf(polygonClipping.difference(shape, net))).toBeLessThan(4e-3)
          for (const other of shapes.slice(0, i))
            expect(areaOf(polygonClipping.intersection(shape, other))).toBeLessThan(4e-3)
        })
      }),
      { ...runs, numRuns: 60 },
    )
  })
})
