/** When the site is finished, and what would meet a finish date that is missed. */
import type { Calendar } from '../../../shared/document/day'
import type { Finding } from '../../../shared/problem'
import type { SettingName } from '../../../shared/settings'
import { afterTasks } from './afterTasks'
import type { OrderProblem } from './orderProblem'
import { type OrderBudget, orderBudgets, searchOrder } from './searchOrder'
import { type CalendarRules, dateOf, dayNumber, pourDays } from './workCalendar'

export interface FinishQuestion {
  readonly input: { readonly calendar?: Calendar; readonly pours: readonly { readonly areaM2: number }[] }
  readonly problem: OrderProblem
  readonly rules: CalendarRules
  readonly setting: (name: SettingName) => number
  readonly budget: OrderBudget
  readonly slots: readonly { readonly pour: number; readonly day: number | null }[]
}

/** The day by which the pours of `last` are washed and open to feet, days kept for weather included. */
function finishAfter(last: number, question: FinishQuestion): number {
  const { rules, setting, input } = question
  const weather = Math.ceil(input.calendar?.weatherDays ?? 0)
  // Each day of bad weather pushes the last pour one day of the calendar on.
  const pushed = weather === 0 ? last : (pourDays(rules, last + 1, weather).at(-1) ?? last)
  const done = afterTasks([], pushed, 60 * setting('pourDoneH'), rules, setting)
  return done
    .filter(({ task }) => task === 'washRelease' || task === 'openToFeet')
    .reduce((latest, { date }) => Math.max(latest, dayNumber(date)), pushed)
}

/** The finish with another number of pours a day; null where none exists. */
function finishWith(perDay: number, question: FinishQuestion): number | null {
  const { problem } = question
  const answer = searchOrder({ ...problem, perDay }, { ...orderBudgets.small, exactPours: 0 })
  if (!answer || answer.days.length === 0) return null
  return finishAfter(problem.days[answer.days.length - 1]!, question)
}

/** Null where the finish date is met, not set, or nothing is dated. */
export function finishFinding(question: FinishQuestion): Finding | null {
  const { input, problem, slots } = question
  const finishBy = input.calendar?.finishBy
  const dated = slots.flatMap(s => (s.day === null ? [] : [s.day]))
  if (finishBy === undefined || dated.length === 0) return null
  const limit = dayNumber(finishBy)
  const finish = finishAfter(Math.max(...dated), question)
  if (finish <= limit) return null
  const crewPours = Math.max(1, Math.floor(question.setting('poursPerCrewDay')))
  const twoADay = finishWith(problem.perDay * 2, question)
  const secondCrew = finishWith(problem.perDay + crewPours, question)
  const met = (day: number | null): string => (day !== null && day <= limit ? dateOf(day) : '')
  // As many pours as the days before the finish date hold.
  let usable = 0
  while (usable < problem.days.length && finishAfter(problem.days[usable]!, question) <= limit) usable++
  const areaM2 = input.pours.reduce((sum, p) => sum + p.areaM2, 0)
  const largerM2 = usable > 0 ? areaM2 / (usable * problem.perDay) : 0
  const earliest = Math.min(finish, twoADay ?? finish, secondCrew ?? finish)
  const startBy = startMeeting(question, finish, limit)
  return {
    code: 'finishLate',
    severity: 'check',
    values: {
      finishBy,
      finish: dateOf(finish),
      weatherDays: input.calendar?.weatherDays ?? 0,
      twoADay: met(twoADay),
      secondCrew: met(secondCrew),
      largerM2,
      startBy,
      earliest: dateOf(earliest),
    },
    field: '/calendar/finishBy',
  }
}

/** The latest start from which the order as planned meets the date; none is looked for more than a year back. */
function startMeeting(question: FinishQuestion, finish: number, limit: number): string {
  const { rules, slots } = question
  const dated = slots.flatMap(s => (s.day === null ? [] : [s.day]))
  const first = Math.min(...dated)
  const needed = pourDays(rules, first, 400).filter(day => day <= Math.max(...dated)).length
  for (let back = finish - limit; back < 366; back++) {
    const start = first - back
    const days = pourDays(rules, start, needed)
    const last = days.at(-1)
    if (days[0] === start && last !== undefined && finishAfter(last, question) <= limit) return dateOf(start)
  }
  return ''
}
