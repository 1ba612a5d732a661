import { feetToMeters as ft, inchesToMeters as inch, squareFeetToM2 } from '../../core/units/convert'
import type { Path } from '../../shared/document/path'
import type { Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import { type Corner, type Draft, noParts, noRows, startDraft } from '../draft'

/** Two lobes of 14 ft radius, 28 ft apart; a straight side below, a hollow of 21 ft radius above, all tangent. */
export const kidney = { lobeFt: 14, hollowFt: 21 } as const

/** A four-arc oval on an 18 × 9 ft rectangle: half sweeps of 30° and 60°, so that its arcs meet smoothly. */
export const oval = { longFt: 18, shortFt: 9, at: [0, -1] } as const

const kidneyOutline = (draft: Draft): Path => {
  const { lobeFt: r, hollowFt: hollow } = kidney
  // The hollow's center lies on the axis, one lobe plus one hollow radius from each lobe's center.
  const end = Math.PI - Math.acos(r / (r + hollow))
  const onLobe = (side: 1 | -1, angle: number): Pt => [ft(side * (r + r * Math.cos(angle))), ft(r * Math.sin(angle))]
  const rise = (sweep: number) => ft(r * (1 - Math.cos(sweep / 2)))
  const hollowHalf = Math.asin(r / (r + hollow))
  const right: Corner[] = [
    { at: onLobe(1, -Math.PI / 2), riseM: rise(Math.PI / 2) },
    { at: onLobe(1, 0), riseM: rise(end / 2) },
    { at: onLobe(1, end / 2), riseM: rise(end / 2) },
    { at: onLobe(1, end), riseM: -ft(hollow * (1 - Math.cos(hollowHalf))) },
  ]
  const left: Corner[] = [
    { at: onLobe(-1, end), riseM: rise(end / 2) },
    { at: onLobe(-1, end / 2), riseM: rise(end / 2) },
    { at: onLobe(-1, 0), riseM: rise(Math.PI / 2) },
    { at: onLobe(-1, -Math.PI / 2) },
  ]
  return draft.path([...right, ...left])
}

const ovalPool = (draft: Draft): Path => {
  const [x, y] = oval.at
  const a = oval.longFt / 2
  const b = oval.shortFt / 2
  const longRise = -ft(a * Math.tan(Math.PI / 12))
  const shortRise = -ft(b * Math.tan(Math.PI / 6))
  return draft.path([
    { at: [ft(x - a), ft(y - b)], riseM: shortRise },
    { at: [ft(x - a), ft(y + b)], riseM: longRise },
    { at: [ft(x + a), ft(y + b)], riseM: shortRise },
    { at: [ft(x + a), ft(y - b)], riseM: longRise },
  ])
}

/** A deck of arcs around an oval pool, a 12 in border along the outline and another around the pool. */
export const kidneyPoolDeck = (): Site => {
  const draft = startDraft()
  const field = draft.id('f')
  const edging = draft.id('f')
  const slab = draft.id('s')
  const outline = kidneyOutline(draft)
  const pool = ovalPool(draft)
  const border = (path: Path, name: string) => ({
    id: draft.id('b'),
    name,
    pathId: path.id,
    edges: 'all' as const,
    widthM: inch(12),
    finishId: edging,
    placed: 'withField' as const,
  })
  return {
    ...noRows,
    format: 'slabwright-site',
    version: 1,
    id: 'sample-kidney-pool-deck',
    name: 'Saguaro Bend pool deck',
    units: 'ftin',
    place: {
      name: '7120 Saguaro Bend',
      latDeg: 33.5312,
      lonDeg: -111.9183,
      elevationM: 388,
      zone: 'America/Phoenix',
      northDeg: 12,
    },
    finishes: [
      { id: field, name: 'Seamless stone, buff', pattern: 'seamless', color: '#d8c7a4' },
      { id: edging, name: 'Plain, terra cotta', pattern: 'plain', color: '#b0623f' },
    ],
    slabs: [
      {
        ...noParts,
        id: slab,
        name: 'Pool deck',
        levelM: 0,
        outline,
        openings: [{ id: draft.id('o'), name: 'Pool', kind: 'pool', path: pool, pool: 'cantilevered' }],
        thicknessM: inch(4),
        baseDepthM: inch(4),
        finishId: field,
        borders: [border(outline, 'Outer border'), border(pool, 'Pool border')],
        obstacles: [{ id: draft.id('q'), kind: 'valveBox', at: [ft(22), ft(-6)], name: 'Skimmer valve' }],
        slope: { towardDeg: 180, fall: 0.02 },
      },
    ],
    casters: [
      {
        id: draft.id('c'),
        name: 'House',
        kind: 'building',
        footprint: draft.path([
          { at: [ft(-34), ft(-58)] },
          { at: [ft(30), ft(-58)] },
          { at: [ft(30), ft(-32)] },
          { at: [ft(-8), ft(-32)] },
          { at: [ft(-8), ft(-24)] },
          { at: [ft(-34), ft(-24)] },
        ]),
        baseM: 0,
        eaveM: ft(11),
        overhangM: inch(24),
        roof: { form: 'hip', risePer12: 4 },
      },
      {
        id: draft.id('c'),
        name: 'Shade cover',
        kind: 'cover',
        outline: draft.path([
          { at: [ft(-26), ft(-22)] },
          { at: [ft(-12), ft(-22)] },
          { at: [ft(-12), ft(-10)] },
          { at: [ft(-26), ft(-10)] },
        ]),
        undersideM: ft(9),
        topM: ft(9.5),
        light: 'half',
      },
      {
        id: draft.id('c'),
        name: 'Mesquite',
        kind: 'tree',
        at: [ft(34), ft(10)],
        baseM: 0,
        trunkM: ft(6),
        topM: ft(20),
        crownRadiusM: ft(10),
        density: 'open',
        leaves: { from: '04-01', to: '12-15' },
      },
      {
        id: draft.id('c'),
        name: 'Block wall',
        kind: 'wall',
        line: [
          [ft(-40), ft(24)],
          [ft(42), ft(24)],
          [ft(42), ft(-30)],
        ],
        baseM: 0,
        topM: ft(6),
        solidity: 1,
      },
    ],
    points: [
      { id: draft.id('p'), name: 'Diving end', at: [ft(17), ft(2)], slabId: slab },
      { id: draft.id('p'), name: 'Loungers', at: [ft(-20), ft(4)], slabId: slab },
    ],
    capacity: { capM2: squareFeetToM2(800) },
    crew: { hands: 6, experience: 'seasoned', crews: 1, daysOff: [] },
    nextId: draft.nextId(),
  }
}
