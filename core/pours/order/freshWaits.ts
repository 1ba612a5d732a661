/** How many days fresh concrete holds up its neighbors and the ways past it, by the hour at which pours are done. */
import type { Way } from '../../../shared/document/day'
import { type SettingName, type SettingOverrides, settingValue } from '../../../shared/settings'
import type { OrderProblem } from './orderProblem'
import { minutesOf, weekdayOf } from './workCalendar'

export type FreshWaits = Pick<OrderProblem, 'neighborAge' | 'closedBelow'>

export interface WaitsOf {
  readonly days: readonly number[]
  readonly wayIds: readonly string[]
  readonly ways: readonly Way[]
  readonly settings: SettingOverrides | undefined
}

/** `doneMin` = minutes after midnight of its day at which a pour's last print is done. */
export function freshWaits({ days, wayIds, ways, settings }: WaitsOf, doneMin: number): FreshWaits {
  const setting = (name: SettingName): number => settingValue(settings, name)
  const wayHours = wayIds.map(id => ways.find(way => way.id === id)?.open ?? [])
  return {
    neighborAge: Math.max(
      1,
      Math.ceil(setting('neighborAgeDays')),
      Math.floor((doneMin + 60 * setting('pullFormsH')) / 1440),
    ),
    closedBelow: days.map(day =>
      wayHours.map(rows => {
        const own = rows.filter(row => row.weekdays.includes(weekdayOf(day)))
        if (own.length === 0) return 0
        // Closed while the youngest pour in front is not yet open to feet at the first hour it is needed.
        const first = Math.min(...own.map(row => minutesOf(row.from)))
        return Math.max(1, Math.ceil((doneMin + 60 * setting('openToFeetH') - first) / 1440))
      }),
    ),
  }
}

/** Whether an order searched by `problem` was searched by the waits that follow from this hour. */
export function waitsAlike(problem: OrderProblem, of: Omit<WaitsOf, 'days'>, doneMin: number): boolean {
  const { neighborAge, closedBelow } = freshWaits({ ...of, days: problem.days }, doneMin)
  return (
    neighborAge === problem.neighborAge &&
    closedBelow.every((row, d) => row.every((wait, w) => wait === problem.closedBelow[d]![w]))
  )
}
