import { DateTime } from 'luxon'
import type { UnitSystem } from '../../shared/document/site'
import { printMeasures } from '../units/printMeasures'

const fiveMinutesMs = 300_000
const quarterMin = 15

/** An instant by the clock of the site, as paper says it: `1:05 pm`, in metric sites `13:05`. */
export const sheetClock = (ms: number, zone: string, units: UnitSystem): string =>
  printMeasures(units).time(DateTime.fromMillis(ms, { zone }).toFormat('H:mm'))

/**
 * A time that a model of the set gave, to five minutes: it is never known to the minute. A time by which something has
 * to be done is rounded down, so that paper never gives more time than there is.
 */
export const toFiveMinutes = (ms: number, kind: 'about' | 'atLatest' = 'about'): number =>
  (kind === 'about' ? Math.round : Math.floor)(ms / fiveMinutesMs) * fiveMinutesMs

/** A clock time from which something may be done, `10:46`, at the next quarter of an hour: `10:45` would be too early. */
export function nextQuarter(clock: string): string {
  const [hour = 0, minute = 0] = clock.split(':').map(Number)
  const at = Math.ceil((hour * 60 + minute) / quarterMin) * quarterMin
  // The last quarter of a day has none after it that day.
  return at >= 24 * 60 ? clock : `${Math.floor(at / 60)}:${String(at % 60).padStart(2, '0')}`
}
