/** The day of a pour: planned, scanned over starts, planned again after a tap; and the dosing against brute force. */

import { dayPlan } from '../../core/pours/day/dayPlan'
import { largestSlack, runDoses } from '../../core/pours/day/dosing'
import { replan } from '../../core/pours/day/replan'
import { scanStarts } from '../../core/pours/day/scanStarts'
import { solveDay } from '../../core/pours/day/solveDay'
import { clock, weatherOf } from '../concrete/dayFixture'
import { crewDay, dayOf, planInput } from '../day/crewDay'
import { everyDosing, randomProblem } from '../day/randomProblem'
import type { Bench } from './row'

function medianMs(work: () => void, turns = 15): number {
  work()
  const times = Array.from({ length: turns }, () => {
    const from = performance.now()
    work()
    return performance.now() - from
  }).sort((a, b) => a - b)
  return times[Math.floor(turns / 2)]!
}

export const bench: Bench = async () => {
  const hotDay = dayOf(92, 70)
  const weather = weatherOf(hotDay)
  const of = { areaFt2: 640, hands: 5, startH: 7, borderM: 20 }
  const input = planInput(hotDay, of)
  const day = crewDay({ ...of, weather })
  const starts = Array.from({ length: 60 }, (_, i) => clock(5.5 + i / 6))
  const solved = solveDay(day)
  if (!solved.ok) throw new Error('the bench’s own day cannot be planned')
  const placed = { strip: 0, placedToMs: day.startMs + 20 * 60_000 }
  const tap = { ...placed, readyMs: day.startMs + (solved.value.run.times[0]!.window.readyMin - 10) * 60_000 }
  let equal = 0
  const cases = 500
  for (let seed = 1; seed <= cases; seed++) {
    const problem = randomProblem(seed)
    let most = Number.NEGATIVE_INFINITY
    for (const doses of everyDosing(problem.loadOf.length, problem.dosesMin.length))
      most = Math.max(most, runDoses(problem, doses)?.slackMin ?? Number.NEGATIVE_INFINITY)
    if (Math.abs(largestSlack(problem)!.slackMin - most) < 1e-9) equal++
  }
  const time = (id: string, what: string, value: number, target: string) => ({
    ...{ id, what, value, target },
    unit: 'ms',
    peer: null,
    ok: null,
  })
  return [
    time(
      'day-solve',
      'doses, hands and windows of a 640 ft² pour',
      medianMs(() => solveDay({ ...day, tables: new Map() })),
      '≤ 10',
    ),
    time(
      'day-plan',
      'the same with what-if table and 200 draws',
      medianMs(() => dayPlan(input)),
      'reported',
    ),
    time(
      'day-scan',
      '60 starts',
      medianMs(() => scanStarts(day, starts), 5),
      '≤ 250',
    ),
    time(
      'day-replan',
      'after a tap of placed',
      medianMs(() => replan(day, solved.value, [placed])),
      '≤ 50',
    ),
    time(
      'day-replan-ready',
      'after a tap of ready, the set learned anew',
      medianMs(() => replan(day, solved.value, [tap])),
      '≤ 50',
    ),
    {
      ...{ id: 'day-dosing', what: 'dosings equal to brute force, of 500 seeded', value: equal, unit: '1' },
      ...{ peer: 'brute force', target: '= 500', ok: equal === cases },
    },
  ]
}
