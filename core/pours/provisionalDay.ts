/** When a pour is placed and stamped as long as its day is not planned. */
import { DateTime } from 'luxon'
import type { Calendar } from '../../shared/document/day'
import { type SettingOverrides, settingValue } from '../../shared/settings'
import { instantOf, type SiteDay } from '../sun/siteDay'

/** What a split needs of a day; a day plan fills it as well as the settings do. */
export interface PourClock {
  /** First concrete, UTC milliseconds. */
  readonly startMs: number
  /** Area placed in an hour, > 0. */
  readonly placeM2H: number
  /** From placing a spot to its first mat and to its last, hours. */
  readonly stampFromH: number
  readonly stampToH: number
}

/** The plant's first hour of that weekday, else the setting; one screed; stamping by the settings. */
export function provisionalDay(
  day: SiteDay,
  calendar: Calendar | undefined,
  settings: SettingOverrides | undefined,
): PourClock {
  const { weekday } = DateTime.fromISO(day.date, { zone: 'utc' })
  const opening = (calendar?.plantHours ?? []).filter(({ weekdays }) => weekdays.includes(weekday)).map(h => h.from)
  const usualMin = Math.round(60 * settingValue(settings, 'firstTruckH'))
  const usual = `${String(Math.floor(usualMin / 60)).padStart(2, '0')}:${String(usualMin % 60).padStart(2, '0')}`
  const start = instantOf(day.date, opening.toSorted()[0] ?? usual, undefined, day.zone)
  return {
    startMs: start.ok ? start.value.ms : day.startMs + usualMin * 60_000,
    placeM2H: settingValue(settings, 'strikeOffMostM2H'),
    stampFromH: settingValue(settings, 'stampFromH'),
    stampToH: settingValue(settings, 'stampToH'),
  }
}

/** From first concrete to the last mat of a pour: the last spot gets its first mat, and the first spot its last. */
export const openHours = (areaM2: number, { placeM2H, stampFromH, stampToH }: PourClock): number =>
  Math.max(stampToH, areaM2 / placeM2H + stampFromH)
