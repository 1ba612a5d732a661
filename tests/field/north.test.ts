import { Body, Equator, Horizon, MakeTime, Observer } from 'astronomy-engine'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { setNorth } from '../../core/document/commands/setSite'
import { northFromWall } from '../../core/geometry/field/northFromWall'
import { heightFromShadow, northFromShadow } from '../../core/sun/measureByShadow'
import { shadowPerMeter, sunPosition } from '../../core/sun/sunPosition'
import { emptySite } from '../../renderer/app/emptySite'
import type { Pt } from '../../shared/document/primitives'
import { done } from '../commands/edit'

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

  it('agrees with it to a tenth of a degree all over the earth: both sides of the equator and of the date line, near the poles', () => {
    let seen = 0
    fc.assert(
      fc.property(
        fc.integer({ min: -89, max: 89 }),
        fc.integer({ min: -180, max: 180 }),
        fc.integer({ min: 0, max: 365 * 24 * 60 }),
        fc.integer({ min: 0, max: 359 }),
        (latDeg, lonDeg, minute, northDeg) => {
          const when = new Date(Date.UTC(2026, 0, 1) + minute * 60_000)
          const observer = new Observer(latDeg, lonDeg, 0)
          const equator = Equator(Body.Sun, MakeTime(when), observer, true, true)
          const { azimuth, altitude } = Horizon(when, observer, equator.ra, equator.dec, 'normal')
          // Under the zenith a shadow has no direction worth the name.
          fc.pre(altitude > 6 && altitude < 80)
          const heading = ((azimuth + 180 + northDeg) * Math.PI) / 180
          const north = northFromShadow([0, 0], [Math.sin(heading), Math.cos(heading)], when.getTime(), {
            latDeg,
            lonDeg,
          })
          expect(north.ok && angleApart(north.value, northDeg)).toBeLessThan(0.1)
          seen += 1
        },
      ),
      { seed: 4, numRuns: 200 },
    )
    expect(seen).toBeGreaterThan(150)
  })

  it('comes out the same four ways: typed, by a true bearing, by a compass, by a shadow', () => {
    // A house front drawn from (0, 0) to (6, 8): atan2(6, 8) = 36.87° from up. On the plot plan it bears 319.6°.
    const site = emptySite('s', 'S')
    const typed = done(setNorth(77.27)(site)).place.northDeg
    const byPlan = northFromWall([0, 0], [6, 8], { kind: 'true', deg: 319.6 })
    // 12.4° east, from memory for the south of Idaho: the needle reads less than the true bearing by that. West is minus.
    const byEast = northFromWall([0, 0], [6, 8], { kind: 'compass', deg: 307.2, declinationDeg: 12.4 })
    const byWest = northFromWall([0, 0], [6, 8], { kind: 'compass', deg: 332, declinationDeg: -12.4 })
    // The shadow is drawn where the independent ephemeris has it.
    const when = new Date(Date.UTC(2026, 6, 21, 22, 10))
    const observer = new Observer(boise.latDeg, boise.lonDeg, 832)
    const equator = Equator(Body.Sun, MakeTime(when), observer, true, true)
    const { azimuth } = Horizon(when, observer, equator.ra, equator.dec, 'normal')
    const heading = ((azimuth + 180 + typed) * Math.PI) / 180
    const byShadow = northFromShadow(
      [1, 1],
      [1 + 3 * Math.sin(heading), 1 + 3 * Math.cos(heading)],
      when.getTime(),
      boise,
    )
    for (const north of [byPlan, byEast, byWest, byShadow])
      expect(north.ok && angleApart(north.value, typed)).toBeLessThan(0.1)
    // The wrong sign of the declination would be off by twice of it.
    const wrong = northFromWall([0, 0], [6, 8], { kind: 'compass', deg: 307.2, declinationDeg: -12.4 })
    expect(wrong.ok && angleApart(wrong.value, typed)).toBeCloseTo(24.8, 1)
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
