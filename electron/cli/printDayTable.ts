/** The day of one pour as a table for the terminal. */
import type { Plan } from '../../core/plan/plan'
import { tellPortions } from '../../core/pours/day/doseWords'
import type { PourDayPlan } from '../../core/pours/day/pourDay'
import { caseName, daySentence } from '../../core/reports/day/daySheetWords'
import { sheetClock } from '../../core/reports/sheetClock'
import { printMeasures } from '../../core/units/printMeasures'
import type { Problem } from '../../shared/problem'
import { printProblems } from './printProblems'
import { textTable } from './textTable'

const ruleWords = {
  userCap: 'your cap',
  commonPractice: 'common practice',
  crewAndWeather: 'crew, hour and weather',
} as const

const slackWords = (min: number): string =>
  min >= 0 ? `${Math.round(min)} min` : Number.isFinite(min) ? `${Math.round(-min)} min late` : 'lost'

/** How the logs of earlier pours moved the set; nothing where none did. */
function learnedLine({ input: { learned } }: PourDayPlan): string {
  if (learned === undefined) return ''
  const percent = Math.round(Math.abs(1 - Math.exp(learned.lnFactor)) * 100)
  const moved =
    percent < 1 ? 'as first guessed' : `${percent} % ${learned.lnFactor < 0 ? 'sooner' : 'later'} than first guessed`
  return `  Set of the mix, learned from earlier pours: ${moved}\n`
}

export function printDayTable(plan: Plan, day: PourDayPlan, problems: readonly Problem[]): string {
  const print = printMeasures(plan.site.units)
  const clock = (ms: number): string => sheetClock(ms, plan.site.place.zone, plan.site.units)
  const { plan: own, capacity } = day
  const strips = textTable(
    [
      ['Strip', 'area', 'placed', 'dose', 'ready', '10–90 %', 'too hard', 'stamped', 'slack'],
      ...own.strips.map(strip => [
        strip.id,
        print.area(strip.areaM2),
        `${clock(strip.placeMs)}–${clock(strip.placedMs)}`,
        strip.doseMin === 0 ? 'plain' : `${strip.doseMin} min`,
        clock(strip.readyMs),
        `${clock(strip.readyP10Ms)}–${clock(strip.readyP90Ms)}`,
        clock(strip.tooHardMs),
        `${clock(strip.stampFromMs)}–${clock(strip.stampToMs)}`,
        slackWords(strip.slackMin),
      ]),
    ],
    ['left', 'right', 'right', 'right', 'right', 'right', 'right', 'right', 'right'],
  )
  const loads = textTable(
    [
      ['Load', 'volume', 'batched', 'on site', 'empty', 'portions'],
      ...own.loads.map(load => [
        String(load.no),
        print.volume(load.volumeM3),
        clock(load.batchMs),
        clock(load.onSiteMs),
        clock(load.emptyMs),
        tellPortions(load.portions),
      ]),
    ],
    ['left', 'right', 'right', 'right', 'right', 'left'],
  )
  const marks = day.doseMarks
    .map(mark => {
      const tape = mark.marks.map(({ distanceM, corner }) => `${print.length(distanceM)} from ${corner}`).join(' and ')
      return `  Dose before ${mark.beforeStripId}${tape === '' ? '' : `, at ${tape}`}; ${print.volume(mark.leftM3)} left\n`
    })
    .join('')
  const cases = textTable(
    [
      ['If', 'start', 'slack', 'do next'],
      ...own.whatIf.map(row => [
        caseName(row.case, plan.site.units),
        clock(row.startMs),
        slackWords(row.slackMin),
        row.doNext,
      ]),
    ],
    ['left', 'right', 'right', 'left'],
  )
  const roles = [...new Set(own.crew.map(({ role }) => role))].map(
    role => `${own.crew.filter(row => row.role === role).length} ${role}`,
  )
  return [
    `Pour ${day.number}, ${day.date}, first truck ${clock(own.startMs)}, slack ${slackWords(own.slackMin)}`,
    ` (without retarder ${slackWords(own.plainSlackMin)}, at most ${slackWords(own.largestSlackMin)})\n`,
    `  At most ${print.area(capacity.capacityM2)} at a time: ${ruleWords[capacity.rule]}\n\n`,
    strips,
    `\n${loads}`,
    marks === '' ? '' : `\n${marks}`,
    `\n${cases}`,
    `\n  Crew: ${roles.join(', ')}\n`,
    learnedLine(day),
    problems.length === 0 ? '' : `\n${printProblems(problems, plan.site.units)}`,
    `\n${daySentence}\n`,
  ].join('')
}
