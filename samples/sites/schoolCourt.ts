import { feetToMeters as ft, squareFeetToM2 } from '../../core/units/convert'
import type { Building } from '../../shared/document/caster'
import type { Site } from '../../shared/document/site'
import { courtFt, drawCourt, drawTree } from '../court'
import { noRows, rectangle, startDraft } from '../draft'

const schoolDays = [1, 2, 3, 4, 5]

/** A school court of 12,000 ft² net, wings on three sides, five doors to keep open, thirteen trees. */
export const schoolCourt = (): Site => {
  const draft = startDraft()
  const { slab, finishes } = drawCourt(draft)
  const wing = (name: string, at: readonly [number, number], widthFt: number, depthFt: number, eaveFt: number) => ({
    id: draft.id('c'),
    name,
    kind: 'building' as const,
    footprint: draft.path(rectangle([ft(at[0]), ft(at[1])], ft(widthFt), ft(depthFt))),
    baseM: 0,
    eaveM: ft(eaveFt),
    overhangM: 0,
    roof: { form: 'flat' as const },
  })
  const east: Building = wing('East wing', [124, 0], 50, 100, 14)
  const door = (name: string, at: readonly [number, number], widthFt: number) => ({
    id: draft.id('g'),
    name,
    at: [ft(at[0]), ft(at[1])] as const,
    widthM: ft(widthFt),
    open: [
      { weekdays: schoolDays, from: '07:30', to: '08:15' },
      { weekdays: schoolDays, from: '14:30', to: '15:30' },
    ],
  })
  return {
    ...noRows,
    format: 'slabwright-site',
    version: 1,
    id: 'sample-school-court',
    name: 'Piedra Alta school court',
    units: 'ftin',
    place: {
      name: 'Piedra Alta school',
      latDeg: 35.0617,
      lonDeg: -106.5714,
      elevationM: 1624,
      zone: 'America/Denver',
      northDeg: -5,
    },
    finishes,
    slabs: [slab],
    casters: [
      wing('North wing, two stories', [-50, 100], 224, 60, 28),
      wing('West wing', [-50, 0], 50, 100, 14),
      { ...east, roof: { form: 'gable', risePer12: 3, ridgeAlongEdge: east.footprint.edges[1]?.id ?? '' } },
      ...courtFt.planters.map(({ at: [x, y], side }, i) =>
        drawTree(draft, `Planter tree ${i + 1}`, [x + side / 2, y + side / 2], side === 12 ? 32 : 22, side),
      ),
      ...[-44, -22, 2, 26, 98, 120, 144, 168].map((xFt, i) => drawTree(draft, `Row tree ${i + 1}`, [xFt, -14], 34, 13)),
    ],
    points: [
      { id: draft.id('p'), name: 'Stage', at: [ft(62), ft(80)], slabId: slab.id },
      { id: draft.id('p'), name: 'South gate', at: [ft(62), ft(3)], slabId: slab.id },
    ],
    access: {
      truckSpots: [
        { id: draft.id('t'), at: [ft(50), ft(-24)] },
        { id: draft.id('t'), at: [ft(76), ft(-24)] },
      ],
      pumpSpots: [{ id: draft.id('u'), at: [ft(62), ft(-30)] }],
      washouts: [{ id: draft.id('w'), at: [ft(150), ft(-70)] }],
      noGo: [draft.path(rectangle([ft(-50), ft(-60)], ft(40), ft(30)))],
      chuteReachM: ft(16),
      ways: [
        door('North doors', [62, 100], 8),
        door('Library door', [18, 100], 6),
        door('West door', [0, 50], 6),
        door('East door', [124, 50], 6),
        door('South gate', [62, 0], 12),
      ],
    },
    capacity: { capM2: squareFeetToM2(800) },
    mix: { sacksPerYd3: 6, color: 'medium', minutesFromPlant: 25 },
    crew: { hands: 7, experience: 'seasoned', crews: 1, daysOff: ['2026-07-03'] },
    calendar: {
      plantHours: [{ weekdays: schoolDays, from: '06:00', to: '16:00' }],
      noiseHours: [{ weekdays: [1, 2, 3, 4, 5, 6], from: '07:00', to: '19:00' }],
      finishBy: '2026-08-07',
      weatherDays: 4,
    },
    nextId: draft.nextId(),
  }
}
