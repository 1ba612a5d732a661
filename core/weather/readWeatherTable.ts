/** An hourly table pasted from anywhere, or a CSV file, to weather hours. */
import type { WeatherHour } from '../../shared/document/day'
import { err, type Finding, ok, type Result } from '../../shared/problem'
import { instantOf } from '../sun/siteDay'

export interface ReadHours {
  readonly hours: readonly WeatherHour[]
  readonly findings: readonly Finding[]
}

export interface TablePlace {
  /** Of rows that tell only a clock time: the first; a clock that runs back is the next day. */
  readonly date: string
  readonly zone: string
}

type Field = 'time' | 'date' | 'air' | 'dewPoint' | 'humidity' | 'wind' | 'cloud' | 'rainChance' | 'rain'

/** Words of the first line, in any case; the first that fits wins. */
const fieldWords: readonly (readonly [Field, RegExp])[] = [
  ['dewPoint', /dew/],
  ['humidity', /humid|^rh/],
  ['rainChance', /chance|prob|^pop|precip.*%/],
  ['rain', /rain|precip|qpf/],
  ['cloud', /cloud|sky|cover/],
  ['wind', /wind(?!.*(dir|gust))/],
  ['air', /temp|air/],
  ['date', /^date$/],
  ['time', /time|hour|stamp/],
]

interface Columns {
  readonly of: Partial<Record<Field, number>>
  readonly heads: readonly string[]
}

/** Tabs, semicolons or commas, whichever the first line has most of; quotes as in RFC 4180. */
export function splitRow(line: string, separator: string): string[] {
  const cells: string[] = []
  let cell = ''
  let quoted = false
  for (let i = 0; i < line.length; i++) {
    const letter = line[i]!
    if (quoted) {
      if (letter !== '"') cell += letter
      else if (line[i + 1] === '"') {
        cell += '"'
        i++
      } else quoted = false
    } else if (letter === '"') quoted = true
    else if (letter === separator) {
      cells.push(cell.trim())
      cell = ''
    } else cell += letter
  }
  cells.push(cell.trim())
  return cells
}

function columnsOf(heads: readonly string[]): Columns {
  const of: Partial<Record<Field, number>> = {}
  heads.forEach((head, i) => {
    const word = head.toLowerCase()
    const field = fieldWords.find(([, pattern]) => pattern.test(word))?.[0]
    if (field !== undefined && of[field] === undefined) of[field] = i
  })
  return { of, heads }
}

/** `7`, `7:00`, `07:00`, `7 AM`, `7:30 pm`, `noon`, with a date before it or not. */
export function readClock(text: string): { readonly date?: string; readonly time: string } | null {
  const date = /(\d{4})-(\d{2})-(\d{2})/.exec(text)?.[0]
  const us = /(\d{1,2})\/(\d{1,2})\/(\d{4})/.exec(text)
  const rest = text
    .replace(date ?? us?.[0] ?? '', ' ')
    .replace(/noon/i, '12 pm')
    .replace(/midnight/i, '12 am')
    .replace(/T/g, ' ')
  const clock = /(\d{1,2})(?::(\d{2}))?(?::\d{2})?\s*([ap])?\.?m?\.?/i.exec(rest)
  if (!clock) return null
  let hour = Number(clock[1])
  const half = clock[3]?.toLowerCase()
  if (half !== undefined) {
    if (hour < 1 || hour > 12) return null
    hour = (hour % 12) + (half === 'p' ? 12 : 0)
  }
  const minute = Number(clock[2] ?? 0)
  if (hour > 23 || minute > 59) return null
  const time = `${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}`
  if (date !== undefined) return { date, time }
  if (us) return { date: `${us[3]}-${us[1]!.padStart(2, '0')}-${us[2]!.padStart(2, '0')}`, time }
  return { time }
}

const numberOf = (cell: string | undefined): number | null => {
  const match = /-?−?\d+(?:[.,]\d+)?/.exec(cell ?? '')
  if (!match) return null
  const value = Number(match[0].replace('−', '-').replace(',', '.'))
  return Number.isFinite(value) ? value : null
}

/** A unit in the cell, else in the head, else that of US forecasts. */
const isMetric = (cell: string, head: string, metric: RegExp, customary: RegExp): boolean =>
  metric.test(cell) || (!customary.test(cell) && metric.test(head))

const celsius = (cell: string, head: string): number | null => {
  const value = numberOf(cell)
  if (value === null) return null
  return isMetric(cell, head, /°?\bC\b|°C|celsius|degC/i, /°?\bF\b|°F/i) ? value : (value - 32) / 1.8
}

