/** A June day at 40° N for tests: sun by a plain declination formula, air by the daily curve. */
import { type DayInWords, hoursOfDay } from '../../core/concrete/dailyWeather'
import { type SlabWeather, slabWeather } from '../../core/concrete/slabWeather'
import type { WeatherHour } from '../../shared/document/day'
import type { SettingOverrides } from '../../shared/settings'

const hourMs = 3_600_000
export const dayStartMs = Date.UTC(2026, 5, 12, 5)
export const clock = (hour: number): number => dayStartMs + hour * hourMs

const radians = (degrees: number): number => (degrees * Math.PI) / 180

/** Solar noon at 13:00 of the clock, declination 23.2°: not refracted, near enough for a fixture. */
export function sunAltitudeDeg(utcMs: number): number {
  const hourAngle = radians(15 * ((utcMs - dayStartMs) / hourMs - 13))
  const sine =
    Math.sin(radians(40)) * Math.sin(radians(23.2)) +
    Math.cos(radians(40)) * Math.cos(radians(23.2)) * Math.cos(hourAngle)
  return (Math.asin(sine) * 180) / Math.PI
}

export const juneLight = {
  fromMs: dayStartMs,
  toMs: clock(24),
  sunriseMs: clock(5.6),
  sunsetMs: clock(20.4),
}

export const mildDay: DayInWords = {
  kind: 'day',
  date: '2026-06-12',
  highC: 26,
  lowC: 15,
  dewPointC: 12,
  windMs: 3,
  sky: 'sunny',
}

export const hoursOf = (day: DayInWords): readonly WeatherHour[] => {
  const made = hoursOfDay(day, juneLight)
  if (!made.ok) throw new Error(made.error[0]?.code)
  return made.value.hours
}

export function weatherOf(day: DayInWords, stepMs = 300_000, settings?: SettingOverrides): SlabWeather {
  const made = slabWeather({
    hours: hoursOf(day),
    sunAltitudeDeg,
    elevationM: 200,
    stepMs,
    ...(settings === undefined ? {} : { settings }),
  })
  if (!made.ok) throw new Error(made.error[0]?.code)
  return made.value
}

export const steadyShade = (share: number) => ({ fromMs: dayStartMs, stepMs: hourMs, share: [share] })

export const minutesAfter = (fromMs: number, atMs: number | null): number => {
  if (atMs === null) throw new Error('not reached')
  return (atMs - fromMs) / 60_000
}

/** Own generator of the tests: Mulberry32. */
export function mulberry32(seed: number): () => number {
  let state = seed | 0
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

/** Standard normal (G. E. P. Box and M. E. Muller, Annals of Mathematical Statistics 29, 1958). */
export const normal = (random: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
