/** Weather for the days of the site, looked through before it is taken: what cannot be used leaves the old one in place. */
import { setConditions } from '../../core/document/commands/setSite'
import { coversDay } from '../../core/pours/day/coversDay'
import { dayConditions } from '../../core/pours/day/dayConditions'
import { siteDay } from '../../core/sun/siteDay'
import type { Conditions, WeatherHour } from '../../shared/document/day'
import { applyEdit } from '../app/applyEdit'
import type { Session } from '../app/session'
import { wordFindings } from '../app/wordFindings'
import { dateAt } from '../atSlab/pourToday'
import { shownDocument } from '../store/siteStore'

/** More faults than these say nothing new. */
const mostTold = 3

/** Why it was refused; null where it was taken. */
export function takeWeather(session: Session, conditions: Conditions): string | null {
  const site = shownDocument(session.site.getState())
  if (!site) return null
  const tried = dayConditions(conditions, conditions.date, site.place, site.settings)
  if (!tried.ok) return wordFindings(site, tried.error.slice(0, mostTold))
  applyEdit(session, 'weather', setConditions(conditions))
  return null
}

/** `date` = the day the hours are meant for; where they do not reach over it, the first day that they do. */
export function hourlyConditions(
  hours: readonly WeatherHour[],
  date: string,
  zone: string,
  source: string,
): Extract<Conditions, { kind: 'hourly' }> {
  const dates = [...new Set(hours.map(row => dateAt(Date.parse(row.startUtc), zone)))].sort()
  const isWhole = (of: string): boolean => {
    const day = siteDay(of, zone)
    return day.ok && coversDay(hours, day.value)
  }
  const own = [date, ...dates].find(isWhole) ?? (dates.includes(date) ? date : dates[0]) ?? date
  return { kind: 'hourly', date: own, hours: [...hours], source }
}
