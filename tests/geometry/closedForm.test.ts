import { describe, expect, it } from 'vitest'
import { centroid } from '../../core/geometry/centroid'
import { cornerAngles } from '../../core/geometry/cornerAngles'
import type { ResolvedSlab } from '../../core/geometry/resolvedSlab'
import { resolvePath } from '../../core/geometry/resolvePath'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { curveArea, ringArea } from '../../core/geometry/ringArea'
import { ringLength } from '../../core/geometry/ringLength'
import type { Path } from '../../shared/document/path'
import type { Slab } from '../../shared/document/slab'
import {
  circlePath,
  drawBand,
  drawBorder,
  drawInset,
  drawLine,
  drawOpening,
  drawPath,
  drawSlab,
  rectangle,
  turned,
} from './drawSlab'

/**
 * Every expected figure below is worked out by hand from the formulas of plane figures (rectangle, triangle, circle,
 * sector, segment, annulus; D. Zwillinger (ed.), CRC Standard Mathematical Tables and Formulas, CRC Press), never from
 * our own code.
 */
const π = Math.PI
const near = (value: number, expected: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(expected)))

const outline = (path: Path) => resolvePath(path, 's1').ring

describe('areas and perimeters of outlines are exact', () => {
  const rounded = (r: number) => drawPath(1, rectangle(0, 0, 10, 6), { rounds: { 0: r, 1: r, 2: r, 3: r } })
  // stadium: a 6 × 4 rectangle with half circles of radius 2 at both ends
  const stadium = drawPath(1, rectangle(0, 0, 6, 4), { rises: { 1: 2, 3: 2 } })
  // lens: two arcs of radius 5 over a chord of 8: rise 5 − √(25 − 16) = 2
  const lens = drawPath(
    1,
    [
      [0, 0],
      [8, 0],
    ],
    { rises: { 0: 2, 1: 2 } },
  )
  const lensHalf = 2 * Math.asin(4 / 5)
  // major segment: radius 5 over a chord of 8 the long way: rise 8
  const major = drawPath(
    1,
    [
      [0, 0],
      [8, 0],
    ],
    { rises: { 0: 8 } },
  )
  const majorSweep = 2 * π - lensHalf
  // kidney: half circles of radius 3 and 2 at the ends, a bulging half circle of radius 6 and a dented one of radius 1
  const kidney = drawPath(
    1,
    [
      [-6, 0],
      [6, 0],
      [1, 0],
      [-1, 0],
    ],
    { rises: { 0: 6, 1: 2.5, 2: -1, 3: 2.5 } },
  )
  const cases: readonly [name: string, path: Path, area: number, perimeter: number][] = [
    ['a rectangle', drawPath(1, rectangle(3, 4, 10, 6)), 60, 32],
    [
      'a right triangle 3-4-5',
      drawPath(1, [
        [0, 0],
        [4, 0],
        [0, 3],
      ]),
      6,
      12,
    ],
    [
      'an L',
      drawPath(1, [
        [0, 0],
        [10, 0],
        [10, 4],
        [4, 4],
        [4, 9],
        [0, 9],
      ]),
      60,
      38,
    ],
    ['a circle of two half circles', circlePath(1, [2, 3], 3), 9 * π, 6 * π],
    ['a stadium', stadium, 24 + 4 * π, 12 + 4 * π],
    ['a lens', lens, 25 * (lensHalf - Math.sin(lensHalf)), 2 * 5 * lensHalf],
    ['a major segment', major, (25 * (majorSweep - Math.sin(majorSweep))) / 2, 8 + 5 * majorSweep],
    ['a rounded rectangle', rounded(1), 60 - (4 - π), 32 - 8 + 2 * π],
    ['a rectangle rounded to a stadium', rounded(3), 24 + 9 * π, 8 + 6 * π],
    [
      'a rectangle with one dented side',
      drawPath(1, rectangle(0, 0, 10, 6), { rises: { 0: -2 } }),
      // radius (25 + 4)/4 = 7.25, half angle asin(5/7.25)
      60 - (7.25 ** 2 * (2 * Math.asin(5 / 7.25) - Math.sin(2 * Math.asin(5 / 7.25)))) / 2,
      22 + 7.25 * 2 * Math.asin(5 / 7.25),
    ],
    ['a kidney of four half circles', kidney, (36 * π) / 2 + (2 * (2.5 ** 2 * π)) / 2 - π / 2, 6 * π + 2 * 2.5 * π + π],
    [
      'an equilateral triangle with rounded corners',
      // the inscribed circle's radius is 6/(2√3) = 1.7321; each rounding of 0.5 trims r/tan 30° and keeps a 120° arc
      drawPath(
        1,
        [
          [0, 0],
          [6, 0],
          [3, 3 * Math.sqrt(3)],
        ],
        { rounds: { 0: 0.5, 1: 0.5, 2: 0.5 } },
      ),
      9 * Math.sqrt(3) - 3 * (0.25 * Math.sqrt(3) - (0.25 * π) / 3),
      18 - 3 * 2 * 0.5 * Math.sqrt(3) + 0.5 * 2 * π,
    ],
  ]
  it.each(cases)('%s', (_name, path, area, perimeter) => {
    const { ring, findings } = resolvePath(path, 's1')
    expect(findings).toEqual([])
    near(ringArea(ring), area)
    near(ringLength(ring), perimeter)
  })

  it('stays exact two kilometers from the origin', () => {
    const far = drawPath(1, rectangle(2_000, -2_000, 10, 6), { rounds: { 0: 1, 1: 1, 2: 1, 3: 1 } })
    near(ringArea(outline(far)), 56 + π)
  })

  it('rounds the corner between a line and an arc with a tangent arc', () => {
    // a half disc of radius 5: the rounding circle of radius 1 touches the chord and, from inside, the circle: its
    // center is 1 above the chord and 4 from the middle, at x = √15
    const half = drawPath(
      1,
      [
        [-5, 0],
        [5, 0],
      ],
      { rises: { 1: 5 }, rounds: { 0: 1, 1: 1 } },
    )
    const { ring, findings } = resolvePath(half, 's1')
    expect(findings).toEqual([])
    const roundings = ring.filter(e => e.edgeId.endsWith('~'))
    expect(roundings).toHaveLength(2)
    for (const { arc } of roundings) {
      near(arc!.radiusM, 1)
      near(Math.abs(arc!.center[0]), Math.sqrt(15))
      near(arc!.center[1], 1)
    }
    for (const { angleRad } of cornerAngles(ring)) near(angleRad, π)
  })

  it('rounds the corner between two arcs with a tangent arc', () => {
    // the lens of radius 5: centers 3 above and below its chord; by symmetry the rounding's center lies on the chord
    // line, 5 − 0.5 from both centers: x from the middle √(4.5² − 9)
    const { ring, findings } = resolvePath({ ...lens, vertices: lens.vertices.map(v => ({ ...v, roundM: 0.5 })) }, 's1')
    expect(findings).toEqual([])
    expect(ring).toHaveLength(4)
    for (const { edgeId, arc } of ring)
      if (edgeId.endsWith('~')) near(Math.abs(arc!.center[0] - 4), Math.sqrt(4.5 ** 2 - 9))
    for (const { angleRad } of cornerAngles(ring)) near(angleRad, π)
  })

  it('rounds a re-entrant corner on the outside of the slab', () => {
    const ell = drawPath(
      1,
      [
        [0, 0],
        [10, 0],
        [10, 4],
        [4, 4],
        [4, 9],
        [0, 9],
      ],
      { rounds: { 3: 1 } },
    )
    near(ringArea(outline(ell)), 60 + (1 - π / 4))
  })

  it('finds the center of area of a half disc 4R/3π from its chord', () => {
    const half = outline(
      drawPath(
        1,
        [
          [-3, 1],
          [3, 1],
        ],
        { rises: { 1: 3 } },
      ),
    )
    const [x, y] = centroid([{ outer: half, holes: [] }])!
    near(x, 0)
    near(y, 1 + (4 * 3) / (3 * π))
  })

  it('finds the center of area of a major segment by moments', () => {
    // disc of radius 5 less its minor segment over a chord of 8, center of the disc at (0, 3)
    const ring = outline(
      drawPath(
        1,
        [
          [-4, 0],
          [4, 0],
        ],
        { rises: { 1: 8 } },
      ),
    )
    const minor = (25 * (lensHalf - Math.sin(lensHalf))) / 2
    const away = (4 * 5 * Math.sin(lensHalf / 2) ** 3) / (3 * (lensHalf - Math.sin(lensHalf)))
    near(centroid([{ outer: ring, holes: [] }])![1], 3 + (minor * away) / (25 * π - minor))
  })
})

