import { describe, expect, it } from 'vitest'
import { findSlabOverlaps } from '../../core/geometry/findSlabOverlaps'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { geometryWordings } from '../../core/problems/geometryWordings'
import { printMeasures } from '../../core/units/printMeasures'
import type { Path } from '../../shared/document/path'
import type { Pt } from '../../shared/document/primitives'
import type { Slab } from '../../shared/document/slab'
import type { Finding, geometryCodes } from '../../shared/problem'
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

const ten = drawPath(1, rectangle(0, 0, 10, 6))
const box = (key: number, x: number, y: number, w: number, h: number) => turned(drawPath(key, rectangle(x, y, w, h)))
const overlaps = (...slabs: Slab[]) => findSlabOverlaps(slabs.map(resolveSlab))
const brief = (findings: readonly Finding[]) => findings.map(f => [f.code, f.severity, f.at?.entityId])

interface Case {
  readonly name: string
  readonly slab: Slab
  readonly code: Finding['code']
  readonly severity: Finding['severity']
  readonly entityId: string
  readonly point?: Pt
}

const outlineCase = (
  name: string,
  path: Path,
  code: Finding['code'],
  severity: Finding['severity'],
  point?: Pt,
): Case => ({
  name,
  slab: drawSlab(path),
  code,
  severity,
  entityId: 's1',
  ...(point ? { point } : {}),
})

