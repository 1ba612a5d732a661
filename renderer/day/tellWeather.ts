/** Weather and crew of the site in a few words. */
import { DateTime } from 'luxon'
import { printMeasures } from '../../core/units/printMeasures'
import type { Site } from '../../shared/document/site'
import { printDate } from '../app/printDate'

export function tellWeather({ conditions, units }: Site): string {
  if (!conditions) return 'not entered'
  const print = printMeasures(units)
  const air = conditions.kind === 'day' ? [conditions.lowC, conditions.highC] : conditions.hours.map(row => row.airC)
  const span = `${print.temperature(Math.min(...air))} to ${print.temperature(Math.max(...air))}`
  return conditions.kind === 'day'
    ? `${printDate(conditions.date)}, ${span}`
    : `hourly from ${printDate(conditions.date)}, ${span}`
}

export const tellCrew = ({ crew }: Site): string =>
  crew ? `${crew.hands} ${crew.hands === 1 ? 'hand' : 'hands'}, ${crew.experience}` : 'not entered'

/** When an answer was fetched, by the clock of the site. */
export function tellFetched({ units, place }: Site, fetchedAt: string): string {
  const at = DateTime.fromISO(fetchedAt, { zone: place.zone })
  return `fetched ${printDate(at.toFormat('yyyy-MM-dd'))}, ${printMeasures(units).time(at.toFormat('H:mm'))}`
}

/** How old an answer is. */
export const tellAge = (ageMin: number): string =>
  ageMin < 1
    ? 'fresh from the service'
    : ageMin < 90
      ? `an answer kept from ${Math.round(ageMin)} min ago`
      : `an answer kept from ${Math.round(ageMin / 60)} h ago; ask again before the truck is called`
