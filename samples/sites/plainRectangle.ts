import { feetToMeters as ft, inchesToMeters as inch, squareFeetToM2 } from '../../core/units/convert'
import type { Site } from '../../shared/document/site'
import { noParts, noRows, rectangle, startDraft } from '../draft'

/** The smallest job there is: 24 × 14 ft in the open, no border, no opening, nothing that throws shade. */
export const plainRectangle = (): Site => {
  const draft = startDraft()
  const field = draft.id('f')
  const slab = draft.id('s')
  return {
    ...noRows,
    format: 'slabwright-site',
    version: 1,
    id: 'sample-plain-rectangle',
    name: 'Brandt Road pad',
    units: 'ftin',
    place: {
      name: 'W4410 Brandt Road',
      latDeg: 44.7634,
      lonDeg: -91.3907,
      elevationM: 271,
      zone: 'America/Chicago',
      northDeg: 0,
    },
    finishes: [{ id: field, name: 'Flagstone, slate gray', pattern: 'flagstone', color: '#8b8f94', patternDeg: 0 }],
    slabs: [
      {
        ...noParts,
        id: slab,
        name: 'Pad',
        levelM: 0,
        outline: draft.path(rectangle([0, 0], ft(24), ft(14))),
        thicknessM: inch(4),
        baseDepthM: inch(4),
        finishId: field,
        slope: { towardDeg: 180, fall: 0.01 },
      },
    ],
    points: [{ id: draft.id('p'), name: 'Middle', at: [ft(12), ft(7)], slabId: slab }],
    capacity: { capM2: squareFeetToM2(800) },
    nextId: draft.nextId(),
  }
}
