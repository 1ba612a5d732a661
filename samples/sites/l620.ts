import { feetToMeters as ft, inchesToMeters as inch, squareFeetToM2 } from '../../core/units/convert'
import type { Site } from '../../shared/document/site'
import { noParts, noRows, rectangle, startDraft } from '../draft'

/** An L of 620 ft² behind a two-story house with a hip roof: one pour under the cap of 800 ft². */
export const l620 = (): Site => {
  const draft = startDraft()
  const field = draft.id('f')
  const slab = draft.id('s')
  const outline = draft.path([
    { at: [0, 0] },
    { at: [ft(30), 0] },
    { at: [ft(30), ft(14)] },
    { at: [ft(20), ft(14)] },
    { at: [ft(20), ft(24)] },
    { at: [0, ft(24)] },
  ])
  const footprint = draft.path(rectangle([ft(-6), ft(-28)], ft(44), ft(28)))
  return {
    ...noRows,
    format: 'slabwright-site',
    version: 1,
    id: 'sample-l-620',
    name: 'Marlow patio',
    units: 'ftin',
    place: {
      name: '308 Quarry Lane',
      latDeg: 40.1164,
      lonDeg: -75.2817,
      elevationM: 61,
      zone: 'America/New_York',
      northDeg: -20,
    },
    finishes: [{ id: field, name: 'Cobble, pewter', pattern: 'cobble', color: '#9a958c', patternDeg: 90 }],
    slabs: [
      {
        ...noParts,
        id: slab,
        name: 'Patio',
        levelM: 0,
        outline,
        thicknessM: inch(4),
        baseDepthM: inch(4),
        finishId: field,
        obstacles: [{ id: draft.id('q'), kind: 'hoseBib', at: [ft(28), ft(0.5)] }],
        againstExisting: outline.edges.slice(0, 1).map(edge => edge.id),
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
        roof: { form: 'hip', risePer12: 5 },
      },
    ],
    points: [{ id: draft.id('p'), name: 'Bench', at: [ft(8), ft(20)], slabId: slab }],
    capacity: { capM2: squareFeetToM2(800) },
    crew: { hands: 4, experience: 'steady', crews: 1, daysOff: [] },
    nextId: draft.nextId(),
  }
}