const closes = (r: ResolvedSlab) => {
  const claimed = [...r.borders, ...r.bands, ...r.insets].reduce((sum, c) => sum + c.areaM2, 0)
  near(claimed + curveArea(r.field), r.netAreaM2)
  near(r.fieldAreaM2, curveArea(r.field))
}

/** Resolves a slab that must be without findings. */
const clean = (slab: Slab): ResolvedSlab => {
  const resolved = resolveSlab(slab)
  expect(resolved.findings).toEqual([])
  closes(resolved)
  return resolved
}

describe('borders, bands and insets of known shapes', () => {
  const ten = drawPath(1, rectangle(0, 0, 10, 6))
  const lengths = (r: ResolvedSlab, i = 0) => {
    const b = r.borders[i]!
    return [b.areaM2, b.outerLengthM, b.innerLengthM, b.centerLengthM] as const
  }
  const expectBorder = (r: ResolvedSlab, i: number, expected: readonly [number, number, number, number]) => {
    lengths(r, i).forEach((value, k) => {
      near(value, expected[k]!)
    })
  }

  it('a border all around a rectangle: area 2w(a + b) − 4w²', () => {
    expectBorder(clean(drawSlab(ten, { borders: [drawBorder('b1', ten, 0.3)] })), 0, [9.24, 32, 29.6, 30.8])
  })

  it('a border on one side of a rectangle is cut square by its neighbors', () => {
    expectBorder(clean(drawSlab(ten, { borders: [drawBorder('b1', ten, 0.3, ['e1001'])] })), 0, [3, 10, 10, 10])
  })

  it('a border on two neighboring sides is mitered once', () => {
    const r = clean(drawSlab(ten, { borders: [drawBorder('b1', ten, 0.3, ['e1001', 'e1002'])] }))
    expectBorder(r, 0, [10 * 0.3 + 5.7 * 0.3, 16, 9.7 + 5.7, 9.85 + 5.85])
  })

  it('a border on two opposite sides is two strips', () => {
    const r = clean(drawSlab(ten, { borders: [drawBorder('b1', ten, 0.3, ['e1001', 'e1003'])] }))
    expectBorder(r, 0, [6, 20, 20, 20])
    expect(r.borders[0]!.shape).toHaveLength(2)
  })

  it('a border around an L is mitered at the re-entrant corner', () => {
    const ell = drawPath(1, [
      [0, 0],
      [10, 0],
      [10, 4],
      [4, 4],
      [4, 9],
      [0, 9],
    ])
    const r = clean(drawSlab(ell, { borders: [drawBorder('b1', ell, 0.3)] }))
    // five corners take w² off, the re-entrant one adds w²
    expectBorder(r, 0, [38 * 0.3 - 4 * 0.09, 38, 38 - 8 * 0.3, 38 - 8 * 0.15])
  })

  it('a border on the edges of a re-entrant corner only', () => {
    const ell = drawPath(1, [
      [0, 0],
      [10, 0],
      [10, 4],
      [4, 4],
      [4, 9],
      [0, 9],
    ])
    const r = clean(drawSlab(ell, { borders: [drawBorder('b1', ell, 0.3, ['e1003', 'e1004'])] }))
    expectBorder(r, 0, [11 * 0.3 + 0.09, 11, 11 + 0.6, 11 + 0.3])
  })

  it('an acute corner is mitered to its point', () => {
    // 3-4-5 triangle, inscribed radius 1: the inner triangle is scaled by (1 − w)
    const tri = drawPath(1, [
      [0, 0],
      [4, 0],
      [0, 3],
    ])
    const r = clean(drawSlab(tri, { borders: [drawBorder('b1', tri, 0.4)] }))
    expectBorder(r, 0, [6 * (1 - 0.36), 12, 12 * 0.6, 12 * 0.8])
  })

  it('an edge at an acute corner alone is cut by the slanting edge', () => {
    // leg of 4 against the hypotenuse: at depth w the strip is 4(1 − w/3) long
    const tri = drawPath(1, [
      [0, 0],
      [4, 0],
      [0, 3],
    ])
    const r = clean(drawSlab(tri, { borders: [drawBorder('b1', tri, 0.6, ['e1001'])] }))
    expectBorder(r, 0, [0.6 * 4 * (1 - 0.1), 4, 4 * 0.8, 4 * 0.9])
  })

  it('an edge between obtuse corners runs on to the edges that cut it', () => {
    // regular hexagon of side 2: 120° corners, the strip grows by w/√3 at both ends
    const hexagon = drawPath(
      1,
      Array.from({ length: 6 }, (_, i) => [2 * Math.cos((i * π) / 3), 2 * Math.sin((i * π) / 3)] as const),
    )
    const r = clean(drawSlab(hexagon, { borders: [drawBorder('b1', hexagon, 0.3, ['e1002'])] }))
    const grow = 0.3 / Math.sqrt(3)
    expectBorder(r, 0, [0.3 * (2 + grow), 2, 2 + 2 * grow, 2 + grow])
  })

  it('a border on an arc that its neighbors leave by less than 45° ends square to the arc: a sector of an annulus', () => {
    // over a chord of 6 with a rise of 1.5: radius 3.75, sweep 4 atan ½; the straight sides turn away by 36.87°
    const bowed = drawPath(1, rectangle(0, 0, 10, 6), { rises: { 1: 1.5 } })
    const sweep = 4 * Math.atan(0.5)
    const r = clean(drawSlab(bowed, { borders: [drawBorder('b1', bowed, 0.3, ['e1002'])] }))
    expectBorder(r, 0, [sweep * 3.6 * 0.3, sweep * 3.75, sweep * 3.45, sweep * 3.6])
  })

  it('a border on one side of an octagon runs on to its neighbors, each end a right triangle of 45°', () => {
    const octagon = drawPath(
      1,
      Array.from({ length: 8 }, (_, i) => [4 * Math.cos((i * π) / 4), 4 * Math.sin((i * π) / 4)] as const),
    )
    const side = 8 * Math.sin(π / 8)
    const r = clean(drawSlab(octagon, { borders: [drawBorder('b1', octagon, 0.3, ['e1001'])] }))
    expectBorder(r, 0, [side * 0.3 + 0.09, side, side + 0.6, side + 0.3])
  })

  it('a border around a disc is an annulus', () => {
    const disc = circlePath(1, [1, 2], 3)
    const r = clean(drawSlab(disc, { borders: [drawBorder('b1', disc, 0.3)] }))
    expectBorder(r, 0, [π * (9 - 2.7 ** 2), 6 * π, 2 * π * 2.7, 2 * π * 2.85])
  })

  it('two stacked borders of a disc are two annuli', () => {
    const disc = circlePath(1, [1, 2], 3)
    const r = clean(drawSlab(disc, { borders: [drawBorder('b1', disc, 0.3), drawBorder('b2', disc, 0.2)] }))
    expectBorder(r, 1, [π * (2.7 ** 2 - 2.5 ** 2), 5.4 * π, 2 * π * 2.5, 2 * π * 2.6])
  })

  it('a border inside another on three sides starts from its inner edge, and on the fourth from the slab’s', () => {
    const borders = [drawBorder('b1', ten, 0.3, ['e1004', 'e1001', 'e1002']), drawBorder('b2', ten, 0.2)]
    const r = clean(drawSlab(ten, { borders }))
    expectBorder(r, 0, [(5.7 + 10 + 5.7) * 0.3, 22, 5.7 + 9.4 + 5.7, 5.85 + 9.7 + 5.85])
    expect(r.borders[1]!.outerLengthM).toBeCloseTo(5.7 + 9.4 + 5.7 + 10, 9)
  })

  it('a border around a stadium keeps straight and round parts', () => {
    const stadium = drawPath(1, rectangle(0, 0, 6, 4), { rises: { 1: 2, 3: 2 } })
    const r = clean(drawSlab(stadium, { borders: [drawBorder('b1', stadium, 0.5)] }))
    expectBorder(r, 0, [12 * 0.5 + π * (4 - 2.25), 12 + 4 * π, 12 + 3 * π, 12 + 3.5 * π])
  })

  it('a border narrower than a corner radius follows the rounding', () => {
    const soft = drawPath(1, rectangle(0, 0, 10, 6), { rounds: { 0: 1, 1: 1, 2: 1, 3: 1 } })
    const r = clean(drawSlab(soft, { borders: [drawBorder('b1', soft, 0.3)] }))
    expectBorder(r, 0, [24 * 0.3 + π * (1 - 0.49), 24 + 2 * π, 24 + 1.4 * π, 24 + 1.7 * π])
  })

  it('a border wider than a corner radius has a sharp inner corner', () => {
    const soft = drawPath(1, rectangle(0, 0, 10, 6), { rounds: { 0: 0.2, 1: 0.2, 2: 0.2, 3: 0.2 } })
    const r = clean(drawSlab(soft, { borders: [drawBorder('b1', soft, 0.5)] }))
    near(r.borders[0]!.areaM2, 60 - 0.04 * (4 - π) - 9 * 5)
    near(r.borders[0]!.innerLengthM, 28)
  })

  it('the rounding next to a bordered edge belongs to its border', () => {
    const soft = drawPath(1, rectangle(0, 0, 10, 6), { rounds: { 1: 1 } })
    const r = clean(drawSlab(soft, { borders: [drawBorder('b1', soft, 0.3, ['e1001'])] }))
    // 9 m of edge, then a quarter ring of radius 1, cut square where it ends
    expectBorder(r, 0, [9 * 0.3 + (π / 4) * (1 - 0.49), 9 + π / 2, 9 + 0.35 * π, 9 + 0.425 * π])
  })

  it('a border around an opening runs into the slab', () => {
    const pool = turned(circlePath(2, [5, 3], 1))
    const r = clean(
      drawSlab(ten, { openings: [drawOpening('o1', pool, 'pool')], borders: [drawBorder('b1', pool, 0.3)] }),
    )
    near(r.netAreaM2, 60 - π)
    near(r.openingPerimeterM, 2 * π)
    expectBorder(r, 0, [π * (1.69 - 1), 2 * π, 2.6 * π, 2.3 * π])
  })

  it('a border around a square opening is mitered outwards', () => {
    const box = turned(drawPath(2, rectangle(4, 2, 2, 2)))
    const r = clean(drawSlab(ten, { openings: [drawOpening('o1', box)], borders: [drawBorder('b1', box, 0.25)] }))
    expectBorder(r, 0, [6.25 - 4, 8, 10, 9])
  })

  it('a border cut by an opening stops at it', () => {
    const planter = turned(drawPath(2, rectangle(4, 0.1, 1, 1)))
    const r = clean(drawSlab(ten, { openings: [drawOpening('o1', planter)], borders: [drawBorder('b1', ten, 0.3)] }))
    expectBorder(r, 0, [9.24 - 0.2, 32, 29.6 - 1, 30.8 - 1])
  })

  it('where two borders meet the first keeps the ground', () => {
    // an opening 0.4 from the edge: its border of 0.3 and the outline's of 0.3 share a strip of 0.2
    const planter = turned(drawPath(2, rectangle(4, 0.4, 1, 1)))
    const r = clean(
      drawSlab(ten, {
        openings: [drawOpening('o1', planter)],
        borders: [drawBorder('b1', ten, 0.3), drawBorder('b2', planter, 0.3)],
      }),
    )
    near(r.borders[0]!.areaM2, 9.24)
    near(r.borders[1]!.areaM2, 1.6 * 1.6 - 1 - 0.2 * 1.6)
  })

  it('a straight band across the slab', () => {
    const r = clean(
      drawSlab(ten, {
        bands: [
          drawBand(
            'n1',
            drawLine(3, [
              [0, 3],
              [10, 3],
            ]),
            0.4,
          ),
        ],
      }),
    )
    near(r.bands[0]!.areaM2, 4)
    near(r.bands[0]!.lengthM, 10)
  })

  it('a slanting band is cut by the edges it ends on', () => {
    const r = clean(
      drawSlab(ten, {
        bands: [
          drawBand(
            'n1',
            drawLine(3, [
              [2, 0],
              [8, 6],
            ]),
            0.4,
          ),
        ],
      }),
    )
    near(r.bands[0]!.areaM2, 0.4 * 6 * Math.SQRT2)
  })

  it('a bent band is mitered', () => {
    const r = clean(
      drawSlab(ten, {
        bands: [
          drawBand(
            'n1',
            drawLine(3, [
              [0, 3],
              [5, 3],
              [5, 6],
            ]),
            0.4,
          ),
        ],
      }),
    )
    near(r.bands[0]!.areaM2, 0.4 * 8)
    near(r.bands[0]!.lengthM, 8)
  })

  it('a closed round band is an annulus', () => {
    const r = clean(drawSlab(ten, { bands: [drawBand('n1', circlePath(3, [5, 3], 2), 0.4)] }))
    near(r.bands[0]!.areaM2, π * (2.2 ** 2 - 1.8 ** 2))
    near(r.bands[0]!.lengthM, 4 * π)
  })

  it('an arched band keeps its arc', () => {
    // half circle of radius 2 about (5, 0): half an annulus
    const r = clean(
      drawSlab(ten, {
        bands: [
          drawBand(
            'n1',
            drawLine(
              3,
              [
                [7, 0],
                [3, 0],
              ],
              { rises: { 0: 2 } },
            ),
            0.4,
          ),
        ],
      }),
    )
    near(r.bands[0]!.areaM2, (π / 2) * (2.2 ** 2 - 1.8 ** 2))
    near(r.bands[0]!.lengthM, 2 * π)
  })

  it('two crossing bands count their crossing once', () => {
    const r = clean(
      drawSlab(ten, {
        bands: [
          drawBand(
            'n1',
            drawLine(3, [
              [0, 3],
              [10, 3],
            ]),
            0.4,
          ),
          drawBand(
            'n2',
            drawLine(4, [
              [5, 0],
              [5, 6],
            ]),
            0.4,
          ),
        ],
      }),
    )
    near(r.bands[0]!.areaM2, 4)
    near(r.bands[1]!.areaM2, 2.4 - 0.16)
    near(r.bands[1]!.lengthM, 6)
    expect(r.field).toHaveLength(4)
  })

  it('a round inset claims before band and border', () => {
    const r = clean(
      drawSlab(ten, {
        insets: [drawInset('i1', circlePath(5, [5, 3], 1))],
        bands: [
          drawBand(
            'n1',
            drawLine(3, [
              [0, 3],
              [10, 3],
            ]),
            0.4,
          ),
        ],
        borders: [drawBorder('b1', ten, 0.3)],
      }),
    )
    near(r.insets[0]!.areaM2, π)
    // the band loses the strip of the disc: 2(h√(1 − h²) + asin h), h = 0.2
    near(r.bands[0]!.areaM2, 4 - 2 * (0.2 * Math.sqrt(1 - 0.04) + Math.asin(0.2)))
    near(r.borders[0]!.areaM2, 9.24 - 2 * 0.3 * 0.4)
  })

  it('a band through a pool leaves the pool out', () => {
    const pool = turned(circlePath(2, [5, 3], 1))
    const r = clean(
      drawSlab(ten, {
        openings: [drawOpening('o1', pool, 'pool')],
        bands: [
          drawBand(
            'n1',
            drawLine(3, [
              [0, 3],
              [10, 3],
            ]),
            0.4,
          ),
        ],
      }),
    )
    near(r.bands[0]!.areaM2, 4 - 2 * (0.2 * Math.sqrt(1 - 0.04) + Math.asin(0.2)))
    near(r.bands[0]!.lengthM, 8)
    expect(r.bands[0]!.shape).toHaveLength(2)
  })

  it('a narrow neck is claimed once where two sides of a border overlap', () => {
    // two 4 × 4 squares joined by a neck 2 long and 0.5 wide; the border of 0.3 fills the neck
    const neck = drawPath(1, [
      [0, 0],
      [4, 0],
      [4, 1.75],
      [6, 1.75],
      [6, 0],
      [10, 0],
      [10, 4],
      [6, 4],
      [6, 2.25],
      [4, 2.25],
      [4, 4],
      [0, 4],
    ])
    const r = clean(drawSlab(neck, { borders: [drawBorder('b1', neck, 0.3)] }))
    near(r.fieldAreaM2, 2 * 3.4 * 3.4)
    near(r.borders[0]!.areaM2, 33 - 2 * 3.4 * 3.4)
    near(r.borders[0]!.innerLengthM, 2 * 4 * 3.4)
  })
})
