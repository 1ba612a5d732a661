import { DateTime } from 'luxon'

const dates = new Map<string, string>()

/** `Tue Jul 21`, without the year: a job is of one season. */
export function printDate(date: string): string {
  const known = dates.get(date)
  if (known !== undefined) return known
  const day = DateTime.fromISO(date, { zone: 'utc', locale: 'en-US' })
  const printed = day.isValid ? day.toFormat('ccc LLL d') : ''
  if (dates.size < 1_000) dates.set(date, printed)
  return printed
}

const formats = new Map<string, Intl.DateTimeFormat>()

/** One writer for a zone and a clock: making one takes longer than a hundred uses. */
function clockOf(zone: string, hourCycle: 'h12' | 'h23'): Intl.DateTimeFormat {
  const key = `${zone} ${hourCycle}`
  const made =
    formats.get(key) ??
    new Intl.DateTimeFormat('en-US', { timeZone: zone, hour: 'numeric', minute: '2-digit', hourCycle })
  formats.set(key, made)
  return made
}

/** The clock of the site: `9:40` under a row of hours, `9:40 am` where it stands alone; metric sites count to 24. */
export function printHour(ms: number, zone: string, units: 'ftin' | 'metric', isAlone = false): string {
  const parts = clockOf(zone, units === 'metric' ? 'h23' : 'h12').formatToParts(ms)
  const part = (type: Intl.DateTimeFormatPartTypes) => parts.find(each => each.type === type)?.value ?? ''
  const clock = `${Number(part('hour'))}:${part('minute')}`
  return units === 'ftin' && isAlone ? `${clock} ${part('dayPeriod').toLowerCase()}` : clock
}
