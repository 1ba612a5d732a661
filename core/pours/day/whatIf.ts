/** What the foreman asks on the day: late truck, one hand short, hotter, rain; each with what to do. */
import { settingValue } from '../../../shared/settings'
import type { SlabWeather } from '../../concrete/slabWeather'
import { type DayInput, dosesMin } from './dayProblem'
import { tellDoses } from './doseWords'
import type { DoseRun } from './dosing'
import { type SolvedDay, solveDay } from './solveDay'

export const whatIfCases = ['late15', 'late30', 'late45', 'late60', 'handShort', 'hotter', 'rain14'] as const
export type WhatIfCase = (typeof whatIfCases)[number]

export interface WhatIfRow {
  readonly case: WhatIfCase
  readonly slackMin: number
  readonly firstLostStripId: string | null
  readonly startMs: number
  /** A sentence or two for the sheet. */
  readonly doNext: string
}

const minuteMs = 60_000
const lateMin: Partial<Record<WhatIfCase, number>> = { late15: 15, late30: 30, late45: 45, late60: 60 }

export interface WhatIfInput {
  readonly day: DayInput
  readonly solved: SolvedDay
  /** The same day 10 °F (5.6 K) hotter. */
  readonly hotter: SlabWeather
  /** 14:00 of the site's clock. */
  readonly rainMs: number
}

/** In the order of stamping, the first strip whose work ends after too hard; null when none does. */
export const firstLost = (run: DoseRun, day: DayInput): string | null => {
  const lost = run.times.find(time => {
    const done = day.strips[time.strip]!.borderM > 0 ? Math.max(time.stampToMin, time.borderToMin) : time.stampToMin
    return done > time.window.tooHardMin
  })
  return lost === undefined ? null : day.strips[lost.strip]!.id
}

function tellNext(run: DoseRun, day: DayInput, plan: DoseRun): string {
  const wantedMin = settingValue(day.settings, 'wantedSlackMin')
  const doses =
    run.doses.join() === plan.doses.join()
      ? 'Same retarder as planned.'
      : `Retarder: ${tellDoses(run.doses.map((dose, i) => ({ id: day.strips[i]!.id, doseMin: dosesMin[dose]! })))}.`
  if (run.slackMin >= wantedMin) return doses
  if (run.slackMin >= 0) return `${doses} Keep the texture; touch-up waits until tomorrow.`
  const lost = firstLost(run, day)
  const index = day.strips.findIndex(strip => strip.id === lost)
  if (index <= 0) return 'Do not pour today: ask for another slot or more hands.'
  return `${doses} Set the header before strip ${lost} and finish there; hold the rest of the concrete.`
}

/** The table of the day sheet. Cases whose crew cannot work at all are told as such. */
export function whatIf({ day, solved, hotter, rainMs }: WhatIfInput): readonly WhatIfRow[] {
  const plan = solved.run
  const again = (name: WhatIfCase, changed: DayInput): WhatIfRow => {
    const made = solveDay(changed)
    if (!made.ok)
      return {
        ...{ case: name, slackMin: Number.NEGATIVE_INFINITY, firstLostStripId: day.strips[0]?.id ?? null },
        ...{ startMs: changed.startMs, doNext: 'Too few hands to place, color and stamp: do not pour today.' },
      }
    const { run } = made.value
    return {
      case: name,
      slackMin: run.slackMin,
      firstLostStripId: firstLost(run, changed),
      startMs: changed.startMs,
      doNext: tellNext(run, changed, plan),
    }
  }
  const rain = (): WhatIfRow => {
    const rainMin = (rainMs - day.startMs) / minuteMs
    const ends = plan.times.map(time => ({ id: day.strips[time.strip]!.id, endMin: time.stampToMin }))
    const open = ends.find(end => end.endMin > rainMin)
    const slackMin = Math.min(plan.slackMin, ...ends.map(end => rainMin - end.endMin))
    const startMs = day.startMs - Math.max(0, Math.ceil(-slackMin / 5) * 5) * minuteMs
    const doNext =
      open === undefined
        ? 'Printed before the rain: cover it from then until the color can be washed.'
        : rainMin <= 0
          ? 'The rain is there first: do not start.'
          : `Strip ${open.id} is still open then: covers at hand, or start earlier.`
    return { case: 'rain14', slackMin, firstLostStripId: open?.id ?? firstLost(plan, day), startMs, doNext }
  }
  return whatIfCases.map(name => {
    const late = lateMin[name]
    const { tables: _, ...fresh } = day
    if (late !== undefined)
      return again(name, { ...day, tables: solved.tables, startMs: day.startMs + late * minuteMs })
    if (name === 'handShort') return again(name, { ...day, tables: solved.tables, hands: day.hands - 1 })
    if (name === 'hotter') return again(name, { ...fresh, weather: hotter })
    return rain()
  })
}
