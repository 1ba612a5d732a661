/** Between which instants a day's first truck may come, and by when its last print must be done. */
import type { Site } from '../../../shared/document/site'
import { settingValue } from '../../../shared/settings'
import { atClock, type SiteDay, wholeHours } from '../../sun/siteDay'
import { dayNumber, hoursOn, weekdayOf } from '../order/workCalendar'
import type { DayConditions } from './dayConditions'

const minuteMs = 60_000
/** Work goes on a little before sunrise and after sunset: civil twilight is about half an hour. */
export const twilightMs = 30 * minuteMs

export interface WorkSpan {
  /** The usual first truck: the plant's first hour, else the setting. */
  readonly usualMs: number
  /** First truck by plant hours, light and noise. */
  readonly fromMs: number
  readonly toMs: number
  /** Quiet hour or dark, the earlier. */
  readonly doneByMs: number
  readonly quietMs: number | null
  readonly plant: { readonly fromMs: number; readonly toMs: number } | null
}

/** Hours of the calendar on a date, bounded by light where there is any. */
export function workSpan(
  { calendar, settings }: Pick<Site, 'calendar' | 'settings'>,
  date: string,
  conditions: DayConditions,
): WorkSpan {
  const weekday = weekdayOf(dayNumber(date))
  const at = (min: number): number => atClock(conditions.day, min)
  const plant = hoursOn(calendar?.plantHours ?? [], weekday)
  const noise = hoursOn(calendar?.noiseHours ?? [], weekday)
  const { sunriseMs, sunsetMs } = conditions
  const usualMs = at(plant?.fromMin ?? settingValue(settings, 'firstTruckH') * 60)
  const light = sunriseMs === null ? Number.NEGATIVE_INFINITY : sunriseMs - twilightMs
  const dark = sunsetMs === null ? Number.POSITIVE_INFINITY : sunsetMs + twilightMs
  const quietMs = noise ? at(noise.toMin) : null
  const earliestMs = plant ? at(plant.fromMin) : Math.min(usualMs, at(5 * 60))
  return {
    usualMs,
    fromMs: Math.max(earliestMs, light, noise ? at(noise.fromMin) : Number.NEGATIVE_INFINITY),
    toMs: at(plant?.toMin ?? settingValue(settings, 'pourDoneH') * 60),
    doneByMs: Math.min(quietMs ?? Number.POSITIVE_INFINITY, dark),
    quietMs,
    plant: plant ? { fromMs: at(plant.fromMin), toMs: at(plant.toMin) } : null,
  }
}

/** Whole hours of the clock from the first truck that may come to the last, twelve at most. */
export const hourlyStarts = ({ fromMs, toMs }: WorkSpan, day: SiteDay): number[] =>
  wholeHours(day)
    .filter(ms => ms >= fromMs && ms <= toMs)
    .slice(0, 12)
