import { describe, expect, it } from 'vitest'
import type { PourDayPlan } from '../../core/pours/day/pourDay'
import { printMeasures } from '../../core/units/printMeasures'
import { parseSpan, spanText } from '../../renderer/atSlab/parseSpan'
import { dateAt, isPoured, pourToday, underWay } from '../../renderer/atSlab/pourToday'
import { parseReading, readings } from '../../renderer/atSlab/readings'
import { tellTap } from '../../renderer/atSlab/tapWords'
import { lPatioAccepted } from '../../samples/sites/lPatioAccepted'
import { type LogTap, tapKinds } from '../../shared/document/day'
import type { Site } from '../../shared/document/site'

const site = lPatioAccepted()
const [one, two, three] = site.accepted[0]!.pours
const days = [one!, two!, three!].map(({ id, number, date }) => ({
  pourId: id,
  number,
  date,
})) as unknown as PourDayPlan[]
const at = (iso: string): number => Date.parse(iso)

const logged = (pourId: string): Site => ({
  ...site,
  log: [
    {
      ...{ id: 'l900', pourId, date: '2026-07-22', loads: [], strips: [], used: [], notes: '' },
      taps: [{ id: 't901', what: 'batched', load: 1, atUtc: '2026-07-22T12:30Z', source: 'tap' }],
    },
  ],
})

describe('the pour that the screen opens with', () => {
  it('is today’s, by the clock of the yard', () => {
    expect(pourToday(site, days, at('2026-07-22T18:00:00Z'))?.number).toBe('2')
    // 5:30 UTC is still the evening before in the yard.
    expect(dateAt(at('2026-07-23T05:30:00Z'), site.place.zone)).toBe('2026-07-22')
    expect(pourToday(site, days, at('2026-07-23T05:30:00Z'))?.number).toBe('2')
  })

  it('is the one under way before today’s, and the first open one on any other day', () => {
    expect(pourToday(logged(two!.id), days, at('2026-07-23T15:00:00Z'))?.number).toBe('2')
    expect(underWay(site, days)).toBeUndefined()
    expect(pourToday(site, days, at('2026-09-01T15:00:00Z'))?.number).toBe('1')
  })

  it('is none that is poured, and none that was not chosen', () => {
    const poured = { outline: { id: 'r1', vertices: [], edges: [] }, holes: [], areaM2: 1, logId: 'l900' }
    const ended: Site = {
      ...logged(one!.id),
      accepted: site.accepted.map(part => ({
        ...part,
        pours: part.pours.map(pour => (pour.id === one!.id ? { ...pour, poured } : pour)),
      })),
    }
    expect(isPoured(ended, one!.id)).toBe(true)
    expect(pourToday(ended, days, at('2026-07-21T15:00:00Z'))?.number).toBe('2')
    expect(pourToday({ ...site, accepted: [] }, days, at('2026-07-21T15:00:00Z'))).toBeUndefined()
  })
})

describe('what is measured of a load', () => {
  const of = (name: string) => readings.find(reading => reading.of === name)!

  it('is read as it is printed, in either system, and with its own unit', () => {
    for (const units of ['ftin', 'metric'] as const)
      for (const reading of readings)
        for (let value = Math.max(0, reading.least); value < reading.most / 2; value += reading.step[units] * 7) {
          const kept = reading.round(value, units)
          expect(parseReading(reading, reading.print(kept, units), units)).toBeCloseTo(kept, 6)
        }
    expect(parseReading(of('tempC'), '84', 'ftin')).toBeCloseTo(28.889, 3)
    expect(parseReading(of('tempC'), '29 °C', 'ftin')).toBe(29)
    expect(parseReading(of('tempC'), '29', 'metric')).toBe(29)
    expect(parseReading(of('slumpMm'), '4.5″', 'metric')).toBeCloseTo(114.3, 9)
    expect(parseReading(of('slumpMm'), '10 cm', 'ftin')).toBe(100)
    expect(parseReading(of('waterL'), '5', 'ftin')).toBeCloseTo(18.927, 3)
  })

  it('is nothing where the box is empty, and refused where it cannot be', () => {
    expect(parseReading(of('tempC'), ' ', 'ftin')).toBeUndefined()
    for (const typed of ['hot', '840', '5 in', '-80', '1e3', '+', '8 4'])
      expect(parseReading(of('tempC'), typed, 'ftin')).toBeNull()
    expect(parseReading(of('slumpMm'), '−2', 'ftin')).toBeNull()
  })
})

describe('the words of a tap', () => {
  const print = printMeasures('ftin')
  const tap = (of: Partial<LogTap>): LogTap => ({
    ...{ id: 't1', what: 'done', atUtc: '2026-07-21T13:00Z', source: 'tap' },
    ...of,
  })

  it('are different for every kind, and never name what is not there', () => {
    const told = tapKinds.map(what =>
      tellTap(tap({ what, load: 2, strip: 'c', minutes: 15, count: 2, comeM: 3.048, outM3: 1 }), print),
    )
    expect(new Set(told).size).toBe(tapKinds.length)
    for (const words of told) expect(words).not.toMatch(/undefined|NaN/)
  })

  it('count packages, and say when none went in', () => {
    expect(tellTap(tap({ what: 'dosed', load: 1, count: 1, minutes: 31.4 }), print)).toBe(
      'Load 1: 1 package of retarder in, 31 min',
    )
    expect(tellTap(tap({ what: 'dosed', load: 1, count: 0, minutes: 0 }), print)).toBe('Load 1: no retarder')
    expect(tellTap(tap({ what: 'rain' }), print)).toBe('No rain after all')
    expect(tellTap(tap({ comeM: 6.096 }), print)).toBe('Stopped at 20′ 0″')
  })
})

describe('a time that is typed', () => {
  it('is hours and minutes, or minutes', () => {
    expect(['2:45', '2 h 45 min', '165', '165 min', '3h', ' '].map(parseSpan)).toEqual([
      165,
      165,
      165,
      165,
      180,
      undefined,
    ])
    expect(['soon', '0', '2:75', '-5'].map(parseSpan)).toEqual([null, null, null, null])
  })

  it('comes back as it is read', () => {
    for (const min of [5, 59, 60, 165, 300]) expect(parseSpan(spanText(min))).toBe(min)
    expect(spanText(undefined)).toBe('')
  })
})
