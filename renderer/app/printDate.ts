import { DateTime } from 'luxon'

/** `Tue 21 Jul`, without the year: a job is of one season. */
export const printDate = (date: string): string => {
  const day = DateTime.fromISO(date, { zone: 'utc', locale: 'en-US' })
  return day.isValid ? day.toFormat('ccc d LLL') : ''
}

/** The clock of the site: `9:40` under a row of hours, `9:40 am` where it stands alone; metric sites count to 24. */
export const printHour = (ms: number, zone: string, units: 'ftin' | 'metric', isAlone = false): string => {
  const at = DateTime.fromMillis(ms, { zone, locale: 'en-US' })
  if (units === 'metric') return at.toFormat('H:mm')
  return isAlone ? at.toFormat('h:mm a').toLowerCase() : at.toFormat('h:mm')
}
