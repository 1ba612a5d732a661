/** Hourly weather put to the test and read at any instant. Hours are means of the hour that starts at the stamp. */
import type { WeatherHour } from '../../shared/document/day'
import type { Finding } from '../../shared/problem'
import { err, ok, type Result } from '../../shared/problem'
import { dewPointFromHumidity, humidityFromDewPoint } from './humidity'

const hourMs = 3_600_000

/** Longest run of missing hours that is filled by the line between its neighbors. */
const longestFilledH = 2

export interface WeatherSeries {
  /** Start of the first hour. */
  readonly fromMs: number
  /** End of the last hour. */
  readonly toMs: number
  /** One value an hour, gaps filled. */
  readonly airC: readonly number[]
  readonly dewPointC: readonly number[]
  readonly wind10mMs: readonly number[]
  readonly cloud: readonly number[]
  readonly findings: readonly Finding[]
}

const fill = { humidity: 0.5, wind10mMs: 2, cloud: 0.1 }

function rowFindings(row: WeatherHour): Finding[] {
  const startUtc = row.startUtc
  const findings: Finding[] = []
  const stop = (code: Finding['code'], values: Record<string, number>): void => {
    findings.push({ code, severity: 'stop', values: { startUtc, ...values } })
  }
  const outside = (value: number, least: number, most: number): boolean => !(value >= least && value <= most)
  if (outside(row.airC, -40, 55)) stop('airOutOfRange', { airC: row.airC })
  if (row.humidity !== undefined && outside(row.humidity, 0, 1))
    stop('humidityOutOfRange', { percent: row.humidity * 100 })
  if (row.dewPointC !== undefined && outside(row.dewPointC, -60, row.airC + 0.5))
    stop('dewPointOverAir', { dewPointC: row.dewPointC, airC: row.airC })
  if (row.wind10mMs !== undefined && outside(row.wind10mMs, 0, 45)) stop('windOutOfRange', { windMs: row.wind10mMs })
  if (row.cloud !== undefined && outside(row.cloud, 0, 1)) stop('cloudOutOfRange', { percent: row.cloud * 100 })
  if (row.rainChance !== undefined && outside(row.rainChance, 0, 1))
    stop('rainOutOfRange', { percent: row.rainChance * 100 })
  if (row.rainMm !== undefined && outside(row.rainMm, 0, 300)) stop('rainOutOfRange', { rainMm: row.rainMm })
  return findings
}

function missingFindings(rows: readonly WeatherHour[]): Finding[] {
  const count = (missing: (row: WeatherHour) => boolean): number => rows.filter(missing).length
  const note = (code: Finding['code'], hours: number, values: Record<string, number>): Finding[] =>
    hours > 0 ? [{ code, severity: 'check', values: { hours, ...values } }] : []
  return [
    ...note(
      'humidityMissing',
      count(row => row.humidity === undefined && row.dewPointC === undefined),
      { percent: fill.humidity * 100 },
    ),
    ...note(
      'windMissing',
      count(row => row.wind10mMs === undefined),
      { windMs: fill.wind10mMs },
    ),
    ...note(
      'cloudMissing',
      count(row => row.cloud === undefined),
      { percent: fill.cloud * 100 },
    ),
  ]
}

/**
 * A reading of 0 % is a dry one rounded down: 1 % stands for it, since a dew point needs some water. A dew point rounded
 * to just over the air is the air.
 */
const dewPointOf = (row: WeatherHour): number =>
  Math.min(row.airC, row.dewPointC ?? dewPointFromHumidity(row.airC, Math.max(row.humidity ?? fill.humidity, 0.01)))

/**
 * Rows in any order to an unbroken series. One or two missing hours are filled by a straight line and said; a longer
 * gap, a value no weather has, or no row at all stops. Missing humidity, wind or sky cover take a stated value.
 */
export function weatherSeries(hours: readonly WeatherHour[]): Result<WeatherSeries, readonly Finding[]> {
  if (hours.length === 0) return err([{ code: 'weatherEmpty', severity: 'stop', values: {} }])
  const stops = hours.flatMap(rowFindings)
  const findings: Finding[] = missingFindings(hours)
  const rows = hours
    .map(row => ({ atMs: Date.parse(row.startUtc), row }))
    .sort((first, second) => first.atMs - second.atMs)
  const airC: number[] = []
  const dewPointC: number[] = []
  const wind10mMs: number[] = []
  const cloud: number[] = []
  const last = (values: readonly number[]): number => values[values.length - 1]!
  let previousMs = Number.NEGATIVE_INFINITY
  for (const { atMs, row } of rows) {
    const next = [row.airC, dewPointOf(row), row.wind10mMs ?? fill.wind10mMs, row.cloud ?? fill.cloud] as const
    const apart = airC.length === 0 ? 1 : (atMs - previousMs) / hourMs
    if (apart < 1 || !Number.isInteger(apart)) {
      stops.push({ code: 'weatherHourRepeated', severity: 'stop', values: { startUtc: row.startUtc } })
      continue
    }
    if (apart > 1) {
      const gap: Finding = {
        code: apart - 1 > longestFilledH ? 'weatherGap' : 'weatherHourMissing',
        severity: apart - 1 > longestFilledH ? 'stop' : 'check',
        values: { startUtc: new Date(previousMs + hourMs).toISOString(), hours: apart - 1 },
      }
      if (gap.severity === 'stop') stops.push(gap)
      else findings.push(gap)
      const from = [last(airC), last(dewPointC), last(wind10mMs), last(cloud)] as const
      for (let hour = 1; hour < apart && gap.severity !== 'stop'; hour++) {
        const share = hour / apart
        ;[airC, dewPointC, wind10mMs, cloud].forEach((values, index) => {
          values.push(from[index]! + share * (next[index]! - from[index]!))
        })
      }
    }
    ;[airC, dewPointC, wind10mMs, cloud].forEach((values, index) => {
      values.push(next[index]!)
    })
    previousMs = atMs
  }
  if (stops.length > 0) return err(stops)
  return ok({ fromMs: rows[0]!.atMs, toMs: previousMs + hourMs, airC, dewPointC, wind10mMs, cloud, findings })
}

/** Straight line between the middles of the hours; the first and last half hour keep their hour's value. */
export function readHourly(values: readonly number[], fromMs: number, atMs: number): number {
  const place = (atMs - fromMs) / hourMs - 0.5
  if (place <= 0) return values[0]!
  const index = Math.floor(place)
  if (index >= values.length - 1) return values[values.length - 1]!
  return values[index]! + (place - index) * (values[index + 1]! - values[index]!)
}

/** Share 0…1 at an instant, from the series' air and dew point. */
export const humidityAt = (series: WeatherSeries, atMs: number): number =>
  Math.min(
    1,
    humidityFromDewPoint(
      readHourly(series.airC, series.fromMs, atMs),
      readHourly(series.dewPointC, series.fromMs, atMs),
    ),
  )
