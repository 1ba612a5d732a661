/** Air, drying, rain and wind of the day, hour by hour, over the rows of the pours. */
import { useMemo } from 'react'
import type { EvaporationBand } from '../../core/concrete/evaporation'
import { evaporationOfDay } from '../../core/concrete/evaporationOfDay'
import { dayConditions } from '../../core/pours/day/dayConditions'
import { printMeasures } from '../../core/units/printMeasures'
import { printNumber } from '../../core/units/printNumber'
import type { Site, UnitSystem } from '../../shared/document/site'
import { settingValue } from '../../shared/settings'
import type { Scale } from './railScale'

const hourMs = 3_600_000

/** Drying bands from the least to the most: pale to dark, so that gray tells them too. */
const bandInk: Readonly<Record<EvaporationBand, number>> = { low: 7, veryLowBleed: 6, lowBleed: 5, precautions: 3 }

const lbFt2PerKgM2 = 0.204816

const dryingWords = (rateKgM2H: number, units: UnitSystem): string =>
  units === 'metric' ? `${printNumber(rateKgM2H, 1)} kg/m²/h` : `${printNumber(rateKgM2H * lbFt2PerKgM2, 2)} lb/ft²/h`

export function WeatherRows({
  site,
  date,
  scale,
}: {
  readonly site: Site
  readonly date: string
  readonly scale: Scale
}) {
  const { conditions, place, settings, units } = site
  const rows = useMemo(() => {
    if (!conditions) return null
    const day = dayConditions(conditions, date, place, settings)
    if (!day.ok) return null
    const over = settingValue(settings, 'placedOverAirK')
    const drying = evaporationOfDay(day.value.weather, airC => airC + over, settings)
    return day.value.hours.map(hour => {
      const fromMs = Date.parse(hour.startUtc)
      const own = drying.find(row => row.fromMs === fromMs)
      return { ...hour, fromMs, rate: own?.rateKgM2H ?? null, band: own?.band ?? ('low' as const) }
    })
  }, [conditions, date, place, settings])
  if (!rows) return null
  const [left, right] = [scale.left, scale.width - scale.right]
  const shown = rows.filter(({ fromMs }) => scale.x(fromMs + hourMs) > left && scale.x(fromMs) < right)
  const print = printMeasures(units)
  const wide = scale.x((shown[0]?.fromMs ?? 0) + hourMs) - scale.x(shown[0]?.fromMs ?? 0)
  const every = Math.max(1, Math.ceil(34 / Math.max(1, wide)))
  const most = shown.reduce((high, row) => Math.max(high, row.rate ?? 0), 0)
  const hasRain = shown.some(row => row.rainChance !== undefined || row.rainMm !== undefined)
  const box = (fromMs: number) => {
    const x = Math.max(left, scale.x(fromMs))
    return { x, width: Math.max(0, Math.min(right, scale.x(fromMs + hourMs)) - x) }
  }
  const inside = ({ fromMs }: { readonly fromMs: number }, i: number): boolean =>
    i % every === 0 && scale.x(fromMs + hourMs / 2) > left + 14 && scale.x(fromMs + hourMs / 2) < right - 14
  const text = (fromMs: number, words: string, dark: boolean) => (
    <text
      key={fromMs}
      className="rail-weather-figure"
      x={scale.x(fromMs + hourMs / 2)}
      y={15}
      textAnchor="middle"
      style={{ fill: dark ? 'var(--sh-ink-light)' : 'var(--sh-ink-dark)' }}
    >
      {words}
    </text>
  )
  const degrees = (airC: number) => `${Math.round(units === 'metric' ? airC : airC * 1.8 + 32)}°`
  const wind = (ms: number) => String(Math.round(units === 'metric' ? ms * 3.6 : ms / 0.44704))
  const windUnit = units === 'metric' ? 'km/h' : 'mph'
  const peak = shown.some(row => row.band === 'precautions')
    ? 'over the limit for precautions'
    : 'under the limit for precautions'
  return (
    <ul className="rail-weather" aria-label="Weather of the day">
      <li
        className="rail-row weather"
        aria-label={`Air ${print.temperature(Math.min(...shown.map(row => row.airC)))} to ${print.temperature(Math.max(...shown.map(row => row.airC)))}; drying up to ${dryingWords(most, units)}, ${peak}`}
      >
        <span className="rail-row-name">Air, drying</span>
        <svg width={scale.width} height="20" aria-hidden="true">
          {shown.map(row => (
            <rect
              key={row.fromMs}
              {...box(row.fromMs)}
              y={1}
              height={18}
              style={{ fill: `var(--sh-${bandInk[row.band]})` }}
            />
          ))}
          {shown.map(row =>
            row.band === 'precautions' ? (
              <path key={row.fromMs} className="rail-limit" d={`M${box(row.fromMs).x} 18.5h${box(row.fromMs).width}`} />
            ) : null,
          )}
          {shown.filter(inside).map(row => text(row.fromMs, degrees(row.airC), row.band === 'precautions'))}
        </svg>
      </li>
      <li className="rail-row weather" aria-label="Wind and chance of rain by the hour">
        <span className="rail-row-name">{hasRain ? `Wind ${windUnit}, rain %` : `Wind, ${windUnit}`}</span>
        <svg width={scale.width} height="20" aria-hidden="true">
          {shown.map(row =>
            (row.rainChance ?? 0) > 0 ? (
              <rect
                key={row.fromMs}
                className="rail-rain"
                {...box(row.fromMs)}
                y={19 - 16 * (row.rainChance ?? 0)}
                height={16 * (row.rainChance ?? 0)}
              />
            ) : null,
          )}
          {shown.filter(inside).map(row => (
            <text
              key={row.fromMs}
              className="rail-weather-figure"
              x={scale.x(row.fromMs + hourMs / 2)}
              y={15}
              textAnchor="middle"
            >
              {row.wind10mMs === undefined ? '' : wind(row.wind10mMs)}
              {row.rainChance ? `, ${Math.round(100 * row.rainChance)} %` : ''}
            </text>
          ))}
        </svg>
      </li>
    </ul>
  )
}
