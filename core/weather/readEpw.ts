/**
 * An hourly weather file in the EnergyPlus weather form (EPW): 8 header lines, 35 columns, hour n = the hour ending at
 * n. Source: EnergyPlus Auxiliary Programs, Weather Data (from memory for the missing marks: 99.9 or 999 of the
 * temperatures, 999 of humidity and wind, 99 of sky cover and depth).
 */
import type { WeatherHour } from '../../shared/document/day'
import { err, type Finding, ok, type Result } from '../../shared/problem'
import type { ReadHours } from './readWeatherTable'

const headerLines = 8
const column = { month: 1, day: 2, hour: 3, air: 6, dewPoint: 7, humidity: 8, wind: 21, cloud: 22, rain: 33 } as const
const hourMs = 3_600_000

const unread = (reason: string): Result<ReadHours, readonly Finding[]> =>
  err([{ code: 'weatherFileUnread', severity: 'stop', values: { reason } }])

/**
 * The hours of one calendar day, whatever the year of the file, put on a date. Local standard time of the file's header
 * (its time zone, field 9 of the first line), so summer time is taken off.
 *
 * @param date `YYYY-MM-DD` of the pour; its month and day are looked up (29 February falls back to the 28th)
 * @param days how many days from then on
 */
export function readEpw(text: string, date: string, days = 2): Result<ReadHours, readonly Finding[]> {
  const lines = text.split(/\r?\n/)
  const place = lines[0]?.split(',') ?? []
  if (place[0]?.trim().toUpperCase() !== 'LOCATION') return unread('its first line, LOCATION, is missing')
  const zoneH = Number(place[8])
  if (!Number.isFinite(zoneH) || Math.abs(zoneH) > 14) return unread('its time zone is not a number')
  const byHour = new Map<string, readonly string[]>()
  for (const line of lines.slice(headerLines)) {
    if (line.trim() === '') continue
    const cells = line.split(',')
    if (cells.length < 32) return unread(`a line has ${cells.length} columns: “${line.slice(0, 40)}”`)
    byHour.set([column.month, column.day, column.hour].map(c => Number(cells[c])).join('-'), cells)
  }
  const startMs = Date.parse(`${date}T00:00:00Z`) - zoneH * hourMs
  if (!Number.isFinite(startMs)) return unread(`${date} is not a date`)
  const hours: WeatherHour[] = []
  for (let hour = 0; hour < days * 24; hour++) {
    const local = new Date(Date.parse(`${date}T00:00:00Z`) + hour * hourMs)
    const isLeap = local.getUTCMonth() === 1 && local.getUTCDate() === 29
    // Hour n ends at n: the hour that starts now is the next number.
    const day = isLeap && !byHour.has('2-29-1') ? 28 : local.getUTCDate()
    const cells = byHour.get([local.getUTCMonth() + 1, day, local.getUTCHours() + 1].join('-'))
    if (!cells) continue
    const read = (index: number, missing: readonly number[]): number | null => {
      const value = Number(cells[index])
      return cells[index]?.trim() === '' || !Number.isFinite(value) || missing.some(mark => value === mark)
        ? null
        : value
    }
    const airC = read(column.air, [99.9, 999])
    if (airC === null) continue
    const dewPointC = read(column.dewPoint, [99.9, 999])
    const humidity = read(column.humidity, [999])
    const wind = read(column.wind, [999])
    const cloud = read(column.cloud, [99])
    const rainMm = read(column.rain, [99, 999])
    hours.push({
      startUtc: `${new Date(startMs + hour * hourMs).toISOString().slice(0, 19)}Z`,
      airC,
      ...(dewPointC === null ? {} : { dewPointC }),
      ...(humidity === null ? {} : { humidity: humidity / 100 }),
      ...(wind === null ? {} : { wind10mMs: wind }),
      ...(cloud === null ? {} : { cloud: cloud / 10 }),
      ...(rainMm === null ? {} : { rainMm }),
    })
  }
  if (hours.length === 0) return unread(`it has no hours for ${date.slice(5)}`)
  return ok({ hours, findings: [] })
}
