/** Every task of the day with its strip, its hands and its time. */

import { settingValue } from '../../../shared/settings'
import type { DayInput } from './dayProblem'
import { ratesOf } from './dayProblem'
import type { SolvedDay } from './solveDay'
import { colorTasks, placingTasks, stampingTasks, type TimedTask, touchUpMin } from './stripWork'
import type { Job, TaskName } from './taskTable'

export interface DayTask {
  readonly stripId: string
  readonly name: TaskName
  readonly job: Job
  readonly fromMs: number
  readonly toMs: number
  readonly hands: number
}

const minuteMs = 60_000

/**
 * The solved day spelled out, in order of time. A gang's tasks follow one another, and the stampers are the placers of
 * the morning, so a hand has one task at a time; nobody stamps while concrete is still placed. Touch-up is what the
 * color hands do once the last color is floated in, strip after strip as they are printed.
 */
export function dayTasks(input: DayInput, solved: SolvedDay): readonly DayTask[] {
  const { split, run, placed } = solved
  const { startMs, settings } = input
  const rates = ratesOf(input)
  const stopMin = settingValue(settings, 'mixingStopMin')
  const tasks: DayTask[] = []
  const lay = (strip: number, job: Job, fromMin: number, timed: readonly TimedTask[]): number => {
    let at = fromMin
    for (const { name, min, hands } of timed) {
      if (min <= 0) continue
      const fromMs = startMs + at * minuteMs
      at += min
      tasks.push({ stripId: input.strips[strip]!.id, name, job, fromMs, toMs: startMs + at * minuteMs, hands })
    }
    return at
  }
  const byStrip = [...run.times].sort((a, b) => a.strip - b.strip)
  byStrip.forEach(({ strip, stops, colorFromMin }) => {
    const size = input.strips[strip]!
    const methodM2H = size.volumeM3 > 0 ? (input.methodM3H * size.areaM2) / size.volumeM3 : Number.POSITIVE_INFINITY
    lay(strip, 'placing', placed[strip]!.fromMin + stops * stopMin, placingTasks(size, split.placers, rates, methodM2H))
    lay(strip, 'color', colorFromMin, colorTasks(size, split.color, rates))
  })
  let colorFreeMin = Math.max(0, ...run.times.map(time => time.colorToMin))
  for (const { strip, stampFromMin, borderFromMin, stampToMin, borderToMin } of run.times) {
    const size = input.strips[strip]!
    lay(strip, 'stamping', stampFromMin, stampingTasks(size, split.placers, rates, split.border === 0))
    const alone = split.border > 0 && size.borderM > 0
    if (alone)
      lay(strip, 'border', borderFromMin, [{ name: 'border', min: borderToMin - borderFromMin, hands: split.border }])
    const printedMin = alone ? Math.max(stampToMin, borderToMin) : stampToMin
    colorFreeMin = lay(strip, 'color', Math.max(colorFreeMin, printedMin), [
      { name: 'touchUp', min: touchUpMin(size, split.color, rates), hands: split.color },
    ])
  }
  return tasks.sort((a, b) => a.fromMs - b.fromMs || a.toMs - b.toMs)
}
