import { feetToMeters as ft, inchesToMeters as inch, squareFeetToM2 } from '../../core/units/convert'
import type { Site } from '../../shared/document/site'
import type { Opening } from '../../shared/document/slab'
import { drawTree } from '../court'
import { noParts, noRows, rectangle, startDraft } from '../draft'

/** Feet; planters are 20 × 10. */
export const plazaFt = {
  width: 250,
  depth: 200,
  fountainRadius: 15,
  columnRadius: 1,
  planters: [
    [20, 20],
    [115, 15],
    [210, 20],
    [20, 170],
    [115, 175],
    [210, 170],
  ],
  columns: [
    [90, 160],
    [160, 160],
    [90, 130],
    [160, 130],
  ],
  drains: [
    [100, 70],
    [150, 70],
  ],
} as const

/** A plaza of 50,000 ft² before its openings: fountain, planters, columns, drains, borders, bands; cap 1,200 ft². */
export const plaza = (): Site => {
  const draft = startDraft()
  const field = draft.id('f')
  const accent = draft.id('f')
  const edging = draft.id('f')
  const id = draft.id('s')
  const outline = draft.path(rectangle([0, 0], ft(plazaFt.width), ft(plazaFt.depth)))
  const fountain: Opening = {
    id: draft.id('o'),
    name: 'Fountain',
    kind: 'pool',
    pool: 'existing',
    path: draft.circle([ft(125), ft(100)], ft(plazaFt.fountainRadius), 'clockwise'),
  }
  const openings: Opening[] = [
    fountain,
    ...plazaFt.planters.map(
      ([x, y], i): Opening => ({
        id: draft.id('o'),
        name: `Planter ${i + 1}`,
        kind: 'planter',
        path: draft.path(rectangle([ft(x), ft(y)], ft(20), ft(10), 'clockwise')),
      }),
    ),
    ...plazaFt.columns.map(
      ([x, y], i): Opening => ({
        id: draft.id('o'),
        name: `Column ${i + 1}`,
        kind: 'column',
        path: draft.circle([ft(x), ft(y)], ft(plazaFt.columnRadius), 'clockwise'),
      }),
    ),
    ...plazaFt.drains.map(
      ([x, y], i): Opening => ({
        id: draft.id('o'),
        name: `Drain ${i + 1}`,
        kind: 'drain',
        path: draft.path(rectangle([ft(x), ft(y)], ft(2), ft(2), 'clockwise')),
      }),
    ),
  ]
  const border = (name: string, pathId: string, widthFt: number) => ({
    id: draft.id('b'),
    name,
    pathId,
    edges: 'all' as const,
    widthM: ft(widthFt),
    finishId: edging,
    placed: 'withField' as const,
  })
  const band = (name: string, from: readonly [number, number], to: readonly [number, number]) => ({
    id: draft.id('n'),
    name,
    line: draft.path([{ at: [ft(from[0]), ft(from[1])] }, { at: [ft(to[0]), ft(to[1])] }], 'open'),
    widthM: ft(3),
    finishId: accent,
    placed: 'withField' as const,
  })
  const hall = draft.path(rectangle([ft(0), ft(214)], ft(250), ft(90)))
  const chapel = draft.path(rectangle([ft(264), ft(40)], ft(50), ft(100)))
  return {
    ...noRows,
    format: 'slabwright-site',
    version: 1,
    id: 'sample-plaza',
    name: 'Ferry Landing plaza',
    units: 'ftin',
    place: {
      name: 'Ferry Landing',
      latDeg: 38.6127,
      lonDeg: -90.1846,
      elevationM: 131,
      zone: 'America/Chicago',
      northDeg: 28,
    },
    finishes: [
      { id: field, name: 'Seamless slate, fog', pattern: 'seamless', color: '#a3a7a6' },
      { id: accent, name: 'Running bond, oxide red', pattern: 'runningBond', color: '#8f4a3c', patternDeg: 0 },
      { id: edging, name: 'Plain, charcoal', pattern: 'plain', color: '#4d4d4f' },
    ],
    slabs: [
      {
        ...noParts,
        id,
        name: 'Plaza',
        levelM: ft(1.5),
        outline,
        openings,
        thicknessM: inch(6),
        thickened: [{ edges: outline.edges.slice(0, 1).map(edge => edge.id), depthM: inch(12), widthM: inch(18) }],
        baseDepthM: inch(8),
        finishId: field,
        borders: [border('Outer border', outline.id, 3), border('Fountain border', fountain.path.id, 2)],
        bands: [
          band('West band', [62, 0], [62, 200]),
          band('East band', [188, 0], [188, 200]),
          band('South band', [0, 50], [250, 50]),
          band('North band', [0, 150], [250, 150]),
        ],
        steps: [
          {
            id: draft.id('k'),
            name: 'South steps',
            edgeId: outline.edges[0]?.id ?? '',
            fromT: 0.4,
            widthM: ft(50),
            risers: 3,
            riserM: inch(6),
            treadM: inch(14),
            nosingM: inch(1),
          },
        ],
        slope: { towardDeg: 180, fall: 0.015 },
      },
    ],
    casters: [
      {
        id: draft.id('c'),
        name: 'Ferry hall, around a courtyard',
        kind: 'building',
        footprint: hall,
        courtyards: [draft.path(rectangle([ft(80), ft(240)], ft(90), ft(40), 'clockwise'))],
        baseM: 0,
        eaveM: ft(42),
        overhangM: 0,
        roof: { form: 'flat' },
      },
      {
        id: draft.id('c'),
        name: 'Chapel',
        kind: 'building',
        footprint: chapel,
        baseM: 0,
        eaveM: ft(28),
        overhangM: inch(18),
        roof: { form: 'gable', risePer12: 12, ridgeAlongEdge: chapel.edges[1]?.id ?? '' },
      },
      {
        id: draft.id('c'),
        name: 'Office tower',
        kind: 'building',
        footprint: draft.path(rectangle([ft(-84), ft(60)], ft(70), ft(80))),
        baseM: 0,
        eaveM: ft(120),
        overhangM: 0,
        roof: { form: 'flat' },
      },
      {
        id: draft.id('c'),
        name: 'Market roof',
        kind: 'cover',
        outline: draft.path(rectangle([ft(86), ft(126)], ft(78), ft(38))),
        undersideM: ft(15.5),
        topM: ft(17),
        light: 'none',
      },
      ...plazaFt.planters.map(([x, y], i) => drawTree(draft, `Plaza tree ${i + 1}`, [x + 10, y + 5], 36, 14)),
      ...[10, 40, 70, 100, 150, 180, 210, 240].map((xFt, i) =>
        drawTree(draft, `Street tree ${i + 1}`, [xFt, -18], 40, 15, 'dense'),
      ),
    ],
    points: [
      { id: draft.id('p'), name: 'Market hall', at: [ft(125), ft(145)], slabId: id },
      { id: draft.id('p'), name: 'Head of the steps', at: [ft(125), ft(6)], slabId: id },
    ],
    access: {
      truckSpots: [
        { id: draft.id('t'), at: [ft(60), ft(-20)] },
        { id: draft.id('t'), at: [ft(190), ft(-20)] },
      ],
      pumpSpots: [{ id: draft.id('u'), at: [ft(125), ft(-24)] }],
      washouts: [{ id: draft.id('w'), at: [ft(280), ft(-40)] }],
      noGo: [],
      chuteReachM: ft(18),
      ways: [
        {
          id: draft.id('g'),
          name: 'Hall doors',
          at: [ft(125), ft(200)],
          widthM: ft(12),
          open: [{ weekdays: [1, 2, 3, 4, 5, 6, 7], from: '05:30', to: '23:00' }],
        },
        {
          id: draft.id('g'),
          name: 'Chapel gate',
          at: [ft(250), ft(90)],
          widthM: ft(8),
          open: [{ weekdays: [6, 7], from: '08:00', to: '21:00' }],
        },
      ],
    },
    capacity: { capM2: squareFeetToM2(1200) },
    crew: { hands: 9, experience: 'seasoned', crews: 2, daysOff: [] },
    nextId: draft.nextId(),
  }
}
