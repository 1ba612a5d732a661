import { Body, Equator, Horizon, MakeTime, Observer } from 'astronomy-engine'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { northFromWall } from '../../core/geometry/field/northFromWall'
import { heightFromShadow, northFromShadow } from '../../core/sun/measureByShadow'
import { shadowPerMeter, sunPosition } from '../../core/sun/sunPosition'
import type { Pt } from '../../shared/document/primitives'

const boise = { latDeg: 43.5826, lonDeg: -116.2147 }
const angleApart = (a: number, b: number) => Math.abs(((a - b + 540) % 360) - 180)

describe('north', () => {
  it('comes from a wall whose bearing is known, by compass with its declination', () => {
    // A wall drawn straight up that looks due east: north lies to the left of the sheet, 270° clockwise from up.
    expect(northFromWall([0, 0], [0, 5], { kind: 'true', deg: 90 })).toEqual({ ok: true, value: 270 })
    // A needle that points 13° east of north reads 77° on the same wall.
    expect(northFromWall([0, 0], [0, 5], { kind: 'compass', deg: 77, declinationDeg: 13 })).toEqual({
      ok: true,
      value: 270,
    })
    expect(northFromWall([1, 1], [1, 1], { kind: 'true', deg: 90 }).ok).toBe(false)
    expect(northFromWall([0, 0], [0, 5], { kind: 'true', deg: Number.NaN }).ok).toBe(false)
  })

  it('comes from the shadow of a plumb line at a known minute, whatever way the sheet lies', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 359.9, noNaN: true }),
        fc.integer({ min: 15, max: 23 }),
        (northDeg, hour) => {
          const ms = Date.UTC(2026, 6, 21, hour)
          const [x, y] = shadowPerMeter(sunPosition(ms, boise.latDeg, boise.lonDeg), northDeg)
          const found = northFromShadow([2, 3], [2 + 2 * x, 3 + 2 * y], ms, boise)
          expect(found.ok && angleApart(found.value, northDeg)).toBeLessThan(1e-9)
        },
      ),
      { seed: 2, numRuns: 100 },
    )
  })

  it('agrees with an independent ephemeris', () => {
    // Don Cross, Astronomy Engine (open source): azimuth from north, 0.03° is a line of 2 in over 100 yd.
    const when = new Date(Date.UTC(2026, 6, 21, 22, 10))
    const observer = new Observer(boise.latDeg, boise.lonDeg, 832)
    const equator = Equator(Body.Sun, MakeTime(when), observer, true, true)
    const { azimuth, altitude } = Horizon(when, observer, equator.ra, equator.dec, 'normal')
    const away = ((azimuth + 180) * Math.PI) / 180
    const tip: Pt = [Math.sin(away), Math.cos(away)]
    const north = northFromShadow([0, 0], tip, when.getTime(), boise)
    expect(north.ok && angleApart(north.value, 0)).toBeLessThan(0.03)
    const height = heightFromShadow(6 / Math.tan((altitude * Math.PI) / 180), when.getTime(), boise)
    expect(height.ok && Math.abs(height.value.heightM - 6)).toBeLessThan(0.01)
  })

  it('is not taken from a low sun or a short shadow', () => {
    const night = Date.UTC(2026, 6, 21, 8)
    expect(northFromShadow([0, 0], [1, 1], night, boise)).toMatchObject({ ok: false, error: [{ code: 'sunTooLow' }] })
    expect(heightFromShadow(4, night, boise)).toMatchObject({ ok: false, error: [{ code: 'sunTooLow' }] })
    const noon = Date.UTC(2026, 6, 21, 19, 50)
    expect(northFromShadow([0, 0], [0.1, 0], noon, boise)).toMatchObject({ error: [{ code: 'shadowTooShort' }] })
    expect(heightFromShadow(-4, noon, boise)).toMatchObject({ error: [{ code: 'badMeasure' }] })
  })
})

describe('the height of an eave', () => {
  it('is what threw the shadow, and tells what a minute is worth', () => {
    const ms = Date.UTC(2026, 6, 21, 22, 30)
    const sun = sunPosition(ms, boise.latDeg, boise.lonDeg)
    const [x, y] = shadowPerMeter(sun, 35)
    const found = heightFromShadow(6.1 * Math.hypot(x, y), ms, boise)
    expect(found.ok && found.value.heightM).toBeCloseTo(6.1, 9)
    expect(found.ok && found.value.perMinuteM).toBeGreaterThan(0)
    expect(found.ok && found.value.perMinuteM).toBeLessThan(0.1)
  })
})
