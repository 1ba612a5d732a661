/** Weather, light and clock of one pouring date, shared by the pours of that date. */
import type { Conditions, WeatherHour } from '../../../shared/document/day'
import type { Place } from '../../../shared/document/site'
import { err, type Finding, ok, type Result } from '../../../shared/problem'
import type { SettingOverrides } from '../../../shared/settings'
import { hoursOfConditions } from '../../concrete/dailyWeather'
import { shiftHours, type WeatherShift } from '../../concrete/shiftHours'
import { type SlabWeather, slabWeather } from '../../concrete/slabWeather'
import { daysApartMs, instantOf, type SiteDay, siteDay } from '../../sun/siteDay'
import { sunlitSpans } from '../../sun/sunlitSpans'
import { sunPosition } from '../../sun/sunPosition'
import { coversDay } from './coversDay'

export interface DayConditions {
  readonly day: SiteDay
  readonly hours: readonly WeatherHour[]
  readonly weather: SlabWeather
  readonly reweather: (shift: WeatherShift) => SlabWeather
  /** Sunrise and sunset; null on a day without. */
  readonly sunriseMs: number | null
  readonly sunsetMs: number | null
  /** 14:00 of the clock. */
  readonly rainMs: number
  /** True where the conditions are of another date. */
  readonly moved: boolean
  readonly findings: readonly Finding[]
}

const dayMs = 86_400_000

/** The hours of a table moved to the same clock of another day (an hour off where the clocks changed between). */
const movedHours = (hours: readonly WeatherHour[], from: SiteDay, to: SiteDay): readonly WeatherHour[] =>
  hours.map(row => ({
    ...row,
    startUtc: `${new Date(Date.parse(row.startUtc) + daysApartMs(from, to)).toISOString().slice(0, 19)}Z`,
  }))

/**
 * The conditions of the site taken for a date: a day in words is that day's; a table that does not reach over the date is
 * moved by whole days. Stops where the date or the weather cannot be used.
 */
export function dayConditions(
  conditions: Conditions,
  date: string,
  place: Place,
  settings: SettingOverrides | undefined,
): Result<DayConditions, readonly Finding[]> {
  const day = siteDay(date, place.zone)
  if (!day.ok) return day
  const { spans } = sunlitSpans(place, day.value, { ...settings, minSunAltitudeDeg: 0 })
  const whole = spans.length === 1 && spans[0]!.fromMs === day.value.startMs && spans[0]!.toMs === day.value.endMs
  const sunriseMs = whole ? null : (spans[0]?.fromMs ?? null)
  const sunsetMs = whole ? null : (spans.at(-1)?.toMs ?? null)
  const light = {
    ...{ fromMs: day.value.startMs, sunriseMs, sunsetMs },
    // A late pour sets into the night: the hours up to the next sunrise.
    toMs: sunriseMs === null ? day.value.endMs : Math.floor((sunriseMs + dayMs) / 3_600_000) * 3_600_000,
  }
  const made = hoursOfConditions(conditions, light, settings)
  if (!made.ok) return made
  let hours = made.value.hours
  // A forecast of several days tells each of them itself.
  const moved = conditions.date !== date && !(conditions.kind === 'hourly' && coversDay(hours, day.value))
  if (moved && conditions.kind === 'hourly') {
    const from = siteDay(conditions.date, place.zone)
    if (!from.ok) return from
    hours = movedHours(hours, from.value, day.value)
  }
  const altitudes = new Map<number, number>()
  const sunAltitudeDeg = (ms: number): number => {
    const known = altitudes.get(ms) ?? sunPosition(ms, place.latDeg, place.lonDeg).altitudeDeg
    altitudes.set(ms, known)
    return known
  }
  const make = (rows: readonly WeatherHour[]): ReturnType<typeof slabWeather> =>
    slabWeather({
      ...{ hours: rows, sunAltitudeDeg, elevationM: place.elevationM },
      ...(settings === undefined ? {} : { settings }),
    })
  const weather = make(hours)
  if (!weather.ok) return err(weather.error)
  const rain = instantOf(date, '14:00', undefined, place.zone)
  return ok({
    day: day.value,
    hours,
    weather: weather.value,
    reweather: shift => {
      const shifted = make(shiftHours(hours, shift))
      // A shift takes air out of the range of weather at most: then the day as it is.
      return shifted.ok ? shifted.value : weather.value
    },
    sunriseMs,
    sunsetMs,
    rainMs: rain.ok ? rain.value.ms : day.value.startMs + 14 * 3_600_000,
    moved,
    findings: [...made.value.findings, ...weather.value.findings],
  })
}
