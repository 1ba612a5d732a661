import { feetToMeters as ft, inchesToMeters as inch, squareFeetToM2 } from '../../core/units/convert'
import type { Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import { noParts, noRows, rectangle, startDraft } from '../draft'

/**
 * A terrace of 72 × 32 ft along a hall, with wishes for its joints: one in line with the corner of the hall's bay, none
 * in front of the double doors or across the side door. The joint that would lie best runs into the doors.
 */
export const hallTerrace = (): Site => {
  const draft = startDraft()
  const field = draft.id('f')
  const slab = draft.id('s')
  const outline = draft.path(rectangle([0, 0], ft(72), ft(32)))
  const [wall, , garden] = outline.edges.map(edge => edge.id)
  const footprint = draft.path(rectangle([ft(-6), ft(-40)], ft(84), ft(40)))
  const onEdge = (edgeId: string | undefined, t: number, last: Pt) =>
    ({ anchor: { on: 'edge', edgeId: edgeId ?? '', t }, last }) as const
  return {
    ...noRows,
    format: 'slabwright-site',
    version: 1,
    id: 'sample-hall-terrace',
    name: 'Larkspur Hall terrace',
    units: 'ftin',
    place: {
      name: '7 Larkspur Lane',
      latDeg: 39.0392,
      lonDeg: -95.7689,
      elevationM: 288,
      zone: 'America/Chicago',
      northDeg: 20,
    },
    finishes: [{ id: field, name: 'Ashlar, buff', pattern: 'ashlar', color: '#c2b08c', patternDeg: 0 }],
    slabs: [
      {
        ...noParts,
        id: slab,
        name: 'Terrace',
        levelM: 0,
        outline,
        openings: [
          {
            id: draft.id('o'),
            name: 'Planter',
            kind: 'planter',
            path: draft.path(rectangle([ft(8), ft(20)], ft(6), ft(6), 'clockwise')),
          },
        ],
        thicknessM: inch(4),
        baseDepthM: inch(4),
        finishId: field,
        againstExisting: wall === undefined ? [] : [wall],
        slope: { towardDeg: 0, fall: 0.02 },
      },
    ],
    casters: [
      {
        id: draft.id('c'),
        name: 'Hall',
        kind: 'building',
        footprint,
        baseM: 0,
        eaveM: ft(14),
        overhangM: inch(18),
        roof: { form: 'flat' },
      },
    ],
    wishes: [
      {
        id: draft.id('y'),
        slabId: slab,
        kind: 'required',
        line: [onEdge(wall, 24 / 72, [ft(24), 0]), onEdge(garden, 48 / 72, [ft(24), ft(32)])],
      },
      {
        id: draft.id('y'),
        slabId: slab,
        kind: 'forbiddenArea',
        path: draft.path(rectangle([ft(40), ft(-1)], ft(16), ft(11))),
      },
      {
        id: draft.id('y'),
        slabId: slab,
        kind: 'forbiddenLine',
        line: [
          [ft(71), ft(20)],
          [ft(71), ft(25)],
        ],
      },
    ],
    capacity: { capM2: squareFeetToM2(800) },
    nextId: draft.nextId(),
  }
}
