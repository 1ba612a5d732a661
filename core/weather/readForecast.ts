/** The hourly forecast of the US National Weather Service, as its public service answers, to weather hours. */
import * as z from 'zod/mini'
import type { WeatherHour } from '../../shared/document/day'
import { err, type Finding, ok, type Result } from '../../shared/problem'
import { metersPerSecond, type ReadHours } from './readWeatherTable'

const Measure = z.nullish(z.object({ value: z.nullish(z.number()), unitCode: z.nullish(z.string()) }))

const Period = z.object({
  startTime: z.string(),
  temperature: z.nullish(z.union([z.number(), z.object({ value: z.nullish(z.number()) })])),
  temperatureUnit: z.nullish(z.string()),
  dewpoint: Measure,
  relativeHumidity: Measure,
  probabilityOfPrecipitation: Measure,
  windSpeed: z.nullish(
    z.union([z.string(), z.object({ value: z.nullish(z.number()), unitCode: z.nullish(z.string()) })]),
  ),
  shortForecast: z.nullish(z.string()),
})

const Answer = z.object({ properties: z.object({ periods: z.array(Period) }) })

/** Share of sky covered by the words of the service, the middle of its eighths (from memory); null where it says nothing of it. */
const skyWords: readonly (readonly [RegExp, number])[] = [
  [/mostly (cloudy)/i, 0.75],
  [/partly (sunny)/i, 0.5],
  [/partly (cloudy)/i, 0.4],
  [/mostly (sunny|clear)/i, 0.2],
  [/overcast|cloudy|rain|showers|thunder|snow|fog|drizzle/i, 1],
  [/sunny|clear|fair/i, 0.06],
]

export const cloudFromWords = (words: string): number | null =>
  skyWords.find(([pattern]) => pattern.test(words))?.[1] ?? null

const bad = (reason: string): Result<never, readonly Finding[]> =>
  err([{ code: 'forecastBadAnswer', severity: 'stop', values: { reason } }])

const isFahrenheit = (unit: string | null | undefined): boolean => /F$/i.test(unit ?? '')

function windOf(period: z.infer<typeof Period>): number | null {
  const { windSpeed } = period
  if (windSpeed === null || windSpeed === undefined) return null
  if (typeof windSpeed === 'string') return metersPerSecond(windSpeed, 'mph')
  if (windSpeed.value === null || windSpeed.value === undefined) return null
  return /km_h/.test(windSpeed.unitCode ?? '') ? windSpeed.value / 3.6 : windSpeed.value
}

/**
 * Periods with a start and a temperature; anything else may be null or missing and is left out. The service tells no
 * sky cover by the hour: its words are taken instead. Stops when there is no such period at all.
 */
export function readForecast(answer: unknown): Result<ReadHours, readonly Finding[]> {
  const parsed = Answer.safeParse(answer)
  if (!parsed.success) return bad('it has no hourly periods')
  const hours = parsed.data.properties.periods.flatMap((period): WeatherHour[] => {
    const startMs = Date.parse(period.startTime)
    const { temperature } = period
    const value = typeof temperature === 'number' ? temperature : temperature?.value
    if (!Number.isFinite(startMs) || value === null || value === undefined) return []
    const airC =
      isFahrenheit(period.temperatureUnit ?? 'F') && typeof temperature === 'number' ? (value - 32) / 1.8 : value
    const dew = period.dewpoint?.value
    const dewPointC =
      dew === null || dew === undefined ? null : isFahrenheit(period.dewpoint?.unitCode) ? (dew - 32) / 1.8 : dew
    const humidity = period.relativeHumidity?.value
    const chance = period.probabilityOfPrecipitation?.value
    const wind = windOf(period)
    const cloud = cloudFromWords(period.shortForecast ?? '')
    return [
      {
        startUtc: `${new Date(startMs).toISOString().slice(0, 19)}Z`,
        airC,
        // Rounded to whole degrees apart, the two can cross by a hair.
        ...(dewPointC === null ? {} : { dewPointC: Math.min(dewPointC, airC) }),
        ...(humidity === null || humidity === undefined ? {} : { humidity: humidity / 100 }),
        ...(wind === null ? {} : { wind10mMs: wind }),
        ...(cloud === null ? {} : { cloud }),
        ...(chance === null || chance === undefined ? {} : { rainChance: chance / 100 }),
      },
    ]
  })
  if (hours.length === 0) return bad('no period has a time and a temperature')
  return ok({ hours, findings: [] })
}
