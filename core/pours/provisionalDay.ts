/** When a pour is placed and stamped, as long as crew and weather do not tell. */
import { DateTime } from 'luxon'
import type { Calendar } from '../../shared/document/day'
import { type SettingOverrides, settingValue } from '../../shared/settings'
import { instantOf, type SiteDay } from '../sun/siteDay'

/**
 * What a split needs of a day. Where crew and weather are known `typicalClock` fills it from the model of the day, else
 * the settings do (`provisionalDay`).
 */
export interface PourClock {
  /** First concrete, UTC milliseconds. */
  readonly startMs: number
  /** Area placed in an hour, > 0. */
  readonly placeM2H: number
  /** From the first concrete to the first mat, hours. */
  readonly firstMatH: number
  /** From placing a spot to its last mat where that is soonest, hours: no pour is open shorter. */
  readonly leastOpenH: number
  /** From the last concrete to the last mat, hours. */
  readonly lastMatH: number
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
    firstMatH: settingValue(settings, 'stampFromH'),
    leastOpenH: settingValue(settings, 'stampToH'),
    lastMatH: settingValue(settings, 'stampFromH'),
  }
}

/** From first concrete to the last mat of a pour of this area, hours. */
export const openHours = (areaM2: number, { placeM2H, leastOpenH, lastMatH }: PourClock): number =>
  Math.max(leastOpenH, areaM2 / placeM2H + lastMatH)
