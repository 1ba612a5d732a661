/** The days once it is known when the last print of each is done: what waits for the concrete waits from then. */
import { type SettingName, type SettingOverrides, settingValue } from '../../../shared/settings'
import { afterTasks } from './afterTasks'
import type { PourDay } from './planDays'
import { type CalendarRules, clockOf, dateOf, dayNumber } from './workCalendar'

/**
 * Tasks after the pours and the hours at which ways open again, counted from the hour at which the day's last print is
 * done. `doneMinOf` = minutes after midnight; null keeps the day as it is.
 */
export function daysDone(
  days: readonly PourDay[],
  doneMinOf: (day: PourDay) => number | null,
  rules: CalendarRules,
  settings: SettingOverrides | undefined,
): readonly PourDay[] {
  const setting = (name: SettingName): number => settingValue(settings, name)
  return days.map(day => {
    const doneMin = doneMinOf(day)
    if (day.date === null || doneMin === null) return day
    const opensMin = doneMin + 60 * setting('openToFeetH')
    const opens = {
      date: dateOf(dayNumber(day.date) + Math.floor(opensMin / 1440)),
      time: clockOf(Math.round(opensMin % 1440)),
    }
    return {
      ...day,
      waysReopen: day.waysReopen.map(({ wayId }) => ({ wayId, ...opens })),
      afterTasks: afterTasks(day.pourIds, dayNumber(day.date), doneMin, rules, setting),
    }
  })
}
