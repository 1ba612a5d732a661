import { describe, expect, it } from 'vitest'
import { airTerm, concreteTerm, windTerm } from '../../core/concrete/evaporation'
import { setRun } from '../../core/concrete/setClock'
import { blackBody, stefanBoltzmann } from '../../core/concrete/skyRadiation'
import { runColumn } from '../../core/concrete/slabColumn'
import { latentHeat, runSlab, type SlabRun } from '../../core/concrete/slabHeat'
import { hydrationDegree, hydrationPace, type SlabModel, slabModel } from '../../core/concrete/slabModel'
import type { SlabWeather } from '../../core/concrete/slabWeather'
import { clock, dayStartMs, mildDay, minutesAfter, steadyShade, weatherOf } from './dayFixture'

const bareModel = (thicknessM: number): SlabModel => ({
  ...slabModel({}, thicknessM),
  absorptance: 0,
  emissivity: 0,
  hydrationJM3: 0,
  bleedKgM2S: 0,
  bleedFilmKgM2: 0,
})

/** Steady air over a base of its own temperature; no sun, no sky, no drying. */
function steadyWeather(
  airC: number,
  baseC: number,
  convectionWM2K: number,
  steps: number,
  stepMs = 300_000,
): SlabWeather {
  const same = (value: number): Float64Array => new Float64Array(steps).fill(value)
  return {
    fromMs: dayStartMs,
    stepMs,
    steps,
    airC: same(airC),
    humidity: same(0.5),
    windMs: same(2),
    convectionWM2K: same(convectionWM2K),
    directWm2: same(0),
    diffuseWm2: same(0),
    skyWm2: same(0),
    evaporationAir: same(airTerm(airC, 0.5)),
    evaporationWind: same(windTerm(2) / 3600),
    baseC,
    findings: [],
  }
}

const steadyRun = (weather: SlabWeather, model: SlabModel, placedC: number): SlabRun => ({
  weather,
  model,
  shade: new Float64Array(weather.steps),
  skyView: 1,
  placedMs: weather.fromMs,
  placedC,
  placedAgeH: 0,
  untilAgeH: Number.POSITIVE_INFINITY,
})

const mildRun = (share: number, hour: number, stepMs?: number): SlabRun =>
  setRun({
    weather: weatherOf(mildDay, stepMs),
    shade: steadyShade(share),
    thicknessM: 0.1016,
    mix: { placedTempC: 22 },
    placedMs: clock(hour),
    doseMin: 0,
  }).run

describe('the slab as one warm body', () => {
  it('falls toward steady air as the exponential does', () => {
    const model = bareModel(0.1016)
    const weather = steadyWeather(10, 10, 15, 60)
    const course = runSlab(steadyRun(weather, model, 30))
    const heat = model.volumeHeatJM3K * 0.1016
    for (const point of [12, 36, 60]) {
      const seconds = (course.atMs[point]! - weather.fromMs) / 1000
      const exact = 10 + 20 * Math.exp((-(15 + model.baseWM2K) * seconds) / heat)
      expect(course.tempC[point]!).toBeCloseTo(exact, 2)
    }
  })

  it('loses no heat on the way: what the surface, the base and the cement give is what it stores', () => {
    const run = mildRun(1, 8, 60_000)
    const { weather, model } = run
    const course = runSlab(run)
    let storedFlux = 0
    let film = 0
    for (let point = 0; point + 1 < course.points; point++) {
      const seconds = (course.atMs[point + 1]! - course.atMs[point]!) / 1000
      const step = Math.round((course.atMs[point]! - weather.fromMs) / weather.stepMs)
      const temp = (course.tempC[point]! + course.tempC[point + 1]!) / 2
      const wanted =
        Math.max(0, concreteTerm(course.tempC[point]!) - weather.evaporationAir[step]!) * weather.evaporationWind[step]!
      const bleed = course.ageH[point]! < model.bleedEndAgeH ? model.bleedKgM2S : 0
      const given = Math.min(wanted, film / seconds + bleed)
      film = Math.min(model.bleedFilmKgM2, film + (bleed - given) * seconds)
      const flux =
        model.absorptance * (weather.directWm2[step]! + weather.diffuseWm2[step]!) +
        model.emissivity * (weather.skyWm2[step]! - blackBody(temp)) +
        weather.convectionWM2K[step]! * (weather.airC[step]! - temp) +
        model.baseWM2K * (weather.baseC - temp) -
        given * latentHeat(temp)
      const cement = hydrationDegree(course.ageH[point + 1]!, model) - hydrationDegree(course.ageH[point]!, model)
      storedFlux += flux * seconds + cement * model.hydrationJM3 * model.depthM
    }
    const stored = model.volumeHeatJM3K * model.depthM * (course.tempC[course.points - 1]! - course.tempC[0]!)
    expect(stored).toBeGreaterThan(1e6)
    expect(Math.abs(storedFlux - stored) / stored).toBeLessThan(0.002)
  })

  it('is within 15 seconds of its limit at steps of 5 minutes, in sun and in shade', () => {
    for (const share of [0, 1])
      for (const hour of [7, 10.37, 13]) {
        const age = 3.5
        const reach = (stepMs: number): number => {
          const course = runSlab({ ...mildRun(share, hour, stepMs), untilAgeH: age })
          const last = course.points - 1
          const part = (age - course.ageH[last - 1]!) / (course.ageH[last]! - course.ageH[last - 1]!)
          return course.atMs[last - 1]! + part * (course.atMs[last]! - course.atMs[last - 1]!)
        }
        const fine = reach(15_000)
        const coarseError = Math.abs(reach(300_000) - fine)
        expect(coarseError).toBeLessThan(15_000)
        expect(Math.abs(reach(60_000) - fine)).toBeLessThan(Math.max(coarseError, 2_000))
      }
  })

  it('holds the temperature of a black body in balance with its sky', () => {
    const model = { ...bareModel(0.05), emissivity: 1, baseWM2K: 0 }
    const weather = { ...steadyWeather(15, 15, 0, 2000), skyWm2: new Float64Array(2000).fill(blackBody(12)) }
    const course = runSlab(steadyRun(weather, model, 20))
    expect(course.tempC[course.points - 1]!).toBeCloseTo(12, 2)
    expect(stefanBoltzmann * 285.15 ** 4).toBeCloseTo(blackBody(12), 9)
  })
})

