import { createServer, type RequestListener, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { afterEach, describe, expect, it } from 'vitest'
import { type ForecastCache, fetchForecast } from '../../electron/weather/fetchForecast'

const servers: Server[] = []
afterEach(() => {
  for (const server of servers.splice(0)) server.close()
})

async function serve(listener: (origin: string) => RequestListener): Promise<string> {
  let origin = ''
  const server = createServer((request, response) => listener(origin)(request, response))
  servers.push(server)
  await new Promise<void>(resolve => server.listen(0, '127.0.0.1', resolve))
  origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`
  return origin
}

const hourly = {
  properties: { periods: [{ startTime: '2026-07-21T07:00:00-06:00', temperature: 68, temperatureUnit: 'F' }] },
}
const fast = { timeOutMs: 10_000, retryMs: 1 }

interface Seen {
  readonly urls: string[]
  readonly agents: (string | undefined)[]
}

/** Answers as the service does; `fail` answers of the first requests are replaced by a status. */
async function service(
  fail: readonly number[] = [],
  link?: (origin: string) => string,
): Promise<{ origin: string; seen: Seen }> {
  const seen: Seen = { urls: [], agents: [] }
  const origin = await serve(own => (request, response) => {
    seen.urls.push(request.url ?? '')
    seen.agents.push(request.headers['user-agent'])
    const status = fail[seen.urls.length - 1]
    if (status !== undefined) {
      response.writeHead(status).end()
      return
    }
    const body = request.url?.startsWith('/points/')
      ? { properties: { forecastHourly: (link ?? (base => `${base}/gridpoints/BOU/1,2/forecast/hourly`))(own) } }
      : hourly
    response.writeHead(200, { 'content-type': 'application/geo+json' }).end(JSON.stringify(body))
  })
  return { origin, seen }
}

const reasonOf = (answer: Awaited<ReturnType<typeof fetchForecast>>): unknown =>
  answer.ok ? null : answer.error[0]?.values.reason

describe('the public forecast', () => {
  it('asks the point, then its hourly forecast, and says who asks', async () => {
    const { origin, seen } = await service()
    const answer = await fetchForecast(39.73921, -104.99031, { ...fast, origin, cache: new Map() })
    expect(answer).toMatchObject({
      ok: true,
      value: { hours: [{ startUtc: '2026-07-21T13:00:00Z', airC: 20 }], ageMs: 0 },
    })
    expect(seen.urls).toEqual(['/points/39.7392,-104.9903', '/gridpoints/BOU/1,2/forecast/hourly'])
    expect(seen.agents.every(agent => agent?.startsWith('Slabwright'))).toBe(true)
  })

  it('asks once more after a fault of the server, and not after a 404', async () => {
    const once = await service([503])
    expect((await fetchForecast(1, 2, { ...fast, origin: once.origin, cache: new Map() })).ok).toBe(true)
    expect(once.seen.urls).toHaveLength(3)
    const never = await service([404, 404])
    expect(reasonOf(await fetchForecast(1, 2, { ...fast, origin: never.origin, cache: new Map() }))).toBe(
      'the service does not know this place',
    )
    expect(never.seen.urls).toHaveLength(1)
  })

  it('gives up on a service that does not answer', async () => {
    const origin = await serve(() => () => {})
    expect(reasonOf(await fetchForecast(1, 2, { timeOutMs: 50, retryMs: 1, origin, cache: new Map() }))).toBe(
      'the service did not answer in time',
    )
  })

  it('is not sent elsewhere by an answer', async () => {
    const { origin, seen } = await service([], () => 'https://elsewhere.invalid/forecast')
    expect(reasonOf(await fetchForecast(1, 2, { ...fast, origin, cache: new Map() }))).toBe(
      'the service names no hourly forecast for this place',
    )
    expect(seen.urls).toHaveLength(1)
    const turned = await serve(own => (_, response) => response.writeHead(302, { location: `${own}/x` }).end())
    expect(reasonOf(await fetchForecast(1, 2, { ...fast, origin: turned, cache: new Map() }))).toBe(
      'the service cannot be reached',
    )
  })

  it('refuses an answer that is too large or no JSON', async () => {
    const large = await serve(() => (_, response) => response.end(' '.repeat(5 * 1024 * 1024)))
    expect(reasonOf(await fetchForecast(1, 2, { timeOutMs: 5000, retryMs: 1, origin: large, cache: new Map() }))).toBe(
      'the answer is too large',
    )
    const text = await serve(() => (_, response) => response.end('<html>'))
    expect(reasonOf(await fetchForecast(1, 2, { ...fast, origin: text, cache: new Map() }))).toBe(
      'the answer is not JSON',
    )
  })

  it('gives a young kept answer without asking and an old one, with its age, when the service is gone', async () => {
    const cache: ForecastCache = new Map()
    const { origin, seen } = await service()
    let now = 1_000_000
    const options = { ...fast, origin, cache, now: () => now }
    await fetchForecast(1, 2, options)
    now += 60_000
    expect(await fetchForecast(1, 2, options)).toMatchObject({ ok: true, value: { ageMs: 60_000 } })
    expect(seen.urls).toHaveLength(2)
    now += 7_200_000
    const gone = await fetchForecast(1, 2, { ...options, origin: 'http://127.0.0.1:9' })
    expect(gone).toMatchObject({ ok: true, value: { ageMs: 7_260_000 } })
  })
})
