import { difference, featureCollection, intersect, polygon, union } from '@turf/turf'
import { intersectRegions, subtractRegions, unionRegions } from '../../core/geometry/clip'
import type { Region, Ring } from '../../core/geometry/curve'
import { flatArea } from '../../core/geometry/flatArea'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { curveArea } from '../../core/geometry/ringArea'
import {
  circlePath,
  drawBand,
  drawBorder,
  drawOpening,
  drawPath,
  drawSlab,
  rectangle,
  turned,
} from '../geometry/drawSlab'
import { mulberry32 } from '../geometry/mulberry32'
import type { Bench, BenchRow } from './row'

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!

/** Runs for a fifth of a second, long enough for either side to be compiled. */
function warmUp(run: () => unknown): void {
  const start = performance.now()
  while (performance.now() - start < 200) run()
}

/** Milliseconds of one call, repeated until it takes a few of them. */
function onceMs(run: () => unknown, repeats: number): number {
  const start = performance.now()
  for (let i = 0; i < repeats; i++) run()
  return (performance.now() - start) / repeats
}

function repeatsFor(run: () => unknown): number {
  warmUp(run)
  for (let repeats = 1; ; repeats *= 2) if (onceMs(run, repeats) * repeats > 4 || repeats >= 4_096) return repeats
}

/** Median milliseconds of one call, after warming up. */
function timeMs(run: () => unknown, samples: number): number {
  const repeats = repeatsFor(run)
  return median(Array.from({ length: samples }, () => onceMs(run, repeats)))
}

/** The quickest of theirs over the quickest of ours, timed in turn: what else runs on the machine only ever slows. */
function ratioOf(theirs: () => unknown, ours: () => unknown, samples: number): number {
  const [a, b] = [repeatsFor(theirs), repeatsFor(ours)]
  const timed = Array.from({ length: samples }, () => [onceMs(theirs, a), onceMs(ours, b)] as const)
  return Math.min(...timed.map(([ms]) => ms)) / Math.min(...timed.map(([, ms]) => ms))
}

function star(random: () => number, corners: number, x: number, y: number): Ring {
  return Array.from({ length: corners }, (_, i) => {
    const angle = (i / corners) * 2 * Math.PI
    const reach = 10 + random() * 3
    return [x + reach * Math.cos(angle), y + reach * Math.sin(angle)] as const
  })
}

const turfPolygon = (ring: Ring) => polygon([[...ring, ring[0]!].map(([x, y]) => [x, y])])

function booleans(corners: number): BenchRow[] {
  const random = mulberry32(corners)
  const [a, b] = [star(random, corners, 0, 0), star(random, corners, 4, 3)]
  const [p, q]: Region[] = [
    { ring: a, holes: [] },
    { ring: b, holes: [] },
  ]
  const both = featureCollection([turfPolygon(a), turfPolygon(b)])
  const pairs = [
    ['union', () => unionRegions([p!, q!]), () => union(both)],
    ['intersection', () => intersectRegions([p!], [q!]), () => intersect(both)],
    ['difference', () => subtractRegions([p!], [q!]), () => difference(both)],
  ] as const
  return pairs.map(([name, ours, theirs]) => {
    const samples = corners >= 1_000 ? 7 : 9
    const ratio = ratioOf(theirs, ours, samples)
    return {
      id: `geometry.${name}.${corners}`,
      what: `${name} of two ${corners}-corner stars, times as fast`,
      value: ratio,
      unit: '×',
      peer: 'turf 7.4',
      target: '≥ 20',
      ok: ratio >= 20,
    }
  })
}

/** A plaza of about 50,000 ft²: bays, planters, a round pool, stacked borders, bands. */
function plaza() {
  const outline = drawPath(
    1,
    [
      [0, 0],
      [90, 0],
      [90, 40],
      [60, 40],
      [60, 55],
      [0, 55],
    ],
    { rises: { 1: 3, 4: 2 }, rounds: { 0: 2, 5: 3, 3: 1 } },
  )
  const planters = Array.from({ length: 12 }, (_, i) =>
    turned(
      drawPath(10 + i, rectangle(8 + (i % 6) * 8, 10 + Math.floor(i / 6) * 20, 2.5, 2.5), {
        rounds: { 0: 0.3, 2: 0.3 },
      }),
    ),
  )
  const pool = turned(circlePath(40, [72, 20], 6))
  const slab = drawSlab(outline, {
    openings: [...planters, pool].map((path, i) => drawOpening(`o${i + 1}`, path)),
    borders: [
      drawBorder('b1', outline, 0.3),
      drawBorder('b2', outline, 0.6),
      ...planters.map((path, i) => drawBorder(`b${i + 3}`, path, 0.3)),
      drawBorder('b20', pool, 0.45),
    ],
    bands: [0, 1, 2, 3, 4].map(i =>
      drawBand(
        `n${i + 1}`,
        {
          ...drawPath(50 + i, rectangle(7 + i * 8, 0, 0, 54)),
          vertices: [
            { id: `v${5_000 + i}`, at: [6.5 + i * 8, 1] },
            { id: `v${5_100 + i}`, at: [6.5 + i * 8, 54] },
          ],
          edges: [{ id: `e${5_000 + i}` }],
        },
        0.3,
      ),
    ),
  })
  return slab
}

function bigSite(): BenchRow[] {
  const slab = plaza()
  const resolved = resolveSlab(slab)
  const claimed = [...resolved.borders, ...resolved.bands, ...resolved.insets].reduce((sum, c) => sum + c.areaM2, 0)
  const closure = Math.abs(claimed + curveArea(resolved.field) - resolved.netAreaM2) / resolved.netAreaM2
  return [
    {
      id: 'geometry.closure',
      what: 'borders + bands + field against the net area of the big plaza, relative',
      value: closure,
      unit: '',
      peer: null,
      target: '≤ 1e-9',
      ok: closure <= 1e-9,
    },
    {
      id: 'geometry.resolve.ms',
      what: `areas and borders of a ${Math.round(resolved.netAreaM2)} m² plaza with 13 openings, 15 borders, 5 bands`,
      value: timeMs(() => resolveSlab(slab), 15),
      unit: 'ms',
      peer: null,
      target: 'reported: ≤ 8',
      ok: null,
    },
  ]
}

/** Worst area error of 500 random pairs of stars: union + intersection − both. */
function closureOfPairs(): BenchRow {
  const random = mulberry32(3)
  let worst = 0
  for (let i = 0; i < 500; i++) {
    const [a, b]: Region[] = [
      { ring: star(random, 12, 0, 0), holes: [] },
      { ring: star(random, 12, random() * 8, random() * 8), holes: [] },
    ]
    const sum = flatArea(unionRegions([a!, b!])) + flatArea(intersectRegions([a!], [b!]))
    worst = Math.max(worst, Math.abs(sum - flatArea([a!, b!])))
  }
  return {
    id: 'geometry.closure.pairs',
    what: 'union + intersection against the sum of 500 pairs, worst (grid rounding)',
    value: worst,
    unit: 'm²',
    peer: null,
    target: '≤ 0.001',
    ok: worst <= 1e-3,
  }
}

export const bench: Bench = async () => [
  ...[10, 50, 200, 1_000, 2_000].flatMap(booleans),
  closureOfPairs(),
  ...bigSite(),
]
