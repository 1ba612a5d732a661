/** How hot the air feels at work, for the crew's cautions. */
import type { WeatherHour } from '../../shared/document/day'
import type { Finding } from '../../shared/problem'
import { humidityFromDewPoint } from './humidity'

const fahrenheit = (tempC: number): number => tempC * 1.8 + 32
const celsius = (tempF: number): number => (tempF - 32) / 1.8

/** 80 and 90 °F: the initial and the high trigger of the federal heat rule proposed in 2024. A proposal, not law. */
const heatTriggersC = { initial: celsius(80), high: celsius(90) } as const

/**
 * Heat index, °C: L. P. Rothfusz, The Heat Index Equation, NWS Technical Attachment SR 90-23, 1990, with the simple form
 * of R. G. Steadman below 80 °F and the two corrections for dry and for damp air as the National Weather Service uses
 * them. In the shade with a light wind; full sun adds up to 15 °F (8 °C).
 *
 * @param humidity share, 0…1
 */
export function heatIndex(airC: number, humidity: number): number {
  const t = fahrenheit(airC)
  const r = humidity * 100
  const simple = 0.5 * (t + 61 + (t - 68) * 1.2 + r * 0.094)
  if ((simple + t) / 2 < 80) return celsius((simple + t) / 2)
  const full =
    -42.379 +
    2.04901523 * t +
    10.14333127 * r -
    0.22475541 * t * r -
    6.83783e-3 * t * t -
    5.481717e-2 * r * r +
    1.22874e-3 * t * t * r +
    8.5282e-4 * t * r * r -
    1.99e-6 * t * t * r * r
  const dry = r < 13 && t >= 80 && t <= 112 ? ((13 - r) / 4) * Math.sqrt((17 - Math.abs(t - 95)) / 17) : 0
  const damp = r > 85 && t >= 80 && t <= 87 ? ((r - 85) / 10) * ((87 - t) / 5) : 0
  return celsius(full - dry + damp)
}

const humidityOf = (row: WeatherHour): number | undefined =>
  row.humidity ?? (row.dewPointC === undefined ? undefined : humidityFromDewPoint(row.airC, row.dewPointC))

/** One caution for the worst working hour, none below the initial trigger. Hours without humidity are passed over. */
export function heatChecks(hours: readonly WeatherHour[], fromMs: number, toMs: number): readonly Finding[] {
  let worstC = Number.NEGATIVE_INFINITY
  let atUtc = ''
  for (const row of hours) {
    const start = Date.parse(row.startUtc)
    const humidity = humidityOf(row)
    if (humidity === undefined || start + 3_600_000 <= fromMs || start >= toMs) continue
    const felt = heatIndex(row.airC, humidity)
    if (felt > worstC) [worstC, atUtc] = [felt, row.startUtc]
  }
  if (worstC < heatTriggersC.initial) return []
  return [
    {
      code: worstC >= heatTriggersC.high ? 'crewHeatHigh' : 'crewHeat',
      severity: 'check',
      values: { feltC: worstC, atUtc },
    },
  ]
}
