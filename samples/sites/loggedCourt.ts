import {
  cubicYardsToM3,
  feetToMeters as ft,
  inchesToMeters as inch,
  poundsToKg,
  squareFeetToM2,
} from '../../core/units/convert'
import type { LogEntry, LogTap, Mix, PourBegun } from '../../shared/document/day'
import type { Joint, Pour } from '../../shared/document/pours'
import type { Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import { noParts, noRows, rectangle, startDraft } from '../draft'

const celsius = (tempF: number): number => (tempF - 32) / 1.8
const laneFt = 15
const deepFt = 36

/** What the crew wrote down of one pour: clocks are local, strips a to d in placing order. */
interface Day {
  readonly number: string
  /** Of the four lanes, from the left. */
  readonly lane: number
  readonly date: string
  readonly highF: number
  readonly lowF: number
  readonly batched: string
  readonly onSite: string
  readonly placed: readonly [string, string, string, string]
  readonly ready: readonly [string, string, string, string]
  readonly stamped: readonly [string, string, string, string]
  /** Minutes in the drum, packages and when, before the last strip. */
  readonly dosed?: { readonly at: string; readonly count: number; readonly minutes: number }
  readonly loadF: number
  readonly slumpIn: number
  readonly airF: number
  readonly ticket: string
  readonly notes: string
}

const days: readonly Day[] = [
  {
    ...{ number: '1', lane: 0, date: '2026-07-14', highF: 86, lowF: 58 },
    ...{ batched: '06:24', onSite: '07:02' },
    placed: ['07:16', '07:29', '07:43', '07:56'],
    ready: ['09:00', '09:01', '09:03', '09:05'],
    stamped: ['09:17', '09:31', '09:45', '10:00'],
    ...{ loadF: 74, slumpIn: 4.5, airF: 64, ticket: '2207' },
    notes: 'Strip b was ready before the plan said. Two prints touched up by the gate.',
  },
  {
    ...{ number: '2', lane: 2, date: '2026-07-16', highF: 90, lowF: 61 },
    ...{ batched: '06:31', onSite: '07:06' },
    placed: ['07:19', '07:33', '07:45', '08:01'],
    ready: ['08:39', '08:40', '08:42', '08:44'],
    stamped: ['08:55', '09:09', '09:24', '09:38'],
    ...{ loadF: 79, slumpIn: 4, airF: 68, ticket: '2231' },
    notes: '',
  },
  {
    ...{ number: '3', lane: 1, date: '2026-07-20', highF: 94, lowF: 64 },
    ...{ batched: '06:26', onSite: '07:01' },
    placed: ['07:15', '07:28', '07:41', '08:00'],
    ready: ['08:26', '08:27', '08:29', '08:57'],
    stamped: ['08:43', '08:57', '09:11', '09:25'],
    dosed: { at: '07:45', count: 2, minutes: 32 },
    ...{ loadF: 83, slumpIn: 4.25, airF: 72, ticket: '2268' },
    notes: 'Retarder went in before d. Wind came up at nine.',
  },
]

/** Four lanes of a court: three poured and logged, the last one to come with what they taught. All of it is made up. */
export const loggedCourt = (): Site => {
  const draft = startDraft()
  const field = draft.id('f')
  const slab = draft.id('s')
  const outline = draft.path(rectangle([0, 0], ft(4 * laneFt), ft(deepFt)))
  const footprint = draft.path(rectangle([ft(-2), ft(deepFt)], ft(64), ft(26)))
  const house = draft.id('c')
  const [hardener, release, retarder] = [draft.id('m'), draft.id('m'), draft.id('m')]
  const mix: Mix = { sacksPerYd3: 6, color: 'light', minutesFromPlant: 35 }
  const joints = [1, 2, 3].map((lane): Joint => {
    const x = ft(lane * laneFt)
    const [near, far] = [outline.edges[0]!.id, outline.edges[2]!.id]
    return {
      id: draft.id('j'),
      ends: [
        { anchor: { on: 'edge', edgeId: near, t: lane / 4 }, last: [x, 0] },
        { anchor: { on: 'edge', edgeId: far, t: 1 - lane / 4 }, last: [x, ft(deepFt)] },
      ],
      locked: true,
      kind: 'construction',
    }
  })
  const seedOf = (lane: number): Pt => [ft((lane + 0.5) * laneFt), ft(deepFt / 2)]
  const made = days.map((day, i): { readonly pour: Pour; readonly entry: LogEntry } => {
    const pourId = draft.id('n')
    const entryId = draft.id('l')
    const utc = (time: string): string =>
      `${day.date}T${String(Number(time.slice(0, 2)) + 6).padStart(2, '0')}${time.slice(2)}Z`
    const taps: LogTap[] = []
    const tap = (time: string, rest: Omit<LogTap, 'id' | 'atUtc' | 'source'>) =>
      taps.push({ id: draft.id('t'), atUtc: utc(time), source: 'tap', ...rest })
    const strips = ['a', 'b', 'c', 'd'] as const
    tap(day.batched, { what: 'batched', load: 1 })
    tap(day.onSite, { what: 'onSite', load: 1 })
    strips.forEach((strip, k) => {
      if (day.dosed && k === 3)
        tap(day.dosed.at, { what: 'dosed', load: 1, count: day.dosed.count, minutes: day.dosed.minutes })
      tap(day.placed[k]!, { what: 'placed', strip })
    })
    strips.forEach((strip, k) => {
      tap(day.ready[k]!, { what: 'ready', strip })
      tap(day.stamped[k]!, { what: 'stamped', strip })
    })
    tap(day.stamped[3], { what: 'done' })
    taps.sort((a, b) => (a.atUtc < b.atUtc ? -1 : a.atUtc > b.atUtc ? 1 : 0))
    const begun: PourBegun = {
      conditions: {
        ...{ kind: 'day', date: day.date, highC: celsius(day.highF), lowC: celsius(day.lowF) },
        ...{ dewPointC: 8, windMs: 3, sky: 'sunny' },
      },
      mix,
      thicknessM: inch(4),
      strips: strips.map(name => ({
        name,
        doseMin: day.dosed && name === 'd' ? 30 : 0,
        sun: { startUtc: utc('06:00'), stepMin: 60, share: [1] },
      })),
    }
    return {
      entry: {
        ...{ id: entryId, pourId, date: day.date, begun, taps },
        loads: [
          {
            ...{ no: 1, ticket: day.ticket, tempC: celsius(day.loadF), slumpMm: day.slumpIn * 25.4 },
            airC: celsius(day.airF),
          },
        ],
        ...{ strips: [], notes: day.notes },
        used: [
          { materialId: hardener, quantity: poundsToKg(330) },
          { materialId: release, quantity: poundsToKg(20) },
          ...(day.dosed ? [{ materialId: retarder, quantity: 12 * day.dosed.count }] : []),
        ],
      },
      pour: {
        ...{ id: pourId, number: day.number, seed: seedOf(day.lane), order: i + 1, date: day.date },
        ...{ start: { time: '07:00' }, lock: { shape: false, time: false } },
        poured: {
          outline: draft.path(rectangle([ft(day.lane * laneFt), 0], ft(laneFt), ft(deepFt))),
          ...{ holes: [], areaM2: squareFeetToM2(laneFt * deepFt), logId: entryId },
        },
      },
    }
  })
  const last: Pour = {
    ...{ id: draft.id('n'), number: '4', seed: seedOf(3), order: 4, date: '2026-07-22' },
    ...{ start: { time: '07:00' }, lock: { shape: false, time: false } },
  }
  return {
    ...noRows,
    format: 'slabwright-site',
    version: 1,
    id: 'sample-logged-court',
    name: 'Juniper Row court, three pours logged',
    units: 'ftin',
    place: {
      name: '9 Juniper Row',
      ...{ latDeg: 43.6121, lonDeg: -116.3915, elevationM: 794, zone: 'America/Boise', northDeg: 10 },
    },
    finishes: [{ id: field, name: 'Seamless slate, sandstone', pattern: 'seamless', color: '#c4b08e', patternDeg: 0 }],
    slabs: [
      {
        ...noParts,
        ...{ id: slab, name: 'Court', levelM: 0, outline, thicknessM: inch(4), baseDepthM: inch(4), finishId: field },
        againstExisting: [outline.edges[2]!.id],
        slope: { towardDeg: 270, fall: 0.02 },
      },
    ],
    casters: [
      {
        ...{ id: house, name: 'House', kind: 'building', footprint, baseM: 0, eaveM: ft(10), overhangM: inch(18) },
        roof: { form: 'hip', risePer12: 4 },
      },
    ],
    capacity: { capM2: squareFeetToM2(600) },
    crew: { hands: 5, experience: 'steady', crews: 1, daysOff: [] },
    mix,
    calendar: {
      plantHours: [{ weekdays: [1, 2, 3, 4, 5], from: '06:00', to: '16:00' }],
      noiseHours: [{ weekdays: [1, 2, 3, 4, 5, 6], from: '07:00', to: '20:00' }],
      weatherDays: 1,
    },
    conditions: {
      ...{ kind: 'day', date: '2026-07-22', highC: celsius(102), lowC: celsius(74) },
      ...{ dewPointC: 9, windMs: 3, sky: 'sunny' },
    },
    accepted: [{ slabId: slab, part: 'whole', joints, pours: [...made.map(({ pour }) => pour), last] }],
    materials: [
      {
        ...{ id: hardener, name: 'Color hardener, buff', kind: 'hardener', unit: 'kg', packageSize: poundsToKg(60) },
        ratePerM2: poundsToKg(60) / squareFeetToM2(100),
      },
      {
        ...{ id: release, name: 'Release powder, smoke', kind: 'release', unit: 'kg', packageSize: poundsToKg(35) },
        ratePerM2: poundsToKg(35) / squareFeetToM2(1000),
      },
      {
        ...{ id: retarder, name: 'Slow-set bags', kind: 'retarder', unit: 'oz', packageSize: 12 },
        label: { leastPerM3: 8 / cubicYardsToM3(1), mostPerM3: 24 / cubicYardsToM3(1), leastBuysMin: 20 },
      },
    ],
    stock: [
      { materialId: hardener, onHand: poundsToKg(360) },
      { materialId: release, onHand: poundsToKg(35) },
      { materialId: retarder, onHand: 9 * 12 },
    ],
    log: made.map(({ entry }) => entry),
    nextId: draft.nextId(),
  }
}
