/**
 * The same slab in layers: conduction downwards (explicit, midpoint rule), the same surface, the same base. Tells the
 * top inch from the middle, and judges the one-body slab.
 */
import { ageRate } from './equivalentAge'
import { zeroCelsiusK } from './humidity'
import { stefanBoltzmann } from './skyRadiation'
import { evaporate, latentHeat, type SlabCourse, type SlabRun, type SurfaceWater, surfaceGain } from './slabHeat'
import { hydrationPace } from './slabModel'

const inchM = 0.0254

/** Most that air, sky and drying together carry off a hot surface in a gale, W/m²K: for the length of a step only. */
const mostSurfaceWM2K = 150

/**
 * Half the longest stable step of the midpoint rule, s: its product with the fastest decay stays at 1 (the limit is 2).
 */
const steadyStepS = (conductivityWMK: number, volumeHeatJM3K: number, spacingM: number): number =>
  (volumeHeatJM3K * spacingM) / ((4 * conductivityWMK) / spacingM + 2 * mostSurfaceWM2K)

export interface ColumnCourse {
  readonly top: SlabCourse
  readonly middle: SlabCourse
  /** Temperatures at the end, from the surface down, and their depths. */
  readonly endC: Float64Array
  readonly depthM: Float64Array
}

/** Nodes stand on the faces of layers of 1 in or less, an even number of layers, so one stands at mid-depth. */
export function runColumn(run: SlabRun): ColumnCourse {
  const { weather, model } = run
  const layers = 2 * Math.ceil(model.thicknessM / (2 * inchM) - 1e-9)
  const spacing = model.thicknessM / layers
  const middleNode = layers / 2
  const temps = new Float64Array(layers + 1).fill(run.placedC)
  const ages = new Float64Array(layers + 1).fill(run.placedAgeH)
  const middleTemps = new Float64Array(layers + 1)
  const heats = Float64Array.from(temps, (_, node) =>
    node === 0 || node === layers ? (model.volumeHeatJM3K * spacing) / 2 : model.volumeHeatJM3K * spacing,
  )
  const paces = new Float64Array(layers + 1)
  const link = model.conductivityWMK / spacing
  const longestStepS = steadyStepS(model.conductivityWMK, model.volumeHeatJM3K, spacing)
  const radiating = model.emissivity * stefanBoltzmann
  const water: SurfaceWater = { filmKgM2: 0, wantedKgM2S: 0 }

  /** Mean over the top inch of the broken line through the nodes. */
  const topMean = (values: Float64Array): number => {
    let sum = 0
    for (let node = 0; node < layers && node * spacing < inchM - 1e-12; node++) {
      const part = Math.min(1, (inchM - node * spacing) / spacing)
      sum += part * spacing * (values[node]! + (part / 2) * (values[node + 1]! - values[node]!))
    }
    return sum / Math.min(inchM, model.thicknessM)
  }

  const fluxInto = (at: Float64Array, node: number, gain: number, convection: number, evaporated: number): number => {
    const temp = at[node]!
    let flux = (paces[node]! * ageRate(temp, model.activationJMol) * heats[node]!) / model.volumeHeatJM3K
    if (node > 0) flux += link * (at[node - 1]! - temp)
    if (node < layers) flux += link * (at[node + 1]! - temp)
    if (node === 0)
      flux += gain - radiating * (temp + zeroCelsiusK) ** 4 - convection * temp - evaporated * latentHeat(temp)
    if (node === layers) flux += model.baseWM2K * (weather.baseC - temp)
    return flux
  }

  const atMs = [run.placedMs]
  const topC = [run.placedC]
  const topAge = [run.placedAgeH]
  const middleC = [run.placedC]
  const middleAge = [run.placedAgeH]
  let at = run.placedMs
  let dryMs: number | null = null
  let most = 0
  const first = Math.floor((at - weather.fromMs) / weather.stepMs)
  for (let step = Math.max(first, 0); step < weather.steps && first >= 0; step++) {
    const endMs = weather.fromMs + (step + 1) * weather.stepMs
    const parts = Math.ceil((endMs - at) / 1000 / longestStepS)
    const seconds = (endMs - at) / 1000 / parts
    const gain = surfaceGain(run, step)
    const convection = weather.convectionWM2K[step]!
    for (let part = 0; part < parts; part++) {
      const evaporated = evaporate(water, run, step, temps[0]!, topMean(ages), seconds)
      most = Math.max(most, water.wantedKgM2S)
      if (dryMs === null && evaporated < water.wantedKgM2S) dryMs = at + part * seconds * 1000
      for (let node = 0; node <= layers; node++) {
        const rate = ageRate(temps[node]!, model.activationJMol)
        paces[node] = (model.hydrationJM3 * hydrationPace(ages[node]! + (seconds / 7200) * rate, model)) / 3600
      }
      for (let node = 0; node <= layers; node++)
        middleTemps[node] =
          temps[node]! + (fluxInto(temps, node, gain, convection, evaporated) * seconds) / (2 * heats[node]!)
      for (let node = 0; node <= layers; node++) {
        temps[node] =
          temps[node]! + (fluxInto(middleTemps, node, gain, convection, evaporated) * seconds) / heats[node]!
        ages[node] = ages[node]! + (ageRate(middleTemps[node]!, model.activationJMol) * seconds) / 3600
      }
    }
    at = endMs
    atMs.push(at)
    topC.push(topMean(temps))
    topAge.push(topMean(ages))
    middleC.push(temps[middleNode]!)
    middleAge.push(ages[middleNode]!)
    if (Math.min(topAge[topAge.length - 1]!, ages[middleNode]!) >= run.untilAgeH) break
  }
  const course = (tempC: number[], ageH: number[]): SlabCourse => ({
    points: atMs.length,
    atMs: Float64Array.from(atMs),
    tempC: Float64Array.from(tempC),
    ageH: Float64Array.from(ageH),
    dryMs,
    mostEvaporationKgM2H: most * 3600,
  })
  return {
    top: course(topC, topAge),
    middle: course(middleC, middleAge),
    endC: temps,
    depthM: Float64Array.from(temps, (_, node) => node * spacing),
  }
}
