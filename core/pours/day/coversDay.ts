import type { WeatherHour } from '../../../shared/document/day'
import type { SiteDay } from '../../sun/siteDay'

const hourMs = 3_600_000

/** Hours of the clock in which a pour is placed and stamped; what is missing of the night is filled or told elsewhere. */
const workFromH = 5
const workToH = 20

/** True where the rows reach over the working hours of that day, so that none of another day need stand in. */
export function coversDay(hours: readonly WeatherHour[], { startMs }: SiteDay): boolean {
  const first = Math.min(...hours.map(row => Date.parse(row.startUtc)))
  const last = Math.max(...hours.map(row => Date.parse(row.startUtc)))
  return first <= startMs + workFromH * hourMs && last >= startMs + workToH * hourMs
}
