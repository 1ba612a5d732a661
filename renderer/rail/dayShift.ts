import { atClock, type SiteDay, siteDay } from '../../core/sun/siteDay'

const noonMin = 12 * 60

/** From working hours of a date to the same hours by the clock of this day, though the clocks changed in between. */
export function dayShift(from: string, day: SiteDay): number {
  const other = siteDay(from, day.zone)
  return other.ok ? atClock(day, noonMin) - atClock(other.value, noonMin) : 0
}
