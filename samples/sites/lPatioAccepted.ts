import { feetToMeters as ft, poundsToKg, squareFeetToM2 } from '../../core/units/convert'
import type { Pour } from '../../shared/document/pours'
import type { Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import { startDraft } from '../draft'
import { lPatio } from './lPatio'

/** The L patio with three accepted pours: a joint into the re-entrant corner and a tee down to the house. */
export const lPatioAccepted = (): Site => {
  const site = lPatio()
  const draft = startDraft(site.nextId)
  const slab = site.slabs[0]
  if (slab === undefined) throw new Error('the L patio has no slab')
  const { vertices, edges } = slab.outline
  const across = draft.id('j')
  const pour = (number: string, seed: Pt, order: number, date: string, shape: boolean): Pour => ({
    id: draft.id('n'),
    number,
    seed,
    order,
    date,
    start: { time: '07:00' },
    lock: { shape, time: false },
  })
  const hardener = draft.id('m')
  const release = draft.id('m')
  return {
    ...site,
    id: 'sample-l-patio-accepted',
    name: 'Alder Court patio, three pours',
    mix: { sacksPerYd3: 6, color: 'medium', minutesFromPlant: 35 },
    calendar: {
      plantHours: [{ weekdays: [1, 2, 3, 4, 5], from: '06:00', to: '16:00' }],
      noiseHours: [{ weekdays: [1, 2, 3, 4, 5, 6], from: '07:00', to: '20:00' }],
      finishBy: '2026-07-31',
      weatherDays: 2,
    },
    conditions: { kind: 'day', date: '2026-07-21', highC: 33, lowC: 17, dewPointC: 8, windMs: 3, sky: 'sunny' },
    accepted: [
      {
        slabId: slab.id,
        part: 'whole',
        joints: [
          {
            id: across,
            ends: [
              { anchor: { on: 'edge', edgeId: edges[5]?.id ?? '', t: 22 / 42 }, last: [0, ft(20)] },
              { anchor: { on: 'vertex', vertexId: vertices[3]?.id ?? '' }, last: [ft(28), ft(20)] },
            ],
            locked: true,
            kind: 'construction',
          },
          {
            id: draft.id('j'),
            ends: [
              { anchor: { on: 'edge', edgeId: edges[0]?.id ?? '', t: 22 / 50 }, last: [ft(22), 0] },
              { anchor: { on: 'joint', jointId: across, t: 22 / 28 }, last: [ft(22), ft(20)] },
            ],
            locked: false,
            kind: 'construction',
          },
        ],
        pours: [
          pour('1', [ft(12), ft(36)], 1, '2026-07-21', false),
          pour('2', [ft(11), ft(10)], 2, '2026-07-22', false),
          pour('3', [ft(38), ft(10)], 3, '2026-07-23', true),
        ],
      },
    ],
    materials: [
      {
        id: hardener,
        name: 'Color hardener, sandstone',
        kind: 'hardener',
        unit: 'kg',
        packageSize: poundsToKg(60),
        ratePerM2: poundsToKg(60) / squareFeetToM2(100),
        lot: '26-114',
      },
      {
        id: release,
        name: 'Release powder, walnut',
        kind: 'release',
        unit: 'kg',
        packageSize: poundsToKg(35),
        ratePerM2: poundsToKg(35) / squareFeetToM2(1000),
      },
    ],
    prices: [{ id: draft.id('h'), name: 'Ashlar, placed and stamped', per: 'ft²', amount: 18.5, currency: 'USD' }],
    stock: [
      { materialId: hardener, onHand: poundsToKg(240), lot: '26-114' },
      { materialId: release, onHand: poundsToKg(35) },
    ],
    nextId: draft.nextId(),
  }
}
