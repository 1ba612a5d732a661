/** The days with their hours: what waits for the concrete waits from the hour at which the last print is done. */
import type { Way } from '../../../shared/document/day'
import type { Finding } from '../../../shared/problem'
import { type SettingName, type SettingOverrides, settingValue } from '../../../shared/settings'
import { type AfterTask, afterTasks } from './afterTasks'
import { finishFinding } from './finishDate'
import type { OrderProblem } from './orderProblem'
import { type ShutDay, waysOn } from './waysOn'
import { type CalendarRules, clockOf, dateOf, pourHoursOn } from './workCalendar'

export interface PourDay {
  readonly day: number
  readonly date: string | null
  readonly pourIds: readonly string[]
  /** Hours in which the plant delivers and noise is allowed, `HH:MM`; null outside the calendar. */
  readonly hours: { readonly from: string; readonly to: string } | null
  /** When the day's last print is done, `HH:MM`: by the day plans of its pours, else at the usual hour. */
  readonly done: { readonly time: string; readonly by: 'dayPlan' | 'usual' } | null
  /** Ways in and out that fresh concrete closes on this date, that of the day before included. */
  readonly closedWayIds: readonly string[]
  /** When the ways closed by this day's pours can be used again. */
  readonly waysReopen: readonly { readonly wayId: string; readonly date: string; readonly time: string }[]
  readonly afterTasks: readonly AfterTask[]
}

/** A pour on its day; null where the calendar has none left. */
export interface DaySlot {
  /** Index into the pours. */
  readonly pour: number
  readonly day: number | null
}

/** What the order leaves: which pour on which day, before it is known when each is done. */
export interface DaysGround {
  readonly pours: readonly { readonly id: string; readonly number: string; readonly areaM2: number }[]
  /** In the order of the pours. */
  readonly slots: readonly DaySlot[]
  readonly problem: OrderProblem
  /** Of the ways of the problem. */
  readonly wayIds: readonly string[]
  readonly ways: readonly Way[]
  readonly rules: CalendarRules
  readonly finishBy: string | undefined
  /** Days kept for bad weather. */
  readonly weatherDays: number
  readonly settings: SettingOverrides | undefined
  /** Minute of the day at which a pour without a day plan is done. */
  readonly usualDoneMin: number
}

export interface SettledDays {
  readonly days: readonly PourDay[]
  /** On ways in and out, and on the finish date. */
  readonly findings: readonly Finding[]
}

/** One finding for each run of days that the same concrete closes. */
function shutFindings(shut: readonly ShutDay[], { ways, pours }: DaysGround): Finding[] {
  const runs: { from: number; to: number; reason: string }[] = []
  for (const { day, closed } of shut) {
    const reason = closed
      .map(({ wayId, pours: front }) => {
        const at = ways.findIndex(({ id }) => id === wayId)
        const name = ways[at]?.name ?? (ways.length === 1 ? 'the way in and out' : `way ${at + 1}`)
        return front.length > 0
          ? `fresh concrete of pour ${front.map(i => pours[i]!.number).join(' and ')} closes ${name}`
          : `fresh concrete lies between ${name} and the outside`
      })
      .join('; ')
    const last = runs.at(-1)
    if (last?.to === day - 1 && last.reason === reason) last.to = day
    else runs.push({ from: day, to: day, reason })
  }
  return runs.map(({ from, to, reason }) => ({
    code: 'waysClosed',
    severity: 'check',
    values: { date: dateOf(from), until: dateOf(to), reason },
    field: '/access/ways',
  }))
}

/** What is known of a pour once it is figured and its day is planned. */
export interface PourKnown {
  /** Its last print is done, minutes after midnight of its day; null where no day plan says. */
  readonly doneMin: number | null
  /** Contraction joint in it (m); null where it is not figured. */
  readonly contractionM: number | null
}

/**
 * Closed ways, when they open, tasks after the pours and the finish, counted from the minute of its day at which each
 * pour's last print is done; the usual hour holds where no day plan says.
 */
export function settleDays(ground: DaysGround, knownOf: (pourId: string) => PourKnown): SettledDays {
  const { pours, slots, problem, wayIds, ways, rules, settings, usualDoneMin } = ground
  const setting = (name: SettingName): number => settingValue(settings, name)
  const known = pours.map(({ id }) => knownOf(id))
  const doneMin = known.map(own => own.doneMin ?? usualDoneMin)
  const sawM = (own: readonly number[]): number | null =>
    own.reduce<number | null>((sum, pour) => {
      const lengthM = known[pour]!.contractionM
      return sum === null || lengthM === null ? null : sum + lengthM
    }, 0)
  const poursOn = (day: number | null): number[] => slots.filter(s => s.day === day).map(s => s.pour)
  const dayDoneMin = (day: number): number => Math.max(...poursOn(day).map(pour => doneMin[pour]!))
  const on = waysOn(slots, problem, wayIds, ways, doneMin, usualDoneMin, 60 * setting('openToFeetH'))
  const dayNumbers = [...new Set(slots.flatMap(s => (s.day === null ? [] : [s.day])))].sort((a, b) => a - b)
  const hasUndated = slots.some(s => s.day === null)
  const days = [...dayNumbers, ...(hasUndated ? [null] : [])].map((day, i): PourDay => {
    const own = poursOn(day)
    const pourIds = own.map(pour => pours[pour]!.id)
    if (day === null)
      return {
        ...{ day: i + 1, date: null, pourIds, hours: null, done: null },
        ...{ closedWayIds: [], waysReopen: [], afterTasks: [] },
      }
    const hours = pourHoursOn(rules, day)
    const done = dayDoneMin(day)
    return {
      day: i + 1,
      date: dateOf(day),
      pourIds,
      hours: hours && { from: clockOf(hours.fromMin), to: clockOf(Math.min(hours.toMin, 1439)) },
      done: {
        time: clockOf(Math.round(done) % 1440),
        by: own.every(pour => known[pour]!.doneMin !== null) ? 'dayPlan' : 'usual',
      },
      closedWayIds: on.closedOn(day),
      waysReopen: on.reopen(day),
      afterTasks: afterTasks(pourIds, day, done, rules, setting, sawM(own)),
    }
  })
  const last = dayNumbers.at(-1)
  const late = last === undefined ? null : finishFinding(ground, last, dayDoneMin(last))
  return { days, findings: [...shutFindings(on.shut, ground), ...(late ? [late] : [])] }
}
