/** The day of one pour: strips, loads, tasks, slack, and what may come of it. */
import type { Finding } from '../../../shared/problem'
import { ok, type Result } from '../../../shared/problem'
import { settingValue } from '../../../shared/settings'
import type { WeatherShift } from '../../concrete/shiftHours'
import type { SlabWeather } from '../../concrete/slabWeather'
import { chanceOfMiss } from './chanceOfMiss'
import { type CrewRole, crewAdvice } from './crewAdvice'
import type { CrewSplit } from './crewSplit'
import { batchedMin, type DayInput, dosesMin, isSetKnown, stripTimesMs, tableOf } from './dayProblem'
import { type DayTask, dayTasks } from './dayTasks'
import { type SolvedDay, solveDay } from './solveDay'
import { firstLost, type WhatIfRow, whatIf } from './whatIf'

const minuteMs = 60_000
/** Distance of the 10th and 90th percentile of a normal from its mean, in spreads. */
const tenthPercentile = 1.2815515655446004

export interface DayPlanInput {
  readonly day: DayInput
  /** Number of the pour, for findings. */
  readonly pour: string
  /** Each load, m³. */
  readonly loadsM3: readonly number[]
  /** The same day moved: hotter, windier, cloudier. */
  readonly reweather: (shift: WeatherShift) => SlabWeather
  /** 14:00 of the site's clock. */
  readonly rainMs: number
  readonly mostAirC: number
}

export interface PlannedStrip {
  readonly id: string
  readonly areaM2: number
  readonly load: number
  readonly placeMs: number
  readonly placedMs: number
  readonly readyMs: number
  readonly readyP10Ms: number
  readonly readyP90Ms: number
  readonly tooHardMs: number
  readonly stampFromMs: number
  readonly stampToMs: number
  readonly doseMin: number
  /** Too hard less the end of the work on it. */
  readonly slackMin: number
}

export interface PlannedLoad {
  /** From 1. */
  readonly no: number
  readonly batchMs: number
  readonly onSiteMs: number
  readonly emptyMs: number
  readonly volumeM3: number
  readonly portions: readonly {
    readonly stripIds: readonly string[]
    readonly doseMin: number
    readonly volumeM3: number
  }[]
}

export interface DayPlan {
  readonly startMs: number
  readonly strips: readonly PlannedStrip[]
  readonly tasks: readonly DayTask[]
  readonly loads: readonly PlannedLoad[]
  readonly slackMin: number
  /** With any dosing of these loads. */
  readonly largestSlackMin: number
  /** Without retarder. */
  readonly plainSlackMin: number
  /** The strip with the least slack. */
  readonly tightestStripId: string
  readonly firstLostStripId: string | null
  readonly chanceOfMiss: number
  readonly evaporationMaxKgM2H: number
  readonly split: CrewSplit
  readonly crew: readonly CrewRole[]
  readonly whatIf: readonly WhatIfRow[]
  readonly findings: readonly Finding[]
}

/** Windows of the strips as the plan has them, with the p10–p90 of ready. */
function plannedStrips(day: DayInput, solved: SolvedDay): PlannedStrip[] {
  const stopMin = settingValue(day.settings, 'mixingStopMin')
  const at = (min: number): number => day.startMs + min * minuteMs
  return [...solved.run.times]
    .sort((a, b) => a.strip - b.strip)
    .map(time => {
      const strip = day.strips[time.strip]!
      const placed = solved.placed[time.strip]!
      const stopsMin = day.known?.[time.strip] === undefined ? time.stops * stopMin : 0
      const doseMin = dosesMin[time.dose]!
      const { spreadLn } = tableOf(day, solved.tables, strip.sun[0]!)
      const spread = Math.exp(tenthPercentile * spreadLn)
      const readyAt = (factor: number): number => {
        const { readyMs } = stripTimesMs(day, solved.tables, strip, placed, doseMin, stopsMin, factor)
        return Number.isNaN(readyMs) ? at(time.window.readyMin) : readyMs
      }
      const doneMin = strip.borderM > 0 ? Math.max(time.stampToMin, time.borderToMin) : time.stampToMin
      return {
        id: strip.id,
        areaM2: strip.areaM2,
        load: strip.load,
        placeMs: at(placed.fromMin + stopsMin),
        placedMs: at(placed.toMin + stopsMin),
        readyMs: at(time.window.readyMin),
        readyP10Ms: readyAt(1 / spread),
        readyP90Ms: readyAt(spread),
        tooHardMs: at(time.window.tooHardMin),
        stampFromMs: at(time.stampFromMin),
        stampToMs: at(time.stampToMin),
        doseMin,
        slackMin: time.window.tooHardMin - doneMin,
      }
    })
}

