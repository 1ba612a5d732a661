/** How likely a strip is missed when forecast and mix turn out otherwise. */
import { settingValue } from '../../../shared/settings'
import type { SlabWeather } from '../../concrete/slabWeather'
import { batchedMin, type DayInput, windowsFor } from './dayProblem'
import type { StripWindow } from './dosing'
import { drawNormal, seededDraws } from './draws'
import type { SolvedDay } from './solveDay'

/** The day's weather moved one way each: hotter, windier, cloudier. */
export interface ShiftedWeathers {
  readonly hotter: { readonly weather: SlabWeather; readonly airK: number }
  readonly windier: { readonly weather: SlabWeather; readonly ln: number }
  readonly cloudier: { readonly weather: SlabWeather; readonly cloud: number }
}

export interface MissChance {
  /** Share of the draws in which at least one strip is too hard before it is done. */
  readonly chance: number
  /** Least slack of each draw, min, from the worst on. */
  readonly slacksMin: readonly number[]
}

export interface MissOptions {
  readonly draws?: number
  readonly seed?: number
}

/** The planned work, done as windows turn out: color in placing order, then stamping and border in the plan's order. */
function slackOf(solved: SolvedDay, windows: readonly StripWindow[]): number {
  const { problem, run } = solved
  const stops = run.times.reduce((most, time) => Math.max(most, time.stops), 0)
  const placedMin = problem.placedMin[stops]!
  const colored: number[] = []
  let color = 0
  windows.forEach((window, strip) => {
    color = Math.max(color, window.colorFromMin) + problem.colorMin[strip]!
    colored.push(color)
  })
  let [stamp, border, slack] = [0, 0, Number.POSITIVE_INFINITY]
  for (const strip of run.order) {
    const window = windows[strip]!
    const opens = Math.max(window.readyMin, colored[strip]!, placedMin)
    stamp = Math.max(stamp, opens) + problem.stampMin[strip]!
    if (problem.borderMin[strip]! > 0) border = Math.max(border, opens) + problem.borderMin[strip]!
    slack = Math.min(slack, window.tooHardMin - Math.max(stamp, problem.borderMin[strip]! > 0 ? border : 0))
  }
  return slack
}

/**
 * 200 seeded draws of air, wind, sky and mix. The windows answer to weather along the straight line to one shifted day
 * each (a shift of a few degrees: what is bent in between is far under the spread); the mix's factor is on the time from
 * batching. Every draw does the planned work with the planned doses.
 */
export function chanceOfMiss(
  input: DayInput,
  solved: SolvedDay,
  shifted: ShiftedWeathers,
  options: MissOptions = {},
): MissChance {
  const { settings } = input
  const { run, placed, split } = solved
  const byStrip = [...run.times].sort((a, b) => a.strip - b.strip)
  const windowsIn = (weather: SlabWeather): StripWindow[] => {
    const made = windowsFor({ ...input, weather }, split.placers, new Map())
    return byStrip.map(({ strip, dose, stops }) => made.windows[strip]![dose]![stops]!)
  }
  const base = byStrip.map(time => time.window)
  const hotter = windowsIn(shifted.hotter.weather)
  const windier = windowsIn(shifted.windier.weather)
  const cloudier = windowsIn(shifted.cloudier.weather)
  const batched = placed.map(strip => batchedMin(input, strip))
  const mixLn = solved.tables.values().next().value?.spreadLn ?? settingValue(settings, 'setSpreadLn')
  const draw = seededDraws(options.seed ?? 1)
  const draws = options.draws ?? 200
  const slacksMin: number[] = []
  for (let i = 0; i < draws; i++) {
    const air = (drawNormal(draw) * settingValue(settings, 'forecastSpreadK')) / shifted.hotter.airK
    const wind = (drawNormal(draw) * settingValue(settings, 'forecastWindLn')) / shifted.windier.ln
    const cloud = (drawNormal(draw) * settingValue(settings, 'forecastCloudSpread')) / shifted.cloudier.cloud
    const factor = Math.exp(drawNormal(draw) * mixLn)
    const moved = base.map((window, strip): StripWindow => {
      const read = (of: keyof StripWindow): number => {
        const own = window[of]
        const at =
          own +
          air * (hotter[strip]![of] - own) +
          wind * (windier[strip]![of] - own) +
          cloud * (cloudier[strip]![of] - own)
        return batched[strip]! + (at - batched[strip]!) * factor
      }
      return {
        colorFromMin: Math.max(placed[strip]!.toMin, read('colorFromMin')),
        readyMin: read('readyMin'),
        tooHardMin: read('tooHardMin'),
      }
    })
    slacksMin.push(slackOf(solved, moved))
  }
  slacksMin.sort((a, b) => a - b)
  return { chance: slacksMin.filter(slack => slack < 0).length / draws, slacksMin }
}
