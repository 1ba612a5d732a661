/** Weather for the days of the site, looked through before it is taken: what cannot be used leaves the old one in place. */
import { setConditions } from '../../core/document/commands/setSite'
import { dayConditions } from '../../core/pours/day/dayConditions'
import type { Conditions } from '../../shared/document/day'
import { applyEdit } from '../app/applyEdit'
import type { Session } from '../app/session'
import { wordFindings } from '../app/wordFindings'
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