function plannedLoads(
  { day, loadsM3 }: DayPlanInput,
  solved: SolvedDay,
  strips: readonly PlannedStrip[],
): PlannedLoad[] {
  const stopMin = settingValue(day.settings, 'mixingStopMin')
  return loadsM3.flatMap((volumeM3, load) => {
    const own = strips.flatMap((strip, i) => (strip.load === load ? [{ strip, i }] : []))
    const first = own[0]
    if (!first) return []
    const stopsBefore = solved.run.times.reduce(
      (most, time) => (time.strip < first.i ? Math.max(most, time.stops) : most),
      0,
    )
    const placed = solved.placed[first.i]!
    const movedMin = day.known?.[first.i] === undefined ? stopsBefore * stopMin : 0
    const portions: { stripIds: string[]; doseMin: number; volumeM3: number }[] = []
    for (const { strip, i } of own) {
      const last = portions.at(-1)
      if (last?.doseMin === strip.doseMin) {
        last.stripIds.push(strip.id)
        last.volumeM3 += day.strips[i]!.volumeM3
      } else portions.push({ stripIds: [strip.id], doseMin: strip.doseMin, volumeM3: day.strips[i]!.volumeM3 })
    }
    return [
      {
        no: load + 1,
        batchMs: day.startMs + (batchedMin(day, placed) + movedMin) * minuteMs,
        onSiteMs: day.startMs + (placed.arrivedMin + movedMin) * minuteMs,
        emptyMs: own.at(-1)!.strip.placedMs,
        volumeM3,
        portions,
      },
    ]
  })
}

function loadFindings(pour: string, loads: readonly PlannedLoad[], day: DayInput): Finding[] {
  const value = (name: Parameters<typeof settingValue>[1]): number => settingValue(day.settings, name)
  return loads.flatMap(load => {
    const ageMin = (load.emptyMs - load.batchMs) / minuteMs
    const onSiteMin = (load.emptyMs - load.onSiteMs) / minuteMs
    const freeMin = load.volumeM3 * value('unloadMinM3')
    const found: Finding[] = []
    const limitMin = value('loadAgeLimitMin')
    if (ageMin > limitMin)
      found.push({ code: 'loadTooOld', severity: 'check', values: { pour, load: load.no, ageMin, limitMin } })
    if (onSiteMin > freeMin + 0.5)
      found.push({ code: 'unloadTooLong', severity: 'check', values: { pour, load: load.no, onSiteMin, freeMin } })
    return found
  })
}

/** The plan of the day for a start; stops only where nothing can be planned (a crew of fewer than three). */
export function dayPlan(input: DayPlanInput): Result<DayPlan, readonly Finding[]> {
  const { day, pour } = input
  const solved = solveDay(day, { withLargest: true })
  if (!solved.ok) return solved
  const { run, split } = solved.value
  const strips = plannedStrips(day, solved.value)
  const loads = plannedLoads(input, solved.value, strips)
  const areaM2 = strips.reduce((sum, strip) => sum + strip.areaM2, 0)
  const borderM = day.strips.reduce((sum, strip) => sum + strip.borderM, 0)
  const tightest = strips.reduce((least, strip) => (strip.slackMin < least.slackMin ? strip : least))
  const wantedMin = settingValue(day.settings, 'wantedSlackMin')
  const airK = 3
  const ln = 0.3
  const cloud = 0.3
  const { chance } = chanceOfMiss(day, solved.value, {
    hotter: { weather: input.reweather({ airK }), airK },
    windier: { weather: input.reweather({ windFactor: Math.exp(ln) }), ln },
    cloudier: { weather: input.reweather({ cloudAdd: cloud }), cloud },
  })
  const advice = crewAdvice({
    ...{ split, hands: day.hands, areaM2, borderM, hardener: day.hardener, mostAirC: input.mostAirC },
    ...(day.settings === undefined ? {} : { settings: day.settings }),
  })
  const findings: Finding[] = [...loadFindings(pour, loads, day)]
  if (!isSetKnown(run)) findings.push({ code: 'setUnknown', severity: 'check', values: { pour } })
  else if (run.slackMin < 0)
    findings.push({
      code: 'slackNegative',
      severity: 'check',
      values: { pour, strip: tightest.id, lateMin: -run.slackMin },
    })
  else if (run.slackMin < wantedMin)
    findings.push({
      code: 'slackShort',
      severity: 'check',
      values: { pour, strip: tightest.id, slackMin: run.slackMin, wantedMin },
    })
  if (advice.wantedHands > day.hands)
    findings.push({
      code: 'crewShort',
      severity: 'check',
      values: { pour, wantedHands: advice.wantedHands, hands: day.hands, why: advice.why.join(' ') },
    })
  const evaporationMaxKgM2H = Math.max(
    ...day.strips.map((strip, i) =>
      tableOf(day, solved.value.tables, strip.sun.at(-1)!).mostEvaporation(strips[i]!.placeMs),
    ),
  )
  return ok({
    startMs: day.startMs,
    strips,
    tasks: dayTasks(day, solved.value),
    loads,
    slackMin: run.slackMin,
    largestSlackMin: solved.value.largestSlackMin,
    plainSlackMin: solved.value.plainSlackMin,
    tightestStripId: tightest.id,
    firstLostStripId: firstLost(run, day),
    chanceOfMiss: chance,
    evaporationMaxKgM2H,
    split,
    crew: advice.crew,
    whatIf: whatIf({ day, solved: solved.value, hotter: input.reweather({ airK: 10 / 1.8 }), rainMs: input.rainMs }),
    findings,
  })
}
