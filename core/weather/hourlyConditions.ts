import { DateTime } from 'luxon'
import type { Conditions, WeatherHour } from '../../shared/document/day'
import { coversDay } from '../pours/day/coversDay'
import { siteDay } from '../sun/siteDay'

/**
 * Hours as the weather of a site. `date` = the day they are meant for, `YYYY-MM-DD`; where they do not reach over it, the
 * first day that they do.
 */
export function hourlyConditions(
  hours: readonly WeatherHour[],
  date: string,
  zone: string,
  source: string,
): Extract<Conditions, { kind: 'hourly' }> {
  const dateOf = ({ startUtc }: WeatherHour): string => DateTime.fromISO(startUtc, { zone }).toISODate() ?? date
  const dates = [...new Set(hours.map(dateOf))].sort()
  const isWhole = (of: string): boolean => {
    const day = siteDay(of, zone)
    return day.ok && coversDay(hours, day.value)
  }
  const own = [date, ...dates].find(isWhole) ?? (dates.includes(date) ? date : dates[0]) ?? date
  return { kind: 'hourly', date: own, hours: [...hours], source }
}
