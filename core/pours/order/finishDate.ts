/** When the site is finished, and what would meet a finish date that is missed. */
import type { Finding } from '../../../shared/problem'
import { type SettingName, settingValue } from '../../../shared/settings'
import { afterTasks } from './afterTasks'
import type { OrderProblem } from './orderProblem'
import { orderBudgets, searchOrder } from './searchOrder'
import type { DaysGround } from './settleDays'
import { dateOf, dayNumber, pourDays } from './workCalendar'

/** The day by which the pours of `last` are washed and open to feet, days kept for weather included. */
function finishAfter(last: number, doneMin: number, { rules, settings, weatherDays }: DaysGround): number {
  const setting = (name: SettingName): number => settingValue(settings, name)
  const weather = Math.ceil(weatherDays)
  // Each day of bad weather pushes the last pour one day of the calendar on.
  const pushed = weather === 0 ? last : (pourDays(rules, last + 1, weather).at(-1) ?? last)
  return afterTasks([], pushed, doneMin, rules, setting)
    .filter(({ task }) => task === 'washRelease' || task === 'openToFeet')
    .reduce((latest, { date }) => Math.max(latest, dayNumber(date)), pushed)
}

/** Last days of the orders with other numbers of pours a day: they hang on no hour, and are asked for at every tap. */
const lastDays = new WeakMap<OrderProblem, Map<number, number | null>>()

/** The last day with another number of pours a day; null where no order exists. */
function lastDayWith(perDay: number, problem: OrderProblem): number | null {
  const known = lastDays.get(problem) ?? new Map<number, number | null>()
  lastDays.set(problem, known)
  const last = known.get(perDay)
  if (last !== undefined) return last
  const { sun: _, ...hourless } = problem
  const answer = searchOrder({ ...hourless, perDay }, { ...orderBudgets.small, exactPours: 0 })
  const found = !answer || answer.days.length === 0 ? null : problem.days[answer.days.length - 1]!
  known.set(perDay, found)
  return found
}

/**
 * Null where the finish date is met or not set. `last` = the last day with a pour, whose last print is done at `doneMin`
 * minutes of it; other orders are taken to end at the same hour.
 */
export function finishFinding(ground: DaysGround, last: number, doneMin: number): Finding | null {
  const { finishBy, problem, pours, settings } = ground
  if (finishBy === undefined) return null
  const limit = dayNumber(finishBy)
  const finishFrom = (day: number): number => finishAfter(day, doneMin, ground)
  const finish = finishFrom(last)
  if (finish <= limit) return null
  const crewPours = Math.max(1, Math.floor(settingValue(settings, 'poursPerCrewDay')))
  const finishWith = (perDay: number): number | null => {
    const day = lastDayWith(perDay, problem)
    return day === null ? null : finishFrom(day)
  }
  const twoADay = finishWith(problem.perDay * 2)
  const secondCrew = finishWith(problem.perDay + crewPours)
  const met = (day: number | null): string => (day !== null && day <= limit ? dateOf(day) : '')
  // As many pours as the days before the finish date hold.
  let usable = 0
  while (usable < problem.days.length && finishFrom(problem.days[usable]!) <= limit) usable++
  const areaM2 = pours.reduce((sum, p) => sum + p.areaM2, 0)
  const largerM2 = usable > 0 ? areaM2 / (usable * problem.perDay) : 0
  return {
    code: 'finishLate',
    severity: 'check',
    values: {
      finishBy,
      finish: dateOf(finish),
      weatherDays: ground.weatherDays,
      twoADay: met(twoADay),
      secondCrew: met(secondCrew),
      largerM2,
      startBy: startMeeting(ground, last, finishFrom),
      earliest: dateOf(Math.min(finish, twoADay ?? finish, secondCrew ?? finish)),
    },
    field: '/calendar/finishBy',
  }
}

/** The latest start from which the order as planned meets the date; none is looked for more than a year back. */
function startMeeting({ rules, slots, finishBy }: DaysGround, last: number, finishFrom: (day: number) => number) {
  const limit = dayNumber(finishBy!)
  const first = Math.min(...slots.flatMap(s => (s.day === null ? [] : [s.day])))
  const needed = pourDays(rules, first, 400).filter(day => day <= last).length
  for (let back = finishFrom(last) - limit; back < 366; back++) {
    const start = first - back
    const days = pourDays(rules, start, needed)
    const end = days.at(-1)
    if (days[0] === start && end !== undefined && finishFrom(end) <= limit) return dateOf(start)
  }
  return ''
}
