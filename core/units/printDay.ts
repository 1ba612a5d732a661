const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
]
const weekdays = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday']

/** Weekday of a Gregorian date, 0 = Sunday (Zeller's congruence in Sakamoto's form). */
function weekdayOf(year: number, month: number, day: number): number {
  const offsets = [0, 3, 2, 5, 0, 3, 5, 1, 4, 6, 2, 4]
  const y = month < 3 ? year - 1 : year
  return (y + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400) + offsets[month - 1]! + day) % 7
}

/** `Tue Jul 21` or `Tuesday, July 21, 2026` for a date YYYY-MM-DD. */
export function printDay(date: string, style: 'short' | 'long'): string {
  const [year = 0, month = 1, day = 1] = date.split('-').map(Number)
  const weekday = weekdays[weekdayOf(year, month, day)]!
  return style === 'short'
    ? `${weekday.slice(0, 3)} ${months[month - 1]!.slice(0, 3)} ${day}`
    : `${weekday}, ${months[month - 1]} ${day}, ${year}`
}
