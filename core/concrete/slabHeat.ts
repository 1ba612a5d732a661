/**
 * Temperature and equivalent age of the fresh slab taken as one warm body, stepped by the midpoint rule (second order).
 *
 * ρ·c·d·dT/dt = a(s·Dir + F·Dif) + ε(L↓ − σT⁴) + h(Ta − T) − E·λ + Ub(Tb − T) + q of hydration, after the surface terms
 * of D. P. Bentz, NISTIR 6551, 2000; evaporation (Uno 1998) cools only while bleed water wets the surface.
 */
import { ageRate } from './equivalentAge'
import { concreteTerm } from './evaporation'
import { zeroCelsiusK } from './humidity'
import { blackBody, stefanBoltzmann } from './skyRadiation'
import { hydrationPace, type SlabModel } from './slabModel'
import type { SlabWeather } from './slabWeather'

export interface SlabRun {
  readonly weather: SlabWeather
  readonly model: SlabModel
  /** Share of direct sun in the middle of each step of the weather. */
  readonly shade: ArrayLike<number>
  /** Share of the sky's dome seen from the slab, 0…1. */
  readonly skyView: number
  readonly placedMs: number
  readonly placedC: number
  /** Equivalent age when placed: the ride counts. */
  readonly placedAgeH: number
  /** The run ends past this age, or with the weather. */
  readonly untilAgeH: number
}

/** Parallel arrays, the first entry at placing. */
export interface SlabCourse {
  readonly points: number
  readonly atMs: Float64Array
  readonly tempC: Float64Array
  readonly ageH: Float64Array
  /** First instant at which the surface gave off more water than it had; null if it stayed wet. */
  readonly dryMs: number | null
  /** What the air would have taken from a wet surface, at most, kg/m²h. */
  readonly mostEvaporationKgM2H: number
}

/** Heat to turn water into vapor, J/kg, 0…60 °C: 2501 − 2.37 T kJ/kg (linear fit to steam tables, from memory). */
export const latentHeat = (tempC: number): number => (2501 - 2.37 * tempC) * 1000

/** W/m² the surface takes in that do not depend on its own temperature. */
export const surfaceGain = (run: SlabRun, step: number): number => {
  const { weather, model, skyView } = run
  const around = skyView < 1 ? (1 - skyView) * blackBody(weather.airC[step]!) : 0
  return (
    model.absorptance * (run.shade[step]! * weather.directWm2[step]! + skyView * weather.diffuseWm2[step]!) +
    model.emissivity * (skyView * weather.skyWm2[step]! + around) +
    weather.convectionWM2K[step]! * weather.airC[step]!
  )
}

/** Water standing on the slab and what may still rise to it. */
export interface SurfaceWater {
  filmKgM2: number
  /** What a wet surface would have given off over the last step, kg/m²s. */
  wantedKgM2S: number
}

/** kg/m²s really given off over a step; the film is brought forward. */
export function evaporate(
  water: SurfaceWater,
  run: SlabRun,
  step: number,
  tempC: number,
  ageH: number,
  seconds: number,
) {
  const { weather, model } = run
  const driving = concreteTerm(tempC) - weather.evaporationAir[step]!
  const wanted = driving > 0 ? driving * weather.evaporationWind[step]! : 0
  const bleed = ageH < model.bleedEndAgeH ? model.bleedKgM2S : 0
  const supply = water.filmKgM2 / seconds + bleed
  const given = Math.min(wanted, supply)
  water.filmKgM2 = Math.min(model.bleedFilmKgM2, Math.max(0, water.filmKgM2 + (bleed - given) * seconds))
  water.wantedKgM2S = wanted
  return given
}

/** Room for the course of any run on this weather. */
export interface CourseRoom {
  readonly atMs: Float64Array
  readonly tempC: Float64Array
  readonly ageH: Float64Array
}

export const courseRoom = (weather: SlabWeather): CourseRoom => ({
  atMs: new Float64Array(weather.steps + 2),
  tempC: new Float64Array(weather.steps + 2),
  ageH: new Float64Array(weather.steps + 2),
})

export interface CourseEnd {
  readonly points: number
  readonly dryMs: number | null
  readonly mostEvaporationKgM2H: number
}

