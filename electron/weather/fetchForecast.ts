/** Asks the US National Weather Service for the hourly forecast of a place. Only when the user asks; never by itself. */

import { readForecast } from '../../core/weather/readForecast'
import type { ReadHours } from '../../core/weather/readWeatherTable'
import { err, type Finding, ok, type Result } from '../../shared/problem'

export interface ForecastOptions {
  /** Where to ask; only tests ask elsewhere. */
  readonly origin?: string
  readonly timeOutMs?: number
  /** Wait before the one retry; the service asks for 5 s. */
  readonly retryMs?: number
  /** Kept answers younger than this are given again without asking. */
  readonly freshMs?: number
  readonly now?: () => number
  readonly cache?: ForecastCache
}

export interface Forecast extends ReadHours {
  readonly source: string
  /** When it was fetched. */
  readonly fetchedMs: number
  /** Age of a kept answer, ms; 0 when just fetched. */
  readonly ageMs: number
}

export type ForecastCache = Map<string, { readonly fetchedMs: number; readonly hours: ReadHours }>

const serviceOrigin = 'https://api.weather.gov'
const mostBytes = 4 * 1024 * 1024
const agent = 'Slabwright day planner (asked for by its user)'

const kept: ForecastCache = new Map()

const bad = (reason: string): Result<never, readonly Finding[]> =>
  err([{ code: 'forecastBadAnswer', severity: 'stop', values: { reason } }])

/** Stays on the origin asked: an answer cannot send us elsewhere. */
const isAllowed = (url: URL, origin: string): boolean =>
  url.origin === origin && url.username === '' && url.password === ''

async function readText(response: Response): Promise<string | null> {
  if (!response.body) return ''
  const decoder = new TextDecoder()
  let text = ''
  let bytes = 0
  for await (const part of response.body as unknown as AsyncIterable<Uint8Array>) {
    bytes += part.byteLength
    if (bytes > mostBytes) return null
    text += decoder.decode(part, { stream: true })
  }
  return text + decoder.decode()
}

interface Fault {
  readonly reason: string
  readonly again: boolean
}

async function askOnce(url: URL, timeOutMs: number): Promise<Result<unknown, Fault>> {
  try {
    const response = await fetch(url, {
      redirect: 'error',
      signal: AbortSignal.timeout(timeOutMs),
      headers: { accept: 'application/geo+json', 'user-agent': agent },
    })
    if (!response.ok) {
      await response.body?.cancel()
      return err({
        reason:
          response.status === 404 ? 'the service does not know this place' : `the service answered ${response.status}`,
        again: response.status >= 500 || response.status === 429,
      })
    }
    const text = await readText(response)
    if (text === null) return err({ reason: 'the answer is too large', again: false })
    try {
      return ok(JSON.parse(text) as unknown)
    } catch {
      return err({ reason: 'the answer is not JSON', again: false })
    }
  } catch (error) {
    const timedOut = error instanceof Error && error.name === 'TimeoutError'
    return err({
      reason: timedOut ? 'the service did not answer in time' : 'the service cannot be reached',
      again: true,
    })
  }
}

async function ask(url: URL, timeOutMs: number, retryMs: number): Promise<Result<unknown, Fault>> {
  const first = await askOnce(url, timeOutMs)
  if (first.ok || !first.error.again) return first
  await new Promise(resolve => setTimeout(resolve, retryMs))
  return askOnce(url, timeOutMs)
}

/** Where the service keeps the hourly forecast of the point; null where the answer does not say so on its own origin. */
function hourlyUrl(answer: unknown, origin: string): URL | null {
  const link = (answer as { properties?: { forecastHourly?: unknown } } | null)?.properties?.forecastHourly
  if (typeof link !== 'string' || !URL.canParse(link)) return null
  const url = new URL(link)
  return isAllowed(url, origin) ? url : null
}

/**
 * Two questions: the point, then its hourly forecast. Each waits `timeOutMs` (10 s) and is asked once more after 5 s when
 * the service is down or slow. When it cannot be had, a kept answer of the place is given with its age, else a finding.
 */
export async function fetchForecast(
  latDeg: number,
  lonDeg: number,
  options: ForecastOptions = {},
): Promise<Result<Forecast, readonly Finding[]>> {
  const origin = options.origin ?? serviceOrigin
  const now = options.now ?? Date.now
  const cache = options.cache ?? kept
  const timeOutMs = options.timeOutMs ?? 10_000
  const retryMs = options.retryMs ?? 5_000
  // Four decimals are 10 m: the service refuses more.
  const place = `${latDeg.toFixed(4)},${lonDeg.toFixed(4)}`
  const source = 'US National Weather Service, hourly forecast'
  const old = cache.get(place)
  const fromCache = (): Result<Forecast, readonly Finding[]> | null =>
    old ? ok({ ...old.hours, source, fetchedMs: old.fetchedMs, ageMs: now() - old.fetchedMs }) : null
  if (old && now() - old.fetchedMs < (options.freshMs ?? 30 * 60_000)) return fromCache()!
  const point = await ask(new URL(`/points/${place}`, origin), timeOutMs, retryMs)
  if (!point.ok) return fromCache() ?? bad(point.error.reason)
  const url = hourlyUrl(point.value, origin)
  if (!url) return fromCache() ?? bad('the service names no hourly forecast for this place')
  const hourly = await ask(url, timeOutMs, retryMs)
  if (!hourly.ok) return fromCache() ?? bad(hourly.error.reason)
  const read = readForecast(hourly.value)
  if (!read.ok) return fromCache() ?? read
  const fetchedMs = now()
  cache.set(place, { fetchedMs, hours: read.value })
  return ok({ ...read.value, source, fetchedMs, ageMs: 0 })
}
