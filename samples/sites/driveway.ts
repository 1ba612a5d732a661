import { feetToMeters as ft, inchesToMeters as inch, squareFeetToM2 } from '../../core/units/convert'
import type { Site } from '../../shared/document/site'
import { noParts, noRows, rectangle, startDraft } from '../draft'

/** A driveway of 978 ft², flared at the street, 5 in thick, two bands across that can hide a day joint. */
export const driveway = (): Site => {
  const draft = startDraft()
  const field = draft.id('f')
  const accent = draft.id('f')
  const slab = draft.id('s')
  const outline = draft.path([
    { at: [ft(-3), 0] },
    { at: [ft(23), 0] },
    { at: [ft(20), ft(6)] },
    { at: [ft(20), ft(48)] },
    { at: [0, ft(48)] },
    { at: [0, ft(6)] },
  ])
  const band = (name: string, yFt: number) => ({
    id: draft.id('n'),
    name,
    line: draft.path([{ at: [0, ft(yFt)] }, { at: [ft(20), ft(yFt)] }], 'open'),
    widthM: inch(24),
    finishId: accent,
    placed: 'withField' as const,
  })
  const garage = draft.path(rectangle([ft(-4), ft(48)], ft(28), ft(24)))
  return {
    ...noRows,
    format: 'slabwright-site',
    version: 1,
    id: 'sample-driveway',
    name: 'Tollgate driveway',
    units: 'ftin',
    place: {
      name: '951 Tollgate Street',
      latDeg: 39.6803,
      lonDeg: -104.7521,
      elevationM: 1722,
      zone: 'America/Denver',
      northDeg: 8,
    },
    finishes: [
      { id: field, name: 'Ashlar, river stone', pattern: 'ashlar', color: '#a59b8a', patternDeg: 0 },
      { id: accent, name: 'Running bond, brick', pattern: 'runningBond', color: '#8a4a36', patternDeg: 0 },
    ],
    slabs: [
      {
        ...noParts,
        id: slab,
        name: 'Driveway',
        levelM: 0,
        outline,
        thicknessM: inch(5),
        thickened: [{ edges: outline.edges.slice(0, 1).map(edge => edge.id), depthM: inch(8), widthM: inch(12) }],
        baseDepthM: inch(6),
        finishId: field,
        bands: [band('Lower band', 16), band('Upper band', 32)],
        againstExisting: outline.edges.filter((_, i) => i === 0 || i === 3).map(edge => edge.id),
        slope: { towardDeg: 180, fall: 0.03 },
      },
    ],
    casters: [
      {
        id: draft.id('c'),
        name: 'Garage',
        kind: 'building',
        footprint: garage,
        baseM: 0,
        eaveM: ft(10),
        overhangM: inch(12),
        roof: { form: 'gable', risePer12: 5, ridgeAlongEdge: garage.edges[1]?.id ?? '' },
      },
      {
        id: draft.id('c'),
        name: 'Ash',
        kind: 'tree',
        at: [ft(-12), ft(14)],
        baseM: 0,
        trunkM: ft(8),
        topM: ft(32),
        crownRadiusM: ft(12),
        density: 'medium',
        leaves: { from: '05-05', to: '10-15' },
      },
    ],
    points: [{ id: draft.id('p'), name: 'Street end', at: [ft(10), ft(3)], slabId: slab }],
    access: {
      truckSpots: [{ id: draft.id('t'), at: [ft(10), ft(-12)] }],
      pumpSpots: [],
      washouts: [{ id: draft.id('w'), at: [ft(36), ft(-12)] }],
      noGo: [],
      chuteReachM: ft(18),
      ways: [
        {
          id: draft.id('g'),
          name: 'Garage door',
          at: [ft(10), ft(48)],
          widthM: ft(16),
          open: [{ weekdays: [1, 2, 3, 4, 5], from: '06:00', to: '20:00' }],
        },
      ],
    },
    capacity: { capM2: squareFeetToM2(800) },
    crew: { hands: 5, experience: 'steady', crews: 1, daysOff: [] },
    nextId: draft.nextId(),
  }
}
