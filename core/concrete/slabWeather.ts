/** The day's weather as the slab feels it, worked out once for equal UTC steps and shared by every history. */
import type { WeatherHour } from '../../shared/document/day'
import { err, type Finding, ok, type Result } from '../../shared/problem'
import { type SettingOverrides, settingValue } from '../../shared/settings'
import { extraterrestrialWm2, ineichenPerez, pressureShare, relativeAirMass } from './clearSky'
import { cloudySky } from './cloudySky'
import { airTerm, windTerm } from './evaporation'
import { skyRadiation } from './skyRadiation'
import { humidityAt, readHourly, weatherSeries } from './weatherHours'
import { windAtSlab } from './windAtSlab'

/** Values hold over a step and are those of its middle. */
export interface SlabWeather {
  readonly fromMs: number
  readonly stepMs: number
  readonly steps: number
  readonly airC: Float64Array
  /** Share, 0…1. */
  readonly humidity: Float64Array
  /** Average about 0.5 m above the slab. */
  readonly windMs: Float64Array
  /** W/m²K */
  readonly convectionWM2K: Float64Array
  /** On the level plane, W/m². */
  readonly directWm2: Float64Array
  readonly diffuseWm2: Float64Array
  readonly skyWm2: Float64Array
  /** °F^2.5, see evaporation. */
  readonly evaporationAir: Float64Array
  /** kg/m²s for one °F^2.5. */
  readonly evaporationWind: Float64Array
  /** Mean air, to which the base is held. */
  readonly baseC: number
  readonly findings: readonly Finding[]
}

export interface SlabWeatherInput {
  readonly hours: readonly WeatherHour[]
  /** Apparent altitude of the sun at an instant, degrees. */
  readonly sunAltitudeDeg: (utcMs: number) => number
  readonly elevationM: number
  readonly settings?: SettingOverrides
  /** 5 min or less; 5 min if left out. */
  readonly stepMs?: number
  /** A reading of the wind at the slab, used for all hours. */
  readonly windReadingMs?: number
}

/** Longest step at which the heat balance is still within a second or two of its limit, see the tests. */
const longestStepMs = 300_000

/**
 * W/m²K from the wind at the slab: 5.6 + 4.0 v to 5 m/s, 7.2 v^0.78 above. Source: D. P. Bentz, NISTIR 6551, 2000 (from
 * memory). Other forms differ by 30 % at 3 m/s.
 */
export const convection = (windMs: number): number => (windMs <= 5 ? 5.6 + 4 * windMs : 7.2 * windMs ** 0.78)

function dayOfYear(utcMs: number): number {
  const year = new Date(utcMs).getUTCFullYear()
  return Math.floor((utcMs - Date.UTC(year, 0, 1)) / 86_400_000) + 1
}

/** Hourly rows to steps from the first hour's start to the last hour's end. Rows that cannot be used stop. */
export function slabWeather(input: SlabWeatherInput): Result<SlabWeather, readonly Finding[]> {
  const series = weatherSeries(input.hours)
  if (!series.ok) return err(series.error)
  const { fromMs, toMs } = series.value
  const stepMs = input.stepMs ?? longestStepMs
  const steps = Math.floor((toMs - fromMs) / stepMs)
  const linkeTurbidity = settingValue(input.settings, 'linkeTurbidity')
  const pressure = pressureShare(input.elevationM)
  const make = (): Float64Array => new Float64Array(steps)
  const [airC, humidity, windMs, convectionWM2K] = [make(), make(), make(), make()]
  const [directWm2, diffuseWm2, skyWm2, evaporationAir, evaporationWind] = [make(), make(), make(), make(), make()]
  for (let step = 0; step < steps; step++) {
    const atMs = fromMs + (step + 0.5) * stepMs
    const air = readHourly(series.value.airC, fromMs, atMs)
    const cloud = readHourly(series.value.cloud, fromMs, atMs)
    const wind = windAtSlab(
      {
        wind10mMs: readHourly(series.value.wind10mMs, fromMs, atMs),
        ...(input.windReadingMs === undefined ? {} : { readingMs: input.windReadingMs }),
      },
      input.settings,
    )
    const altitudeDeg = input.sunAltitudeDeg(atMs)
    const clear = ineichenPerez({
      altitudeDeg,
      airMassAbsolute: relativeAirMass(altitudeDeg) * pressure,
      linkeTurbidity,
      elevationM: input.elevationM,
      extraterrestrialWm2: extraterrestrialWm2(dayOfYear(atMs)),
    })
    const level = cloudySky({ directWm2: clear.globalWm2 - clear.diffuseWm2, diffuseWm2: clear.diffuseWm2 }, cloud)
    airC[step] = air
    humidity[step] = humidityAt(series.value, atMs)
    windMs[step] = wind
    convectionWM2K[step] = convection(wind)
    directWm2[step] = level.directWm2
    diffuseWm2[step] = level.diffuseWm2
    skyWm2[step] = skyRadiation(air, readHourly(series.value.dewPointC, fromMs, atMs), cloud)
    evaporationAir[step] = airTerm(air, humidity[step]!)
    evaporationWind[step] = windTerm(wind) / 3600
  }
  const { findings } = series.value
  const baseC = series.value.airC.reduce((sum, air) => sum + air, 0) / series.value.airC.length
  return ok({
    ...{ fromMs, stepMs, steps, airC, humidity, windMs, convectionWM2K, directWm2, diffuseWm2, skyWm2 },
    ...{ evaporationAir, evaporationWind, baseC, findings },
  })
}
