import { Body, Equator, Horizon, Observer } from 'astronomy-engine'
import { describe, expect, it } from 'vitest'
import { pointSun } from '../../core/sun/pointSun'
import { shadeLineTimes } from '../../core/sun/shadeLineTimes'
import { isoWithOffset } from '../../core/sun/siteDay'
import { sunlitSpans } from '../../core/sun/sunlitSpans'
import type { Pt } from '../../shared/document/primitives'
import type { Place } from '../../shared/document/site'
import { box, building, cast, cover, dayOf, place, slabOf, tree, wall } from './fixtures'

const minuteMs = 60_000
const winter = dayOf('2026-01-20')
const summer = dayOf('2026-06-15')

/** The sun by an independent ephemeris, refraction included. */
const peerSun = (ms: number, { latDeg, lonDeg }: Place): { altitude: number; azimuth: number } => {
  const date = new Date(ms)
  const observer = new Observer(latDeg, lonDeg, 0)
  const { ra, dec } = Equator(Body.Sun, date, observer, true, true)
  return Horizon(date, observer, ra, dec, 'normal')
}

const radians = (deg: number): number => (deg * Math.PI) / 180

describe('the sunlit day', () => {
  it.each([
    ['2026-06-15', 0],
    ['2026-01-20', 40],
    ['2026-03-08', 51],
    ['2026-11-01', 60],
  ])('%s at %s° begins and ends where an independent ephemeris has the sun at 2°', (date, latDeg) => {
    const there = { ...place, latDeg }
    const { spans, findings } = sunlitSpans(there, dayOf(date), undefined)
    expect(findings).toEqual([])
    expect(spans).toHaveLength(1)
    expect(Math.abs(peerSun(spans[0]!.fromMs, there).altitude - 2)).toBeLessThan(0.02)
    expect(Math.abs(peerSun(spans[0]!.toMs, there).altitude - 2)).toBeLessThan(0.02)
  })

  it('is empty in the polar night, whole on the polar day, and says so', () => {
    const north = { ...place, latDeg: 70, lonDeg: 20, zone: 'Europe/Oslo' }
    const codes = (date: string): string[] =>
      sunlitSpans(north, dayOf(date, north.zone), undefined).findings.map(f => f.code)
    expect(codes('2026-12-21')).toEqual(['polarNight'])
    expect(codes('2026-06-21')).toEqual(['polarDay'])
    expect(codes('2026-03-21')).toEqual([])
  })

  it('finds a sun that clears the threshold for a few minutes only', () => {
    const date = dayOf('2026-12-21', 'Europe/Oslo')
    const north = { ...place, lonDeg: 10, zone: 'Europe/Oslo' }
    const highest = (latDeg: number): number =>
      Math.max(
        ...Array.from({ length: 1440 }, (_, m) => peerSun(date.startMs + m * minuteMs, { ...north, latDeg }).altitude),
      )
    // The latitude at which the noon sun stands 0.002° over the threshold.
    let [low, high] = [60, 70]
    while (high - low > 1e-6) {
      const middle = (low + high) / 2
      if (highest(middle) > 2.002) low = middle
      else high = middle
    }
    const found = [low - 0.1, low - 0.03].map(latDeg => sunlitSpans({ ...north, latDeg }, date, undefined).spans.length)
    expect(found).toEqual([1, 1])
    const [short] = sunlitSpans({ ...north, latDeg: low - 0.03 }, date, undefined).spans
    expect(short!.toMs - short!.fromMs).toBeLessThan(60 * minuteMs)
  })
})

