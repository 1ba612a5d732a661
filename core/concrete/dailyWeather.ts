/** Hours of a day from what people know of it: high, low, dew point, wind and the sky in a word. */
import type { Conditions, WeatherHour } from '../../shared/document/day'
import { err, type Finding, ok, type Result } from '../../shared/problem'
import { type SettingOverrides, settingValue } from '../../shared/settings'
import { humidityFromDewPoint } from './humidity'

export type DayInWords = Extract<Conditions, { kind: 'day' }>

export interface DayLight {
  /** First instant of the site's day. */
  readonly fromMs: number
  /** Of the next: 23, 24 or 25 h on; or later, up to the next sunrise, for a slab that sets through the night. */
  readonly toMs: number
  /** Null on a day without sunrise or sunset. */
  readonly sunriseMs: number | null
  readonly sunsetMs: number | null
}

export interface DailyCurve {
  readonly lowC: number
  readonly highC: number
  /** Clock hours of the same day. */
  readonly sunriseH: number
  readonly sunsetH: number
  /** Hours from noon of the sun to the high. */
  readonly highAfterNoonH: number
  /** Hours from sunrise to the low; negative before it. */
  readonly lowAfterSunriseH: number
  /** Decay through the night. */
  readonly nightDecay: number
}

/**
 * Air at 1.5 m, mean of five places in North Carolina: M. Wann, D. Yen and H. J. Gold, Agricultural and Forest
 * Meteorology 34, 1985, who fitted the curve of Parton and Logan again. Those of 1981 for Denver (1.86, −0.17, 2.2) put
 * the low before sunrise: mornings up to a third of the daily range warmer than the table of ASHRAE Fundamentals.
 */
export const airCoefficients = { highAfterNoonH: 2.59, lowAfterSunriseH: 1.55, nightDecay: 2.2 } as const

/**
 * Air at an hour of the day: a sine from the low to the high and on to sunset, then an exponential fall to the next low.
 * Source: W. J. Parton and J. A. Logan, A model for diurnal variation in soil and air temperature, Agricultural
 * Meteorology 23, 1981. Theirs ends the night a little above the low; here the fall is stretched to end on it, so that
 * the curve has no step. With the coefficients above it stays within 8 % of the range of the daily table of ASHRAE
 * Fundamentals by day.
 *
 * @param atH clock hour, 0…24 (and a little beyond on long days)
 */
export function airOfDay(curve: DailyCurve, atH: number): number {
  const { lowC, highC, sunriseH, sunsetH, highAfterNoonH, lowAfterSunriseH, nightDecay } = curve
  const range = highC - lowC
  const dayH = sunsetH - sunriseH
  const lowH = sunriseH + lowAfterSunriseH
  const sine = (hour: number): number =>
    Math.sin((Math.PI * (hour - lowH)) / (dayH + 2 * (highAfterNoonH - lowAfterSunriseH)))
  if (atH >= lowH && atH <= sunsetH) return lowC + range * sine(atH)
  const nightH = 24 - dayH + lowAfterSunriseH
  const sinceSunsetH = atH > sunsetH ? atH - sunsetH : atH + 24 - sunsetH
  const left = Math.exp(-nightDecay)
  const share = (Math.exp((-nightDecay * sinceSunsetH) / nightH) - left) / (1 - left)
  return lowC + range * sine(sunsetH) * Math.max(0, share)
}

const skySetting = { sunny: 'skySunny', some: 'skySome', mostly: 'skyMostly', overcast: 'skyOvercast' } as const
const hourMs = 3_600_000

/**
 * One row an hour from the day's first instant, each the curve at the middle of its hour. Dew point, wind and sky hold
 * all day; where the air falls under the dew point it is saturated, and that is said. High under low stops; a day
 * without sunrise takes the mean of high and low.
 */
export function hoursOfDay(
  day: DayInWords,
  light: DayLight,
  settings?: SettingOverrides,
): Result<{ readonly hours: readonly WeatherHour[]; readonly findings: readonly Finding[] }, readonly Finding[]> {
  const { highC, lowC, dewPointC } = day
  if (!(highC >= lowC)) return err([{ code: 'highBelowLow', severity: 'stop', values: { highC, lowC } }])
  const findings: Finding[] = []
  const { sunriseMs, sunsetMs, fromMs } = light
  const clockH = (atMs: number): number => (atMs - fromMs) / hourMs
  if (sunriseMs === null || sunsetMs === null) findings.push({ code: 'noSunrise', severity: 'check', values: {} })
  const airAt = (atH: number): number =>
    sunriseMs === null || sunsetMs === null
      ? (highC + lowC) / 2
      : airOfDay({ lowC, highC, sunriseH: clockH(sunriseMs), sunsetH: clockH(sunsetMs), ...airCoefficients }, atH)
  const hours: WeatherHour[] = []
  let dampHours = 0
  for (let startMs = fromMs; startMs < light.toMs; startMs += hourMs) {
    const airC = airAt(clockH(startMs) + 0.5)
    const humidity = humidityFromDewPoint(airC, dewPointC)
    if (humidity > 1) dampHours++
    hours.push({
      startUtc: `${new Date(startMs).toISOString().slice(0, 19)}Z`,
      airC,
      humidity: Math.min(1, humidity),
      wind10mMs: day.windMs,
      cloud: settingValue(settings, skySetting[day.sky]),
      ...(day.rainChance === undefined ? {} : { rainChance: day.rainChance }),
    })
  }
  if (dampHours > 0)
    findings.push({ code: 'dewPointOverLow', severity: 'check', values: { dewPointC, hours: dampHours } })
  return ok({ hours, findings })
}

/** The hours of either kind of conditions: the table as it is, or the day in words made into one. */
export const hoursOfConditions = (
  conditions: Conditions,
  light: DayLight,
  settings?: SettingOverrides,
): ReturnType<typeof hoursOfDay> =>
  conditions.kind === 'hourly' ? ok({ hours: conditions.hours, findings: [] }) : hoursOfDay(conditions, light, settings)
