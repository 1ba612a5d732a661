/** The drying row of the day: what the air takes from fresh concrete, hour by hour. */
import type { SettingOverrides } from '../../shared/settings'
import { type EvaporationBand, evaporationBand, evaporationRate } from './evaporation'
import type { SlabWeather } from './slabWeather'

export interface DryingHour {
  readonly fromMs: number
  readonly rateKgM2H: number
  readonly band: EvaporationBand
}

const hourMs = 3_600_000

/**
 * Mean rate of each hour of the weather over concrete of a given temperature. The slab's own course is warmer in the
 * sun; the most it meets is `mostEvaporationKgM2H` of its prediction.
 */
export function evaporationOfDay(
  weather: SlabWeather,
  concreteC: (airC: number) => number,
  settings?: SettingOverrides,
): readonly DryingHour[] {
  const perHour = Math.round(hourMs / weather.stepMs)
  const hours: DryingHour[] = []
  for (let first = 0; first + perHour <= weather.steps; first += perHour) {
    let sum = 0
    for (let step = first; step < first + perHour; step++)
      sum += evaporationRate({
        concreteC: concreteC(weather.airC[step]!),
        airC: weather.airC[step]!,
        humidity: weather.humidity[step]!,
        windAtSlabMs: weather.windMs[step]!,
      })
    const rateKgM2H = sum / perHour
    hours.push({
      fromMs: weather.fromMs + first * weather.stepMs,
      rateKgM2H,
      band: evaporationBand(rateKgM2H, settings),
    })
  }
  return hours
}
