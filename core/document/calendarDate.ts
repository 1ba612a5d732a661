const monthDays = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]

const isLeapYear = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0

/** True for a `MM-DD` that some year has; 29 February counts. */
export const isMonthDay = (text: string): boolean => {
  const [month = 0, day = 0] = text.split('-').map(Number)
  return day >= 1 && day <= (monthDays[month - 1] ?? 0)
}

/** True for a `YYYY-MM-DD` that the Gregorian calendar has. */
export const isCalendarDate = (text: string): boolean =>
  /^\d{4}-\d{2}-\d{2}$/.test(text) &&
  isMonthDay(text.slice(5)) &&
  (text.slice(5) !== '02-29' || isLeapYear(Number(text.slice(0, 4))))