const cases: readonly Case[] = [
  outlineCase(
    'a bow-tie outline',
    drawPath(1, [
      [0, 0],
      [4, 4],
      [4, 0],
      [0, 4],
    ]),
    'selfCrossing',
    'stop',
    [2, 2],
  ),
  outlineCase(
    'an arc that dents through the opposite edge',
    drawPath(1, rectangle(0, 0, 10, 2), { rises: { 0: -3 } }),
    'selfCrossing',
    'stop',
  ),
  outlineCase(
    'an outline that touches itself in a corner',
    drawPath(1, [
      [0, 0],
      [4, 0],
      [4, 4],
      [2, 0],
      [0, 4],
    ]),
    'selfCrossing',
    'stop',
    [2, 0],
  ),
  outlineCase(
    'an outline that runs back over itself',
    drawPath(1, [
      [0, 0],
      [4, 0],
      [4, 4],
      [4, 0],
      [0, 4],
    ]),
    'selfCrossing',
    'stop',
  ),
  outlineCase(
    'an outline of two corners',
    drawPath(1, [
      [0, 0],
      [4, 4],
    ]),
    'pathTooShort',
    'stop',
    [0, 0],
  ),
  outlineCase('an outline without corners', drawPath(1, []), 'pathTooShort', 'stop'),
  outlineCase(
    'an edge too many',
    { ...ten, edges: [...ten.edges, { id: 'e99' }] },
    'edgeCountMismatch',
    'stop',
    [0, 0],
  ),
  outlineCase(
    'a corner set twice',
    drawPath(1, [
      [0, 0],
      [4, 0],
      [4, 0],
      [4, 4],
    ]),
    'zeroEdge',
    'check',
    [4, 0],
  ),
  outlineCase('a clockwise outline', turned(ten), 'wrongWinding', 'check'),
  outlineCase(
    'a corner radius longer than its edges',
    drawPath(1, rectangle(0, 0, 10, 6), { rounds: { 1: 7 } }),
    'roundTooLarge',
    'check',
    [10, 0],
  ),
  outlineCase(
    'an arc that closes on itself',
    drawPath(1, rectangle(0, 0, 1, 6), { rises: { 0: 11 } }),
    'riseTooLarge',
    'stop',
    [0, 0],
  ),
  {
    name: 'an opening outside',
    slab: drawSlab(ten, { openings: [drawOpening('o1', box(2, 20, 2, 1, 1))] }),
    code: 'openingOutside',
    severity: 'stop',
    entityId: 'o1',
    point: [20, 3],
  },
  {
    name: 'an opening across the edge',
    slab: drawSlab(ten, { openings: [drawOpening('o1', box(2, 9, 2, 2, 1))] }),
    code: 'openingOutside',
    severity: 'stop',
    entityId: 'o1',
  },
  {
    name: 'an opening against the edge',
    slab: drawSlab(ten, { openings: [drawOpening('o1', box(2, 9, 2, 1, 1))] }),
    code: 'openingTouches',
    severity: 'check',
    entityId: 'o1',
  },
  {
    name: 'two openings that touch',
    slab: drawSlab(ten, { openings: [drawOpening('o1', box(2, 2, 2, 1, 1)), drawOpening('o2', box(3, 3, 2, 1, 1))] }),
    code: 'openingTouches',
    severity: 'check',
    entityId: 'o2',
  },
  {
    name: 'two openings that overlap',
    slab: drawSlab(ten, { openings: [drawOpening('o1', box(2, 2, 2, 2, 2)), drawOpening('o2', box(3, 3, 3, 2, 2))] }),
    code: 'openingsOverlap',
    severity: 'check',
    entityId: 'o2',
  },
  {
    name: 'an opening within an opening',
    slab: drawSlab(ten, { openings: [drawOpening('o1', box(2, 2, 2, 3, 3)), drawOpening('o2', box(3, 3, 3, 1, 1))] }),
    code: 'openingsOverlap',
    severity: 'check',
    entityId: 'o2',
  },
  {
    name: 'a border wider than the slab',
    slab: drawSlab(ten, { borders: [drawBorder('b1', ten, 7, ['e1001'])] }),
    code: 'borderTooWide',
    severity: 'stop',
    entityId: 'b1',
    point: [0, 0],
  },
  {
    name: 'a border as wide as the slab',
    slab: drawSlab(ten, { borders: [drawBorder('b1', ten, 6, ['e1001'])] }),
    code: 'borderTooWide',
    severity: 'stop',
    entityId: 'b1',
  },
  {
    name: 'a border all around that leaves no field',
    slab: drawSlab(ten, { borders: [drawBorder('b1', ten, 3)] }),
    code: 'borderTooWide',
    severity: 'stop',
    entityId: 'b1',
  },
  {
    name: 'a band that runs out of the slab',
    slab: drawSlab(ten, {
      bands: [
        drawBand(
          'n1',
          drawLine(3, [
            [5, 3],
            [12, 3],
          ]),
          0.3,
        ),
      ],
    }),
    code: 'bandOutside',
    severity: 'check',
    entityId: 'n1',
  },
  {
    name: 'a band beside the slab',
    slab: drawSlab(ten, {
      bands: [
        drawBand(
          'n1',
          drawLine(3, [
            [15, 3],
            [18, 3],
          ]),
          0.3,
        ),
      ],
    }),
    code: 'bandOutside',
    severity: 'stop',
    entityId: 'n1',
  },
  {
    name: 'an inset across the edge',
    slab: drawSlab(ten, { insets: [drawInset('i1', circlePath(5, [10, 3], 1))] }),
    code: 'insetOutside',
    severity: 'check',
    entityId: 'i1',
  },
  {
    name: 'steps that start so far along their edge that they reach beyond it',
    slab: {
      ...drawSlab(ten),
      steps: [
        { id: 'k1', edgeId: ten.edges[0]!.id, fromT: 0.9, widthM: 1.5, risers: 2, riserM: 0.15, treadM: 0.3 },
        { id: 'k2', edgeId: ten.edges[0]!.id, fromT: 0.5, widthM: 5, risers: 2, riserM: 0.15, treadM: 0.3 },
      ],
    },
    code: 'stepsBeyondEdge',
    severity: 'check',
    entityId: 'k1',
    point: [10, 0],
  },
  {
    name: 'an inset beside the slab',
    slab: drawSlab(ten, { insets: [drawInset('i1', circlePath(5, [20, 3], 1))] }),
    code: 'insetOutside',
    severity: 'stop',
    entityId: 'i1',
  },
]

