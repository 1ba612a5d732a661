/** The same pour at many start times: earliest and latest that give the slack wanted. */
import { settingValue } from '../../../shared/settings'
import type { DayInput, SetTables } from './dayProblem'
import { solveDay } from './solveDay'

export interface StartRow {
  readonly startMs: number
  readonly slackMin: number
  /** m³·min of retarder. */
  readonly cost: number
  readonly lastStampMs: number
}

export interface StartScan {
  readonly rows: readonly StartRow[]
  /** With the slack wanted and done before `doneByMs`; null when none. */
  readonly earliestMs: number | null
  readonly latestMs: number | null
  /** The row with the largest slack; null without rows. */
  readonly best: StartRow | null
}

/** One set of heat-balance runs serves all starts. `doneByMs` = dark or the quiet hour. */
export function scanStarts(
  input: DayInput,
  startsMs: readonly number[],
  doneByMs = Number.POSITIVE_INFINITY,
): StartScan {
  const tables: SetTables = input.tables ?? new Map()
  const wantedMin = settingValue(input.settings, 'wantedSlackMin')
  const rows = startsMs.flatMap((startMs): StartRow[] => {
    const solved = solveDay({ ...input, startMs, tables })
    if (!solved.ok) return []
    const { run } = solved.value
    const lastMin = Math.max(...run.times.map(time => Math.max(time.stampToMin, time.borderToMin)))
    return [{ startMs, slackMin: run.slackMin, cost: run.cost, lastStampMs: startMs + lastMin * 60_000 }]
  })
  const good = rows.filter(row => row.slackMin >= wantedMin && row.lastStampMs <= doneByMs).map(row => row.startMs)
  return {
    rows,
    earliestMs: good.length > 0 ? Math.min(...good) : null,
    latestMs: good.length > 0 ? Math.max(...good) : null,
    best: rows.reduce<StartRow | null>((top, row) => (top === null || row.slackMin > top.slackMin ? row : top), null),
  }
}
