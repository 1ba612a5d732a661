/** Calendar days of the job: which dates can take a pour, and between which hours. */
import type { Hours } from '../../../shared/document/primitives'

export interface WorkHours {
  /** Minutes since midnight. */
  readonly fromMin: number
  readonly toMin: number
}

export interface CalendarRules {
  readonly plantHours: readonly Hours[]
  readonly noiseHours: readonly Hours[]
  readonly daysOff: readonly string[]
  /** Hours of a weekday that nothing else is said about. */
  readonly usual: WorkHours
}

const msPerDay = 86_400_000
/** A calendar without a day to pour on in this long has none. */
const farthestDays = 3 * 366

/** Days since 1970-01-01 of a Gregorian date `YYYY-MM-DD`. */
export function dayNumber(date: string): number {
  const [y, m, d] = date.split('-').map(Number)
  return Date.UTC(y!, m! - 1, d!) / msPerDay
}

export const dateOf = (day: number): string => new Date(day * msPerDay).toISOString().slice(0, 10)

/** 1 = Monday … 7 = Sunday; day 0 was a Thursday. */
export const weekdayOf = (day: number): number => ((((day + 3) % 7) + 7) % 7) + 1

export function minutesOf(time: string): number {
  const [h, m] = time.split(':').map(Number)
  return h! * 60 + m!
}

export const clockOf = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(Math.floor(minutes % 60)).padStart(2, '0')}`

/** The hours of one weekday, from the earliest opening to the latest closing; null when it has none. */
export function hoursOn(rows: readonly Hours[], weekday: number): WorkHours | null {
  const own = rows.filter(row => row.weekdays.includes(weekday) && minutesOf(row.from) < minutesOf(row.to))
  if (own.length === 0) return null
  return {
    fromMin: Math.min(...own.map(row => minutesOf(row.from))),
    toMin: Math.max(...own.map(row => minutesOf(row.to))),
  }
}

/**
 * Hours in which concrete can be placed on a day: the plant delivers and noise is allowed. Without plant hours, Monday
 * to Friday (common practice). Null where the day takes no pour.
 */
export function pourHoursOn(rules: CalendarRules, day: number): WorkHours | null {
  if (rules.daysOff.includes(dateOf(day))) return null
  const weekday = weekdayOf(day)
  const plant = rules.plantHours.length > 0 ? hoursOn(rules.plantHours, weekday) : weekday <= 5 ? rules.usual : null
  const noise = rules.noiseHours.length > 0 ? hoursOn(rules.noiseHours, weekday) : { fromMin: 0, toMin: 1440 }
  if (!plant || !noise) return null
  const fromMin = Math.max(plant.fromMin, noise.fromMin)
  const toMin = Math.min(plant.toMin, noise.toMin)
  return fromMin < toMin ? { fromMin, toMin } : null
}

/** The first `count` days from `start` on that take a pour; fewer where the calendar runs out. */
export function pourDays(rules: CalendarRules, start: number, count: number): number[] {
  const days: number[] = []
  let idle = 0
  for (let day = start; days.length < count && idle < farthestDays; day++) {
    if (pourHoursOn(rules, day)) {
      days.push(day)
      idle = 0
    } else idle++
  }
  return days
}

/** When work that needs hands, and quiet work or noise allowed, can start at the earliest from a moment on. */
export function nextWorkMoment(
  rules: CalendarRules,
  from: { readonly day: number; readonly minute: number },
): { readonly day: number; readonly minute: number } {
  for (let i = 0; i < farthestDays; i++) {
    const day = from.day + i
    if (rules.daysOff.includes(dateOf(day))) continue
    const hours =
      rules.noiseHours.length > 0
        ? hoursOn(rules.noiseHours, weekdayOf(day))
        : weekdayOf(day) <= 6
          ? { fromMin: rules.usual.fromMin, toMin: Math.max(rules.usual.toMin, rules.usual.fromMin + 600) }
          : null
    if (!hours) continue
    const minute = Math.max(hours.fromMin, i === 0 ? from.minute : 0)
    if (minute < hours.toMin) return { day, minute }
  }
  return from
}