describe('the slab in layers', () => {
  it('comes to the steady profile of a wall between two films, its top inch to that of half an inch', () => {
    for (const thicknessM of [0.1016, 0.127]) {
      const model = bareModel(thicknessM)
      const weather = steadyWeather(30, 10, 15, 12 * 24 * 5)
      const { endC, depthM, top, middle } = runColumn(steadyRun(weather, model, 20))
      const resistance = 1 / 15 + thicknessM / model.conductivityWMK + 1 / model.baseWM2K
      const flux = (30 - 10) / resistance
      const exact = (atM: number): number => 30 - flux / 15 - (flux * atM) / model.conductivityWMK
      endC.forEach((temp, node) => {
        expect(temp).toBeCloseTo(exact(depthM[node]!), 2)
      })
      expect(top.tempC[top.points - 1]!).toBeCloseTo(exact(0.0127), 2)
      expect(middle.tempC[middle.points - 1]!).toBeCloseTo(exact(thicknessM / 2), 2)
    }
  })

  it('agrees with one warm body when heat runs through it freely', () => {
    const free = { ...bareModel(0.1016), conductivityWMK: 40 }
    const weather = steadyWeather(10, 10, 15, 36)
    const body = runSlab(steadyRun(weather, free, 30))
    const column = runColumn(steadyRun(weather, free, 30))
    const last = body.points - 1
    expect(Math.abs(column.middle.tempC[last]! - body.tempC[last]!)).toBeLessThan(0.2)
  })

  it('has the top inch ready within 7 minutes of the one warm body at 4 inches on ordinary mornings, 8 after noon', () => {
    const days = [
      mildDay,
      { ...mildDay, highC: 24, lowC: 13, dewPointC: 10 },
      { ...mildDay, highC: 30, lowC: 19, dewPointC: 16 },
      { ...mildDay, sky: 'overcast' as const },
      { ...mildDay, windMs: 1 },
    ]
    for (const day of days)
      for (const share of [0, 1])
        for (const hour of [7, 9, 11, 13]) {
          const input = { weather: weatherOf(day), shade: steadyShade(share), thicknessM: 0.1016, mix: {} }
          const { run, targets } = setRun({ ...input, placedMs: clock(hour), doseMin: 0 })
          const reach = (course: { atMs: Float64Array; ageH: Float64Array }): number => {
            const point = course.ageH.findIndex(age => age >= targets.readyAgeH)
            const before = point - 1
            const part = (targets.readyAgeH - course.ageH[before]!) / (course.ageH[point]! - course.ageH[before]!)
            return course.atMs[before]! + part * (course.atMs[point]! - course.atMs[before]!)
          }
          const apart = minutesAfter(reach(runSlab(run)), reach(runColumn(run).top))
          expect(Math.abs(apart), `${day.highC} °C ${day.sky} ${share} ${hour}`).toBeLessThan(hour < 12 ? 7 : 8)
        }
  })

  it('puts a node at mid-depth of a 5 inch slab', () => {
    const column = runColumn(steadyRun(steadyWeather(20, 20, 10, 4), bareModel(0.127), 20))
    expect([...column.depthM]).toContainEqual(0.127 / 2)
  })
})

describe('the mix', () => {
  it('has 564 lb of cement in a six-sack yard (trade arithmetic, 94 lb a sack)', () => {
    const perM3 = slabModel({ sacksPerYd3: 6 }, 0.1).hydrationJM3 / 450_000
    expect((perM3 * 0.764554857984) / 0.45359237).toBeCloseTo(564, 3)
    expect(slabModel({}, 0.1).hydrationJM3 / 450_000).toBe(335)
  })

  it('has hydrated 0.15 w/c at initial set (Schindler 2004, from memory), and its pace is the slope of its degree', () => {
    const model = slabModel({}, 0.1)
    expect(hydrationDegree(4.5, model)).toBeCloseTo(0.15 * 0.45, 12)
    for (const ageH of [1, 3, 8])
      expect(hydrationPace(ageH, model)).toBeCloseTo(
        (hydrationDegree(ageH + 1e-4, model) - hydrationDegree(ageH - 1e-4, model)) / 2e-4,
        7,
      )
    expect(hydrationPace(0, model)).toBe(0)
  })

  it('takes in more sun the darker it is', () => {
    const of = (color: 'light' | 'medium' | 'dark') => slabModel({ color }, 0.1).absorptance
    expect([of('light'), of('medium'), of('dark')]).toEqual([0.65, 0.72, 0.8])
  })

  it('warms no deeper than 4 inches as one body', () => {
    expect(slabModel({}, 0.2).depthM).toBeCloseTo(0.1016, 12)
    expect(slabModel({}, 0.08).depthM).toBe(0.08)
  })
})