/** Words and ranges: `Calm` is 0, `5 to 10 mph` the higher, as safe as it gets. */
export function metersPerSecond(cell: string, head: string): number | null {
  if (/calm/i.test(cell)) return 0
  const values = [...cell.matchAll(/\d+(?:\.\d+)?/g)].map(match => Number(match[0]))
  if (values.length === 0) return null
  const most = Math.max(...values)
  const text = `${cell} ${/[a-z]/i.test(cell.replace(/to/i, '')) ? '' : head}`
  if (/m\/s|mps/i.test(text)) return most
  if (/km\/?h|kph|kmh/i.test(text)) return most / 3.6
  if (/\bkn|knot|kt/i.test(text)) return (most * 1852) / 3600
  return most * 0.44704
}

const shareOf = (cell: string): number | null => {
  const value = numberOf(cell)
  return value === null ? null : value / 100
}

const millimeters = (cell: string, head: string): number | null => {
  const value = numberOf(cell)
  if (value === null) return null
  return isMetric(cell, head, /mm/i, /\bin\b/i) ? value : value * 25.4
}

const dayAfter = (date: string): string =>
  new Date(Date.parse(`${date}T00:00Z`) + 86_400_000).toISOString().slice(0, 10)

/**
 * The first line names the columns (time and temperature at least; dew point or humidity, wind, sky cover, chance and
 * amount of rain as there are). Times are the clock of the site and start their hour. °F, mph, %, in unless the head or
 * the cell says otherwise. A row that cannot be read stops and is quoted; ranges are checked when the hours are used.
 */
export function readWeatherTable(text: string, place: TablePlace): Result<ReadHours, readonly Finding[]> {
  const lines = text
    .split(/\r?\n/)
    .map((line, i) => ({ line, no: i + 1 }))
    .filter(({ line }) => line.trim() !== '')
  const [head, ...rows] = lines
  if (!head || rows.length === 0) return err([{ code: 'weatherEmpty', severity: 'stop', values: {} }])
  const separator = ['\t', ';', ','].reduce((most, own) =>
    head.line.split(own).length > head.line.split(most).length ? own : most,
  )
  const { of, heads } = columnsOf(splitRow(head.line, separator))
  const missing = [
    ...(of.time === undefined && of.date === undefined ? ['time'] : []),
    ...(of.air === undefined ? ['temperature'] : []),
  ]
  if (missing.length > 0)
    return err([{ code: 'weatherColumnsUnknown', severity: 'stop', values: { missing: missing.join(' and no ') } }])
  const stops: Finding[] = []
  const hours: WeatherHour[] = []
  let date = place.date
  let lastTime = ''
  for (const { line, no } of rows) {
    const cells = splitRow(line, separator)
    const cell = (field: Field): string => (of[field] === undefined ? '' : (cells[of[field]] ?? ''))
    const headOf = (field: Field): string => (of[field] === undefined ? '' : (heads[of[field]] ?? ''))
    const clock = readClock(`${cell('date')} ${cell('time')}`)
    const airC = celsius(cell('air'), headOf('air'))
    if (!clock || airC === null) {
      stops.push({ code: 'weatherRowUnread', severity: 'stop', values: { line: no, found: line.slice(0, 60) } })
      continue
    }
    if (clock.date !== undefined) date = clock.date
    else if (clock.time < lastTime) date = dayAfter(date)
    const again = clock.time === lastTime
    lastTime = clock.time
    const at = instantOf(date, clock.time, again ? 1 : undefined, place.zone)
    if (!at.ok) {
      stops.push({ code: 'weatherRowUnread', severity: 'stop', values: { line: no, found: line.slice(0, 60) } })
      continue
    }
    const dewPointC = celsius(cell('dewPoint'), headOf('dewPoint'))
    const humidity = shareOf(cell('humidity'))
    const wind10mMs = metersPerSecond(cell('wind'), headOf('wind'))
    const cloud = shareOf(cell('cloud'))
    const rainChance = shareOf(cell('rainChance'))
    const rainMm = millimeters(cell('rain'), headOf('rain'))
    hours.push({
      startUtc: `${new Date(at.value.ms).toISOString().slice(0, 19)}Z`,
      airC,
      ...(dewPointC === null ? {} : { dewPointC }),
      ...(humidity === null ? {} : { humidity }),
      ...(wind10mMs === null ? {} : { wind10mMs }),
      ...(cloud === null ? {} : { cloud }),
      ...(rainChance === null ? {} : { rainChance }),
      ...(rainMm === null ? {} : { rainMm }),
    })
  }
  return stops.length > 0 ? err(stops) : ok({ hours, findings: [] })
}
