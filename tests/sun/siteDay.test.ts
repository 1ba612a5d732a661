import { describe, expect, it } from 'vitest'
import { isCalendarDate } from '../../core/document/calendarDate'
import {
  atClock,
  clockMin,
  dayInstants,
  daysApartMs,
  instantOf,
  isoWithOffset,
  siteDay,
  wholeHours,
} from '../../core/sun/siteDay'
import { dayOf } from './fixtures'

const hours = (date: string, zone: string): number => (dayOf(date, zone).endMs - dayOf(date, zone).startMs) / 3_600_000

describe('a site day runs from midnight to midnight of its zone', () => {
  // Clock changes: US Energy Policy Act of 2005, section 110 (second Sunday of March, first Sunday of November); Lord Howe
  // half hour and Samoa's missing 30 December 2011: IANA time zone database.
  it.each([
    ['2026-06-15', 'America/Denver', 24],
    ['2026-03-08', 'America/Denver', 23],
    ['2026-11-01', 'America/Denver', 25],
    ['2026-03-08', 'America/Phoenix', 24],
    ['2026-04-05', 'Australia/Lord_Howe', 24.5],
    ['2026-10-04', 'Australia/Lord_Howe', 23.5],
    // Clocks that change at midnight: Cuba skips and repeats the hour from 0:00, Brazil repeated the one from 23:00.
    ['2026-03-08', 'America/Havana', 23],
    ['2026-10-31', 'America/Havana', 24],
    ['2026-11-01', 'America/Havana', 25],
    ['2018-02-17', 'America/Sao_Paulo', 25],
    ['2018-11-04', 'America/Sao_Paulo', 23],
    ['2011-12-29', 'Pacific/Apia', 24],
    ['2026-06-15', 'UTC', 24],
    ['2026-06-15', 'Asia/Kathmandu', 24],
  ])('%s in %s has %s hours', (date, zone, length) => {
    expect(hours(date, zone)).toBe(length)
  })

  it('follows on the day before without a gap, the whole year through', () => {
    for (const zone of ['America/Denver', 'America/Havana', 'Australia/Lord_Howe', 'Africa/Casablanca']) {
      let endMs: number | null = null
      for (let n = 0; n < 365; n++) {
        const day = dayOf(new Date(Date.UTC(2026, 0, 1 + n)).toISOString().slice(0, 10), zone)
        if (endMs !== null) expect([day.date, day.startMs]).toEqual([day.date, endMs])
        endMs = day.endMs
      }
    }
  })

  it('does not exist where the calendar jumped over it', () => {
    expect(siteDay('2011-12-30', 'Pacific/Apia').ok).toBe(false)
  })

  it('steps evenly through the day and stops before the next', () => {
    for (const [date, count] of [
      ['2026-06-15', 96],
      ['2026-03-08', 92],
      ['2026-11-01', 100],
    ] as const) {
      const day = dayOf(date)
      const instants = dayInstants(day, 15)
      expect(instants).toHaveLength(count)
      expect(instants[0]).toBe(day.startMs)
      expect(instants.at(-1)! + 15 * 60_000).toBe(day.endMs)
    }
  })

  it('counts whole hours by the clock: the skipped one is missing, the repeated one comes twice', () => {
    const spring = wholeHours(dayOf('2026-03-08')).map(ms => isoWithOffset(ms, 'America/Denver'))
    expect(spring).toHaveLength(23)
    expect(spring.slice(1, 3)).toEqual(['2026-03-08T01:00:00-07:00', '2026-03-08T03:00:00-06:00'])
    const fall = wholeHours(dayOf('2026-11-01')).map(ms => isoWithOffset(ms, 'America/Denver'))
    expect(fall).toHaveLength(25)
    expect(fall.slice(1, 3)).toEqual(['2026-11-01T01:00:00-06:00', '2026-11-01T01:00:00-07:00'])
  })

  // Changes of 2026, IANA time zone database: Denver 8 March 2:00 forward and 1 November 2:00 back by an hour, Lord Howe
  // 4 October 2:00 forward by half an hour; India keeps +5:30 the whole year.
  it('tells an hour of the clock from hours since midnight where the clocks change', () => {
    const iso = (date: string, zone: string, min: number) => isoWithOffset(atClock(dayOf(date, zone), min), zone)
    expect(iso('2026-06-15', 'America/Denver', 7 * 60)).toBe('2026-06-15T07:00:00-06:00')
    expect(iso('2026-03-08', 'America/Denver', 7 * 60)).toBe('2026-03-08T07:00:00-06:00')
    expect(iso('2026-03-08', 'America/Denver', 150)).toBe('2026-03-08T03:30:00-06:00')
    expect(iso('2026-11-01', 'America/Denver', 7 * 60)).toBe('2026-11-01T07:00:00-07:00')
    expect(iso('2026-11-01', 'America/Denver', 90)).toBe('2026-11-01T01:30:00-06:00')
    expect(iso('2026-10-04', 'Australia/Lord_Howe', 7 * 60)).toBe('2026-10-04T07:00:00+11:00')
    expect(iso('2026-07-21', 'Asia/Kolkata', 7 * 60)).toBe('2026-07-21T07:00:00+05:30')
    for (const date of ['2026-03-08', '2026-06-15', '2026-11-01']) {
      const day = dayOf(date)
      expect([atClock(day, 0), atClock(day, 1440)]).toEqual([day.startMs, day.endMs])
      for (const min of [4 * 60, 7 * 60, 23 * 60 + 59]) expect(clockMin(day, atClock(day, min))).toBe(min)
    }
    // The sun of a day is moved by whole days, however many hours the clocks skip or repeat.
    expect(daysApartMs(dayOf('2026-10-30'), dayOf('2026-11-02'))).toBe(3 * 86_400_000)
    expect(daysApartMs(dayOf('2026-03-09'), dayOf('2026-03-07'))).toBe(-2 * 86_400_000)
  })

  it('knows which dates and zones exist', () => {
    expect(['2026-02-28', '2024-02-29', '2026-12-31'].every(isCalendarDate)).toBe(true)
    expect(['2026-02-31', '2026-02-29', '2026-13-01', '2026-1-1', ''].some(isCalendarDate)).toBe(false)
    expect(siteDay('2026-02-31', 'America/Denver')).toEqual({
      ok: false,
      error: [{ code: 'badDate', severity: 'stop', values: { found: '2026-02-31' } }],
    })
    expect(siteDay('2026-02-28', 'Mars/Olympus')).toEqual({
      ok: false,
      error: [{ code: 'unknownZone', severity: 'stop', values: { found: 'Mars/Olympus' }, field: '/place/zone' }],
    })
  })
})