/** Fills the room from placing on and says how far it came. */
export function runSlabInto(room: CourseRoom, run: SlabRun): CourseEnd {
  const { weather, model } = run
  const heatJM2K = model.volumeHeatJM3K * model.depthM
  const hydrationJM2 = model.hydrationJM3 * model.depthM
  const radiating = model.emissivity * stefanBoltzmann
  const baseGain = model.baseWM2K * weather.baseC
  const { atMs, tempC, ageH } = room
  const water: SurfaceWater = { filmKgM2: 0, wantedKgM2S: 0 }
  let at = run.placedMs
  let temp = run.placedC
  let age = run.placedAgeH
  let dryMs: number | null = null
  let most = 0
  atMs[0] = at
  tempC[0] = temp
  ageH[0] = age
  let points = 1
  for (let step = Math.floor((at - weather.fromMs) / weather.stepMs); step < weather.steps; step++) {
    const endMs = weather.fromMs + (step + 1) * weather.stepMs
    const seconds = (endMs - at) / 1000
    const evaporated = evaporate(water, run, step, temp, age, seconds)
    if (water.wantedKgM2S > most) most = water.wantedKgM2S
    if (dryMs === null && evaporated < water.wantedKgM2S) dryMs = at
    const gain = surfaceGain(run, step) + baseGain
    const loss = weather.convectionWM2K[step]! + model.baseWM2K
    const rate = ageRate(temp, model.activationJMol)
    const pace = (hydrationJM2 * hydrationPace(age + (seconds / 7200) * rate, model)) / 3600
    const kelvin2 = (temp + zeroCelsiusK) ** 2
    const flux = gain - radiating * kelvin2 * kelvin2 - loss * temp - evaporated * latentHeat(temp) + pace * rate
    const middle = temp + (flux * seconds) / (2 * heatJM2K)
    const middleRate = ageRate(middle, model.activationJMol)
    const middle2 = (middle + zeroCelsiusK) ** 2
    const middleFlux =
      gain - radiating * middle2 * middle2 - loss * middle - evaporated * latentHeat(middle) + pace * middleRate
    temp += (middleFlux * seconds) / heatJM2K
    age += (middleRate * seconds) / 3600
    at = endMs
    atMs[points] = at
    tempC[points] = temp
    ageH[points] = age
    points++
    if (age >= run.untilAgeH) break
  }
  return { points, dryMs, mostEvaporationKgM2H: most * 3600 }
}

/**
 * The course of one run in arrays of its own. Placed before the weather begins or after it ends, it has the placing
 * alone.
 */
export function runSlab(run: SlabRun): SlabCourse {
  const { weather } = run
  const within = run.placedMs >= weather.fromMs && run.placedMs < weather.fromMs + weather.steps * weather.stepMs
  if (!within)
    return {
      points: 1,
      atMs: Float64Array.of(run.placedMs),
      tempC: Float64Array.of(run.placedC),
      ageH: Float64Array.of(run.placedAgeH),
      dryMs: null,
      mostEvaporationKgM2H: 0,
    }
  const room = courseRoom(weather)
  const end = runSlabInto(room, run)
  return {
    ...end,
    atMs: room.atMs.slice(0, end.points),
    tempC: room.tempC.slice(0, end.points),
    ageH: room.ageH.slice(0, end.points),
  }
}

/** First instant at which a course reaches an age, by the line inside its step; null if it never does. */
export function whenAged(course: CourseRoom, points: number, ageH: number): number | null {
  const ages = course.ageH
  if (ages[0]! >= ageH) return course.atMs[0]!
  if (ages[points - 1]! < ageH) return null
  let low = 0
  let high = points - 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (ages[middle]! < ageH) low = middle
    else high = middle
  }
  const share = (ageH - ages[low]!) / (ages[high]! - ages[low]!)
  return course.atMs[low]! + share * (course.atMs[high]! - course.atMs[low]!)
}

/** Equivalent age of a course at an instant; null before placing or after its end. */
export function ageAt(course: SlabCourse, atMs: number): number | null {
  const { points } = course
  if (atMs < course.atMs[0]! || atMs > course.atMs[points - 1]!) return null
  let index = 0
  while (index < points - 2 && course.atMs[index + 1]! < atMs) index++
  if (points === 1) return course.ageH[0]!
  const share = (atMs - course.atMs[index]!) / (course.atMs[index + 1]! - course.atMs[index]!)
  return course.ageH[index]! + share * (course.ageH[index + 1]! - course.ageH[index]!)
}
