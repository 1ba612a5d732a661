import { feetToMeters as ft, inchesToMeters as inch, squareFeetToM2 } from '../../core/units/convert'
import type { Site } from '../../shared/document/site'
import { startDraft } from '../draft'

/** An L of 1,588 ft² behind a two-story house: 28 × 42 ft and 22 × 20 ft, two corners rounded, one round planter. */
export const lPatio = (): Site => {
  const draft = startDraft()
  const field = draft.id('f')
  const edging = draft.id('f')
  const outline = draft.path([
    { at: [0, 0] },
    { at: [ft(50), 0] },
    { at: [ft(50), ft(20)], roundM: ft(6) },
    { at: [ft(28), ft(20)] },
    { at: [ft(28), ft(42)] },
    { at: [0, ft(42)], roundM: ft(6) },
  ])
  const [house, ...free] = outline.edges.map(edge => edge.id)
  const slab = draft.id('s')
  const footprint = draft.path([
    { at: [ft(-4), ft(-30)] },
    { at: [ft(54), ft(-30)] },
    { at: [ft(54), 0] },
    { at: [ft(-4), 0] },
  ])
  return {
    format: 'slabwright-site',
    version: 1,
    id: 'sample-l-patio',
    name: 'Alder Court patio',
    units: 'ftin',
    place: {
      name: '14 Alder Court',
      latDeg: 43.5826,
      lonDeg: -116.2147,
      elevationM: 832,
      zone: 'America/Boise',
      northDeg: 35,
    },
    finishes: [
      { id: field, name: 'Ashlar, sandstone', pattern: 'ashlar', color: '#c9b79a', patternDeg: 0 },
      { id: edging, name: 'Running bond, walnut', pattern: 'runningBond', color: '#7d6148' },
    ],
    slabs: [
      {
        id: slab,
        name: 'Patio',
        levelM: 0,
        outline,
        openings: [
          {
            id: draft.id('o'),
            name: 'Round planter',
            kind: 'planter',
            path: draft.circle([ft(14), ft(29)], ft(2), 'clockwise'),
          },
        ],
        thicknessM: inch(4),
        thickened: [],
        baseDepthM: inch(4),
        finishId: field,
        borders: [
          {
            id: draft.id('b'),
            name: '12 in border',
            pathId: outline.id,
            edges: free,
            widthM: inch(12),
            finishId: edging,
            placed: 'withField',
          },
        ],
        bands: [],
        insets: [],
        steps: [],
        obstacles: [{ id: draft.id('q'), kind: 'downspout', at: [ft(49), ft(0.5)], name: 'Downspout at the corner' }],
        againstExisting: house === undefined ? [] : [house],
        slope: { towardDeg: 0, fall: 0.02 },
      },
    ],
    casters: [
      {
        id: draft.id('c'),
        name: 'House',
        kind: 'building',
        footprint,
        baseM: 0,
        eaveM: ft(20),
        overhangM: inch(18),
        roof: { form: 'gable', risePer12: 6, ridgeAlongEdge: footprint.edges[0]?.id ?? '' },
      },
      {
        id: draft.id('c'),
        name: 'Maple',
        kind: 'tree',
        at: [ft(-13), ft(27)],
        baseM: ft(-0.5),
        trunkM: ft(7),
        topM: ft(26),
        crownRadiusM: ft(9),
        density: 'medium',
        leaves: { from: '04-20', to: '10-31' },
      },
      {
        id: draft.id('c'),
        name: 'Fence',
        kind: 'wall',
        line: [
          [ft(58), 0],
          [ft(58), ft(44)],
        ],
        baseM: ft(-0.5),
        topM: ft(6),
        solidity: 1,
      },
    ],
    points: [
      { id: draft.id('p'), name: 'Back door', at: [ft(20), ft(3)], slabId: slab },
      { id: draft.id('p'), name: 'Dining table', at: [ft(14), ft(36)], slabId: slab },
      { id: draft.id('p'), name: 'Grill corner', at: [ft(44), ft(14)], slabId: slab },
    ],
    access: {
      truckSpots: [{ id: draft.id('t'), at: [ft(64), ft(4)] }],
      pumpSpots: [],
      washouts: [{ id: draft.id('w'), at: [ft(70), ft(48)] }],
      noGo: [],
      chuteReachM: ft(16),
      ways: [
        {
          id: draft.id('g'),
          name: 'Back door',
          at: [ft(20), 0],
          widthM: ft(3),
          open: [{ weekdays: [1, 2, 3, 4, 5, 6, 7], from: '06:30', to: '21:00' }],
        },
      ],
    },
    wishes: [],
    capacity: { capM2: squareFeetToM2(800) },
    crew: { hands: 5, experience: 'steady', crews: 1, daysOff: [] },
    accepted: [],
    nextId: draft.nextId(),
  }
}
