/** The hands told off, the doses and the order of stamping that serve a pour best. */
import type { Finding } from '../../../shared/problem'
import { err, ok, type Result } from '../../../shared/problem'
import { settingValue } from '../../../shared/settings'
import { type CrewSplit, crewSplits, leastHands } from './crewSplit'
import { type DayInput, dayProblem, type PlacedWindows, type SetTables, windowsFor } from './dayProblem'
import { bestGrowth, cheapestDoses, type DoseProblem, type DoseRun, largestSlack, runDoses } from './dosing'

export interface SolvedDay {
  readonly split: CrewSplit
  readonly run: DoseRun
  readonly problem: DoseProblem
  readonly placed: PlacedWindows['placed']
  readonly tables: SetTables
  /** With any dosing, stamped in placing order; the run's own slack where nothing more was looked for. */
  readonly largestSlackMin: number
  /** Slack of the same hands without any retarder. */
  readonly plainSlackMin: number
}

export interface SolveOptions {
  /** Least retarder with this slack; the setting if left out. */
  readonly wantedMin?: number
  /** Look for the largest slack even where the wanted one is reached without retarder. */
  readonly withLargest?: boolean
}

/** Nothing more goes into the drum: a strip after a dosed one of the same load keeps its dose. */
function plainAfter({ fixedDoses, loadOf }: DoseProblem, strip: number): number {
  const last = (fixedDoses?.length ?? 0) - 1
  return last >= 0 && loadOf[last] === loadOf[strip] ? fixedDoses![last]! : 0
}

/**
 * The least retarder that gives the slack wanted, else the largest slack. Stamping may grow at either end where that
 * gains. Fewer than three hands cannot do it.
 */
export function solveDay(input: DayInput, options: SolveOptions = {}): Result<SolvedDay, readonly Finding[]> {
  const { hands, strips } = input
  if (!(hands >= leastHands)) return err([{ code: 'crewTooSmall', severity: 'stop', values: { hands, leastHands } }])
  const wantedMin = options.wantedMin ?? settingValue(input.settings, 'wantedSlackMin')
  const tables = input.tables ?? new Map()
  const byPlacers = new Map<number, PlacedWindows>()
  const made = (placers: number): PlacedWindows => {
    const known = byPlacers.get(placers) ?? windowsFor(input, placers, tables)
    byPlacers.set(placers, known)
    return known
  }
  const splits = crewSplits(
    hands,
    strips.some(strip => strip.borderM > 0),
  )
  const tries = splits.map(split => ({ split, problem: dayProblem(input, split, made(split.placers)) }))
  const plain = strips.map((_, strip) => tries[0]!.problem.fixedDoses?.[strip] ?? plainAfter(tries[0]!.problem, strip))
  interface Best {
    readonly split: CrewSplit
    readonly problem: DoseProblem
    readonly run: DoseRun
  }
  let best: Best | null = null
  for (const { split, problem } of tries) {
    const run = runDoses(problem, plain)
    if (run && (best === null || run.slackMin > best.run.slackMin)) best = { split, problem, run }
  }
  const plainBest = best!
  best = plainBest
  let largestMin = plainBest.run.slackMin
  if (largestMin < wantedMin || options.withLargest === true)
    for (const { split, problem } of tries) {
      const run = largestSlack(problem, largestMin)
      if (!run) continue
      largestMin = run.slackMin
      if (best.run.slackMin < wantedMin) best = { split, problem, run }
    }
  if (plainBest.run.slackMin < wantedMin && largestMin >= wantedMin) {
    let least = Number.POSITIVE_INFINITY
    for (const { split, problem } of tries) {
      const run = cheapestDoses(problem, wantedMin, least)
      if (!run) continue
      least = run.cost
      best = { split, problem, run }
    }
  }
  // Walking around the slab is only worth it where the placing order does not do.
  const growth = best.run.slackMin < wantedMin ? bestGrowth(best.problem, best.run.doses) : null
  const run = growth && growth.slackMin > best.run.slackMin + 1 ? growth : best.run
  return ok({
    split: best.split,
    run,
    problem: best.problem,
    placed: made(best.split.placers).placed,
    tables,
    largestSlackMin: largestMin,
    plainSlackMin: plainBest.run.slackMin,
  })
}
