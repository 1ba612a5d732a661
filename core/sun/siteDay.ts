/** The calendar day of a site: from its midnight to the next, 23, 24 or 25 hours, in UTC instants. */
import { DateTime } from 'luxon'
import { err, type Finding, ok, type Result } from '../../shared/problem'
import { isCalendarDate } from '../document/calendarDate'
import { isKnownZone } from '../document/isKnownZone'

export interface SiteDay {
  /** `YYYY-MM-DD` */
  readonly date: string
  /** IANA name. */
  readonly zone: string
  readonly startMs: number
  /** First instant of the next day. */
  readonly endMs: number
}

const minuteMs = 60_000
const dayMs = 24 * 60 * minuteMs

const offsetMs = (ms: number, zone: string): number => DateTime.fromMillis(ms, { zone }).offset * minuteMs

/** The instants at which the site's clock shows a wall time, in order: one, two in a repeated hour, none in a missing
 * one. `wallMs` = the wall time read as if it were UTC. */
const instantsShowing = (wallMs: number, zone: string): number[] =>
  [...new Set([wallMs - dayMs, wallMs + dayMs].map(ms => offsetMs(ms, zone)))]
    .map(offset => wallMs - offset)
    .filter(ms => ms + offsetMs(ms, zone) === wallMs)
    .sort((a, b) => a - b)

/** Where the clocks skip a wall time: moved forward by the gap. */
const afterGap = (wallMs: number, zone: string): number => wallMs - offsetMs(wallMs - dayMs, zone)

const firstInstant = (date: string, zone: string): number => {
  const [midnight] = instantsShowing(DateTime.fromISO(date, { zone: 'utc' }).toMillis(), zone)
  return midnight ?? DateTime.fromISO(date, { zone }).startOf('day').toMillis()
}

/**
 * The day [00:00, next 00:00) of the zone; where the clocks skip midnight it starts with the first hour that exists,
 * where they repeat it with the first pass. Fails with `badDate` (also a day that the zone skipped) or `unknownZone`.
 */
export const siteDay = (date: string, zone: string): Result<SiteDay, readonly Finding[]> => {
  const badDate: Finding = { code: 'badDate', severity: 'stop', values: { found: date } }
  const findings: Finding[] = []
  if (!isCalendarDate(date)) findings.push(badDate)
  if (!isKnownZone(zone))
    findings.push({ code: 'unknownZone', severity: 'stop', values: { found: zone }, field: '/place/zone' })
  if (findings.length > 0) return err(findings)
  const startMs = firstInstant(date, zone)
  if (DateTime.fromMillis(startMs, { zone }).toISODate() !== date) return err([badDate])
  const next = DateTime.fromISO(date, { zone: 'utc' }).plus({ days: 1 }).toISODate() ?? ''
  return ok({ date, zone, startMs, endMs: firstInstant(next, zone) })
}

/** Equal steps of UTC from the day's first instant, the next midnight left out. `stepMin` > 0. */
export const dayInstants = (day: SiteDay, stepMin: number): number[] => {
  const count = Math.ceil((day.endMs - day.startMs) / (stepMin * minuteMs))
  return Array.from({ length: count }, (_, step) => day.startMs + step * stepMin * minuteMs)
}

/** The instants of the day at which the site's clock shows a full hour; a repeated hour comes twice. */
export const wholeHours = (day: SiteDay): number[] => {
  const hours: number[] = []
  for (let ms = day.startMs; ms < day.endMs; ms += 15 * minuteMs)
    if (DateTime.fromMillis(ms, { zone: day.zone }).minute === 0) hours.push(ms)
  return hours
}

/**
 * The instant at which the clock of the day shows so many minutes since midnight, 0 to 1440: also where the clocks change
 * that day. In a repeated hour the first pass; a missing hour moves forward by the gap; never past the day's end.
 */
export const atClock = ({ date, zone, endMs }: SiteDay, clockMin: number): number => {
  const wallMs = Date.parse(`${date}T00:00:00Z`) + clockMin * minuteMs
  const [first] = instantsShowing(wallMs, zone)
  return Math.min(endMs, first ?? afterGap(wallMs, zone))
}

const noonMin = 12 * 60

/** The same back: minutes since midnight by the clock that the day keeps from noon on, also past its end. */
export const clockMin = (day: SiteDay, ms: number): number => noonMin + (ms - atClock(day, noonMin)) / minuteMs

/** From a day to another by the sun, which knows no clock: whole days of 24 hours. */
export const daysApartMs = (from: SiteDay, to: SiteDay): number =>
  Math.round((to.startMs - from.startMs) / dayMs) * dayMs

/** ISO 8601 with the offset in force, to the second: `2026-06-15T07:00:00-06:00`. */
export const isoWithOffset = (ms: number, zone: string): string =>
  DateTime.fromMillis(ms, { zone }).toISO({ suppressMilliseconds: true }) ?? ''

export interface WallInstant {
  readonly ms: number
  readonly findings: readonly Finding[]
}

/**
 * The instant of a wall time.
 * @param time `HH:MM`
 * @param fold 1 = the second pass of a repeated hour; no effect on other hours
 * A missing hour moves forward by the gap and leaves the note `hourMissing`. Fails with `badDate`, `badTime` or
 * `unknownZone`.
 */
export const instantOf = (
  date: string,
  time: string,
  fold: 0 | 1 | undefined,
  zone: string,
): Result<WallInstant, readonly Finding[]> => {
  if (!/^([01]\d|2[0-3]):[0-5]\d$/.test(time))
    return err([{ code: 'badTime', severity: 'stop', values: { found: time } }])
  const day = siteDay(date, zone)
  if (!day.ok) return day
  const wallMs = DateTime.fromISO(`${date}T${time}`, { zone: 'utc' }).toMillis()
  const shown = instantsShowing(wallMs, zone)
  const chosen = fold === 1 ? shown.at(-1) : shown[0]
  if (chosen !== undefined) return ok({ ms: chosen, findings: [] })
  const ms = afterGap(wallMs, zone)
  const moved = DateTime.fromMillis(ms, { zone }).toFormat('HH:mm')
  return ok({
    ms,
    findings: [{ code: 'hourMissing', severity: 'note', values: { date, time, moved } }],
  })
}