describe('what is wrong with a slab is told, with its place', () => {
  it.each(cases)('$name', ({ slab, code, severity, entityId, point }) => {
    const { findings } = resolveSlab(slab)
    expect(brief(findings)).toEqual([[code, severity, entityId]])
    if (point) {
      expect(findings[0]!.at!.point![0]).toBeCloseTo(point[0], 6)
      expect(findings[0]!.at!.point![1]).toBeCloseTo(point[1], 6)
    }
  })

  it('figures nothing after a stop on the outline, and keeps the outline to be drawn', () => {
    const r = resolveSlab(
      drawSlab(
        drawPath(1, [
          [0, 0],
          [4, 4],
          [4, 0],
          [0, 4],
        ]),
        { borders: [drawBorder('b1', ten, 1)] },
      ),
    )
    expect(r.outline).toHaveLength(4)
    expect([r.grossAreaM2, r.netAreaM2, r.fieldAreaM2, r.perimeterM, r.net.length, r.borders.length]).toEqual([
      0, 0, 0, 0, 0, 0,
    ])
  })

  it('leaves a border that is too wide out of the claims', () => {
    const r = resolveSlab(
      drawSlab(ten, { borders: [drawBorder('b1', ten, 7, ['e1001']), drawBorder('b2', ten, 0.5, ['e1001'])] }),
    )
    expect(r.borders.map(b => [b.areaM2, b.outerLengthM])).toEqual([
      [0, 0],
      [5, 10],
    ])
    expect(r.fieldAreaM2).toBeCloseTo(55, 9)
  })

  it('takes a clockwise outline the other way around', () => {
    const r = resolveSlab(drawSlab(turned(ten)))
    expect(r.grossAreaM2).toBeCloseTo(60, 12)
  })

  it('leaves a corner sharp when its radius does not fit', () => {
    const r = resolveSlab(drawSlab(drawPath(1, rectangle(0, 0, 10, 6), { rounds: { 1: 7, 3: 1 } })))
    expect(r.grossAreaM2).toBeCloseTo(60 - (1 - Math.PI / 4), 12)
  })

  it('counts the common part of overlapping openings once', () => {
    const r = resolveSlab(cases.find(c => c.name === 'two openings that overlap')!.slab)
    expect(r.openingAreaM2).toBeCloseTo(7, 9)
    expect(r.netAreaM2).toBeCloseTo(53, 9)
  })

  it('does not take an opening outside off the slab', () => {
    const r = resolveSlab(cases[11]!.slab)
    expect([r.netAreaM2, r.openingAreaM2]).toEqual([60, 0])
  })

  it('lets slabs touch and tells when they overlap', () => {
    const at = (id: string, key: number, x: number): Slab => ({
      ...drawSlab(drawPath(key, rectangle(x, 0, 10, 6))),
      id,
    })
    expect(overlaps(at('s1', 1, 0), at('s2', 2, 10))).toEqual([])
    const findings = overlaps(at('s1', 1, 0), at('s2', 2, 9))
    expect(brief(findings)).toEqual([['slabsOverlap', 'check', 's2']])
    expect(findings[0]!.values.commonM2).toBeCloseTo(6, 9)
  })

  it('says the same of a slab inside an opening of another: nothing', () => {
    const deck = drawSlab(ten, { openings: [drawOpening('o1', box(2, 2, 2, 3, 3))] })
    const island = { ...drawSlab(drawPath(3, rectangle(2, 2, 3, 3))), id: 's2' }
    expect(overlaps(deck, island)).toEqual([])
  })
})

describe('findings are worded', () => {
  const found = (name: string) => resolveSlab(cases.find(c => c.name === name)!.slab).findings[0]!
  const say = (finding: Finding, units: 'ftin' | 'metric') =>
    geometryWordings[finding.code as (typeof geometryCodes)[number]]({
      values: finding.values,
      finding,
      print: printMeasures(units),
    }).message

  it('in feet and inches', () => {
    expect([
      say(found('a border wider than the slab'), 'ftin'),
      say(found('a corner radius longer than its edges'), 'ftin'),
      say(found('a band that runs out of the slab'), 'ftin'),
    ]).toMatchInlineSnapshot(`
      [
        "A border of 22′ 11⅝″ is wider than the slab here; no field is left inside it. The border is left out.",
        "A corner radius of 22′ 11⅝″ does not fit between the neighboring edges; the corner stays sharp.",
        "6′ 6¾″ of the band’s center line lies outside the slab; only the part inside counts.",
      ]
    `)
  })

  it('in meters', () => {
    expect([
      say(found('a border wider than the slab'), 'metric'),
      say(found('a corner radius longer than its edges'), 'metric'),
      say(found('a band that runs out of the slab'), 'metric'),
    ]).toMatchInlineSnapshot(`
      [
        "A border of 7.00 m is wider than the slab here; no field is left inside it. The border is left out.",
        "A corner radius of 7.00 m does not fit between the neighboring edges; the corner stays sharp.",
        "2.00 m of the band’s center line lies outside the slab; only the part inside counts.",
      ]
    `)
  })

  it('by the names the plan shows, never by an id of the file', () => {
    const overlapping = ['Drive', 'Walk'].map((name, i) => ({
      ...drawSlab(drawPath(i + 1, rectangle(9 * i, 0, 10, 6))),
      ...{ id: `s${i + 1}`, name },
    }))
    const [overlap] = overlaps(...overlapping)
    expect(say(overlap!, 'metric')).toBe('Walk and Drive share 6 m² of ground: that concrete is counted twice.')
    for (const { slab } of cases)
      for (const each of resolveSlab(slab).findings) expect(say(each, 'metric')).not.toMatch(/\b[a-z]\d+\b/)
  })

  it('every one of them, without a hole in the sentence', () => {
    for (const { slab } of cases)
      for (const f of resolveSlab(slab).findings)
        for (const units of ['ftin', 'metric'] as const) expect(say(f, units)).not.toMatch(/undefined|NaN/)
  })
})
