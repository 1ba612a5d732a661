/** Pours on the June fixture for the tests of the day plan. */

import type { DayInWords } from '../../core/concrete/dailyWeather'
import { shiftHours, type WeatherShift } from '../../core/concrete/shiftHours'
import { type SlabWeather, slabWeather } from '../../core/concrete/slabWeather'
import type { DayPlanInput } from '../../core/pours/day/dayPlan'
import type { DayInput, DayStrip } from '../../core/pours/day/dayProblem'
import { planLoads } from '../../core/pours/day/loads'
import { openStrip, type SunQuantile } from '../../core/pours/day/stripSun'
import { clock, hoursOf, mildDay, sunAltitudeDeg, weatherOf } from '../concrete/dayFixture'

export const ft2M2 = 0.09290304
export const yd3M3 = 0.764554857984
export const fahrenheit = (tempF: number): number => (tempF - 32) / 1.8

/** A day between two temperatures, °F. */
export const dayOf = (highF: number, lowF: number, sky: DayInWords['sky'] = 'sunny'): DayInWords => ({
  ...mildDay,
  highC: fahrenheit(highF) + (highF === lowF ? 0.01 : 0),
  lowC: fahrenheit(lowF),
  dewPointC: fahrenheit(lowF - 12),
  sky,
})

export interface PourOf {
  readonly areaFt2: number
  readonly loads?: number
  readonly portionsALoad?: number
  readonly borderM?: number
  readonly sunOf?: (strip: number) => readonly SunQuantile[]
}

export function stripsOf({ areaFt2, loads = 1, portionsALoad = 4, borderM = 0, sunOf }: PourOf): readonly DayStrip[] {
  const areaM2 = areaFt2 * ft2M2
  const orderM3 = areaM2 * 0.1016
  const made = planLoads({ orderM3, loadM3: orderM3 / loads + 1e-9, portionsALoad })
  if (!made.ok) throw new Error('no loads')
  const { portions } = made.value
  const widthM = Math.sqrt(areaM2 / 2)
  return portions.map(({ load, volumeM3 }, i) => ({
    id: String.fromCharCode(97 + i),
    load,
    volumeM3,
    areaM2: areaM2 / portions.length,
    edgeM: (2 * areaM2) / portions.length / widthM,
    borderM: borderM / portions.length,
    frontM: widthM,
    sun: sunOf?.(i) ?? openStrip,
  }))
}

export interface CrewOf extends PourOf {
  readonly hands: number
  readonly weather: SlabWeather
  readonly startH: number
}

export const crewDay = ({ hands, weather, startH, ...pour }: CrewOf): DayInput => ({
  strips: stripsOf(pour),
  startMs: clock(startH),
  hands,
  experience: 'steady',
  pattern: 'ashlar',
  hardener: true,
  methodM3H: Number.POSITIVE_INFINITY,
  thicknessM: 0.1016,
  mix: { minutesFromPlant: 30 },
  weather,
})

export function reweatherOf(day: DayInWords): (shift: WeatherShift) => SlabWeather {
  return shift => {
    const made = slabWeather({ hours: shiftHours(hoursOf(day), shift), sunAltitudeDeg, elevationM: 200 })
    if (!made.ok) throw new Error(made.error[0]?.code)
    return made.value
  }
}

export function planInput(day: DayInWords, of: Omit<CrewOf, 'weather'>): DayPlanInput {
  const input = crewDay({ ...of, weather: weatherOf(day) })
  const loadsM3 = [...new Set(input.strips.map(strip => strip.load))].map(load =>
    input.strips.reduce((sum, strip) => (strip.load === load ? sum + strip.volumeM3 : sum), 0),
  )
  return { day: input, pour: '1', loadsM3, reweather: reweatherOf(day), rainMs: clock(14), mostAirC: day.highC }
}