describe('a wall time becomes one instant', () => {
  const iso = (date: string, time: string, fold?: 0 | 1): readonly [string, readonly string[]] => {
    const instant = instantOf(date, time, fold, 'America/Denver')
    if (!instant.ok) return ['', instant.error.map(({ code }) => code)]
    return [isoWithOffset(instant.value.ms, 'America/Denver'), instant.value.findings.map(({ code }) => code)]
  }

  it('keeps an ordinary hour, whatever the fold', () => {
    expect(iso('2026-06-15', '07:30')).toEqual(['2026-06-15T07:30:00-06:00', []])
    expect(iso('2026-06-15', '07:30', 1)).toEqual(['2026-06-15T07:30:00-06:00', []])
    expect(iso('2026-03-08', '00:30')).toEqual(['2026-03-08T00:30:00-07:00', []])
    expect(iso('2026-11-01', '23:00')).toEqual(['2026-11-01T23:00:00-07:00', []])
  })

  it('moves a missing hour forward and says so', () => {
    expect(iso('2026-03-08', '02:30')).toEqual(['2026-03-08T03:30:00-06:00', ['hourMissing']])
  })

  it('tells the passes of a repeated hour apart', () => {
    expect(iso('2026-11-01', '01:30')).toEqual(['2026-11-01T01:30:00-06:00', []])
    expect(iso('2026-11-01', '01:30', 0)).toEqual(['2026-11-01T01:30:00-06:00', []])
    expect(iso('2026-11-01', '01:30', 1)).toEqual(['2026-11-01T01:30:00-07:00', []])
  })

  it('refuses what is no time or no date', () => {
    expect(iso('2026-06-15', '24:00')).toEqual(['', ['badTime']])
    expect(iso('2026-06-31', '07:00')).toEqual(['', ['badDate']])
  })
})