describe('the sun of a point', () => {
  it('in the open lasts as long as the sun is up', () => {
    const [span] = sunlitSpans(place, summer, undefined).spans
    const sun = pointSun([0, 0], 0, [], place, summer, undefined)
    expect(sun.directSunMin).toBeCloseTo((span!.toMs - span!.fromMs) / minuteMs, 9)
    expect(sun.firstSunMs).toBe(span!.fromMs)
    expect(sun.lastSunMs).toBe(span!.toMs)
    expect(sun.crossings.map(({ into }) => into)).toEqual(['sun', 'shade'])
  })

  it('north of a long wall comes and goes when tan(altitude) = height over distance along the noon line', () => {
    const wallM = 2.5
    const distanceM = 5
    const long = cast(wall([[-400, 0], [400, 0]], { topM: wallM })) // biome-ignore format: one line
    const { crossings, directSunMin } = pointSun([0, distanceM], 0, [long], place, winter, undefined)
    // Signed: how far the wall's shadow reaches north beyond the point, by the independent ephemeris.
    const beyond = (ms: number): number => {
      const { altitude, azimuth } = peerSun(ms, place)
      return (-wallM * Math.cos(radians(azimuth))) / Math.tan(radians(altitude)) - distanceM
    }
    expect(crossings.map(({ into }) => into)).toEqual(['sun', 'shade'])
    for (const { ms } of crossings) expect(beyond(ms - minuteMs) > 0).not.toBe(beyond(ms + minuteMs) > 0)
    expect(directSunMin).toBeCloseTo((crossings[1]!.ms - crossings[0]!.ms) / minuteMs, 6)
  })

  it('under a crown counts what comes through, and is in sun from half on', () => {
    const dense = cast(tree([0, 0], { crownRadiusM: 200, trunkM: -400, topM: 400, density: 'medium' }))
    const bare = cast(
      tree([0, 0], {
        crownRadiusM: 200,
        trunkM: -400,
        topM: 400,
        density: 'medium',
        leaves: { from: '08-01', to: '09-01' },
      }),
    )
    const [span] = sunlitSpans(place, summer, undefined).spans
    const minutes = (span!.toMs - span!.fromMs) / minuteMs
    const under = pointSun([0, 0], 0, [dense], place, summer, undefined)
    expect(under.directSunMin).toBeCloseTo(0.2 * minutes, 6)
    expect(under).toMatchObject({ firstSunMs: null, lastSunMs: null, crossings: [] })
    const through = pointSun([0, 0], 0, [bare], place, summer, undefined)
    expect(through.directSunMin).toBeCloseTo(0.6 * minutes, 6)
    expect(through.firstSunMs).toBe(span!.fromMs)
    expect(pointSun([0, 0], 0, [bare, bare], place, summer, undefined).directSunMin).toBeCloseTo(0.36 * minutes, 6)
  })

  it('inside a building or in a courtyard deep enough is none', () => {
    const tower = cast(building(box(-5, -5, 10, 10), { eaveM: 30 }))
    expect(pointSun([0, 0], 0, [tower], place, summer, undefined)).toEqual({
      directSunMin: 0,
      firstSunMs: null,
      lastSunMs: null,
      crossings: [],
    })
  })

  it('in the polar night is none; on the polar day a tower’s shade goes once around', () => {
    const north = { ...place, latDeg: 78, lonDeg: 15, zone: 'Arctic/Longyearbyen' }
    const tower = cast(building(box(-1, -1, 2, 2), { eaveM: 40 }))
    const night = pointSun([8, 0], 0, [tower], north, dayOf('2026-12-21', north.zone), undefined)
    expect(night).toEqual({ directSunMin: 0, firstSunMs: null, lastSunMs: null, crossings: [] })
    const day = pointSun([8, 0], 0, [tower], north, dayOf('2026-06-21', north.zone), undefined)
    expect(day.crossings.map(({ into }) => into)).toEqual(['sun', 'shade', 'sun', 'shade'])
    expect(day.directSunMin).toBeGreaterThan(1440 - 90)
    expect(day.directSunMin).toBeLessThan(1440 - 30)
  })

  it.each(['2026-03-08', '2026-11-01'])('on %s, when the clocks change, is like on the days beside it', date => {
    const day = dayOf(date)
    const neighbor = dayOf(date.replace('-08', '-09').replace('-01', '-02'))
    const casters = [cast(building(box(-6, -6, 5, 9), { eaveM: 4 }))]
    const [a, b] = [day, neighbor].map(each => pointSun([0, 0], 0, casters, place, each, undefined))
    expect(Math.abs(a!.directSunMin - b!.directSunMin)).toBeLessThan(6)
    const offset = date === '2026-03-08' ? '-06:00' : '-07:00'
    expect(isoWithOffset(a!.firstSunMs!, place.zone).endsWith(offset)).toBe(true)
  })

  it('takes the level of its slab into account', () => {
    const fence = cast(wall([[-50, 0], [50, 0]])) // biome-ignore format: one line
    const minutes = [0, 1, 1.9, 2].map(
      levelM => pointSun([0, 1.5], levelM, [fence], place, winter, undefined).directSunMin,
    )
    expect(minutes).toEqual([...minutes].sort((a, b) => a - b))
    expect(minutes[0]).toBe(0)
    expect(minutes[3]).toBe(pointSun([0, 1.5], 0, [], place, winter, undefined).directSunMin)
  })
})

describe('the shade line over an area', () => {
  const slab = slabOf(box(0, 0, 6, 4))
  const corners: Pt[] = [[0.001, 0.001], [5.999, 0.001], [5.999, 3.999], [0.001, 3.999]] // biome-ignore format: one line

  it('reaches its first and leaves its last corner at the minute the corners themselves tell', () => {
    // A convex shade edge passes the corners first and last.
    const casters = [cast(wall([[-300, -1], [300, -1]], { topM: 2.2 }))] // biome-ignore format: one line
    const times = shadeLineTimes(slab.net, 0, casters, place, winter, undefined)
    const points = corners.map(at => pointSun(at, 0, casters, place, winter, undefined))
    const firsts = points.map(({ firstSunMs }) => firstSunMs).filter(ms => ms !== null)
    const lasts = points.map(({ lastSunMs }) => lastSunMs).filter(ms => ms !== null)
    expect(Math.abs(times.firstSunMs! - Math.min(...firsts))).toBeLessThan(minuteMs)
    expect(Math.abs(times.lastSunMs! - Math.max(...lasts))).toBeLessThan(minuteMs)
  })

  it('tells all changes of a summer day behind a house', () => {
    const house = cast(building(box(-9, -2, 8, 8), { eaveM: 5 }))
    const { changes } = shadeLineTimes(slab.net, 0, [house], place, summer, undefined)
    expect(changes.map(({ to }) => to)).toEqual(['sun', 'across', 'shade', 'across', 'shade'])
    const across = changes.find(({ to }) => to === 'across')!
    const first = corners.map(
      at => pointSun(at, 0, [house], place, summer, undefined).crossings.filter(({ into }) => into === 'shade')[0]!,
    )
    expect(Math.abs(across.ms - Math.min(...first.map(({ ms }) => ms)))).toBeLessThan(minuteMs)
  })

  it('counts a half-open cover as sun and a closed one as shade', () => {
    const lines = (light: 'none' | 'half') =>
      shadeLineTimes(slab.net, 0, [cast(cover(box(-400, -400, 800, 800), { light }))], place, summer, undefined)
    expect(lines('half').changes.map(({ to }) => to)).toEqual(['sun', 'shade'])
    expect(lines('none').changes.map(({ to }) => to)[0]).toBe(undefined)
  })

  it('of nothing has no times', () => {
    expect(shadeLineTimes([], 0, [], place, summer, undefined)).toEqual({
      firstSunMs: null,
      lastSunMs: null,
      changes: [],
    })
  })
})
