/** Sun on each pour by the hour at which it starts, for an order that starts pours at more than one hour. */
import type { Conditions } from '../../../shared/document/day'
import type { Exposure } from '../../sun/exposure'
import { atClock } from '../../sun/siteDay'
import type { SunByHour } from './planDays'
import { type CalendarRules, pourHoursOn } from './workCalendar'

/** On a colder day the sun helps: nobody orders the pours by it then. 60 °F, own choice. */
const sunHelpsBelowC = 15.6

export const isSunWelcome = (conditions: Conditions | undefined): boolean => {
  if (!conditions) return false
  const highC = conditions.kind === 'day' ? conditions.highC : Math.max(...conditions.hours.map(({ airC }) => airC))
  return highC < sunHelpsBelowC
}

/** True where a crew places more than one pour in a day, or the first hour is not the same on all weekdays. */
export function mayStartApart(rules: CalendarRules, poursPerCrewDay: number): boolean {
  const week = Array.from({ length: 7 }, (_, day) => pourHoursOn({ ...rules, daysOff: [] }, day)?.fromMin)
  return poursPerCrewDay > 1 || new Set(week.filter(min => min !== undefined)).size > 1
}

export interface PourSun {
  readonly exposed: Exposure
  /** Share in direct sun at each instant of the exposure; null without sun. */
  readonly shares: readonly (number | null)[]
  /** From first concrete to the last print. */
  readonly openH: number
}

/** For pours without a raster every hour is alike. */
export const sunByHour = (pours: readonly (PourSun | null)[], turnMin: number): SunByHour => ({
  turnMin,
  hoursFrom(pour, startMin) {
    const of = pours[pour]
    if (!of) return 0
    const { instants, lit, litMin, day } = of.exposed
    const fromMs = atClock(day, startMin)
    const toMs = fromMs + of.openH * 3_600_000
    return lit.reduce((sum, index, step) => {
      const ms = instants[index]!
      return ms < fromMs || ms >= toMs ? sum : sum + ((of.shares[index] ?? 0) * litMin[step]!) / 60
    }, 0)
  },
})
