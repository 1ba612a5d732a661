import { Body, Equator, Horizon, Observer } from 'astronomy-engine'
import { describe, expect, it } from 'vitest'
import { shadowPerMeter, sunPosition, sunVector } from '../../core/sun/sunPosition'

describe('the sun stands where published tables put it', () => {
  it('matches the worked example of the Solar Position Algorithm', () => {
    // I. Reda, A. Andreas, "Solar Position Algorithm for Solar Radiation Applications", NREL/TP-560-34302, revised 2008,
    // Table A5.1: 17 October 2003, 12:30:30 at UTC−7, 39.742476° N, 105.1786° W: topocentric elevation without refraction
    // 39.872046°, azimuth 194.340241°.
    const sun = sunPosition(Date.UTC(2003, 9, 17, 19, 30, 30), 39.742476, -105.1786)
    expect(Math.abs(sun.trueAltitudeDeg - 39.872046)).toBeLessThan(0.0005)
    expect(Math.abs(sun.azimuthDeg - 194.340241)).toBeLessThan(0.003)
    // The same table: zenith 50.111622° with the refraction of 820 mbar and 11 °C; ours is that of sea level.
    expect(Math.abs(sun.altitudeDeg - (90 - 50.111622))).toBeLessThan(0.006)
  })

  it('stays within 0.015° of an independent ephemeris over latitudes, months and hours', () => {
    const gaps = { altitude: [] as number[], apparent: [] as number[], azimuth: [] as number[] }
    let above = 0
    for (let latDeg = 0; latDeg <= 65; latDeg += 5)
      for (let month = 0; month < 12; month++)
        for (let hour = 0; hour < 24; hour++) {
          const ms = Date.UTC(2026, month, 5 + month, hour, 17)
          const date = new Date(ms)
          const observer = new Observer(latDeg, -90, 0)
          const { ra, dec } = Equator(Body.Sun, date, observer, true, true)
          const plain = Horizon(date, observer, ra, dec)
          const refracted = Horizon(date, observer, ra, dec, 'normal')
          const sun = sunPosition(ms, latDeg, -90)
          if (refracted.altitude <= 3) continue
          above++
          gaps.altitude.push(Math.abs(sun.trueAltitudeDeg - plain.altitude))
          gaps.apparent.push(Math.abs(sun.altitudeDeg - refracted.altitude))
          const turn = ((sun.azimuthDeg - plain.azimuth + 540) % 360) - 180
          gaps.azimuth.push(Math.abs(turn) * Math.cos((plain.altitude * Math.PI) / 180))
        }
    expect(above).toBe(1908)
    for (const list of Object.values(gaps)) {
      expect(list).toHaveLength(above)
      expect(list.every(Number.isFinite)).toBe(true)
      expect(Math.max(...list)).toBeLessThan(0.015)
      expect(list.reduce((a, b) => a + b, 0) / list.length).toBeLessThan(0.006)
    }
  })

  it('takes the refraction out again', () => {
    // Meeus, Astronomical Algorithms, 2nd ed., 1998, formula 16.4 with h the true altitude: at 10° about 5.4′.
    for (const hour of [12, 13, 14, 15, 16, 17, 18]) {
      const { altitudeDeg, trueAltitudeDeg } = sunPosition(Date.UTC(2026, 11, 21, hour), 50, -75)
      if (trueAltitudeDeg < 0) continue
      const minutes = 1.02 / Math.tan(((trueAltitudeDeg + 10.3 / (trueAltitudeDeg + 5.11)) * Math.PI) / 180)
      expect(Math.abs((altitudeDeg - trueAltitudeDeg) * 60 - minutes)).toBeLessThan(0.1)
    }
  })
})

describe('the drawing is turned as its north says', () => {
  it('puts a south sun at (−1, 0) when north lies 90° clockwise of drawing-up, and the shadow the other way', () => {
    const [x, y] = sunVector({ azimuthDeg: 180 }, 90)
    expect(x).toBeCloseTo(-1, 12)
    expect(y).toBeCloseTo(0, 12)
    const [sx, sy] = shadowPerMeter({ azimuthDeg: 180, altitudeDeg: 45 }, 90)
    expect(sx).toBeCloseTo(1, 12)
    expect(sy).toBeCloseTo(0, 12)
  })

  it.each([
    // Height over shadow = tan(altitude): plane trigonometry.
    [45, 1],
    [30, Math.sqrt(3)],
    [60, 1 / Math.sqrt(3)],
    [Math.atan(1 / 4) * (180 / Math.PI), 4],
  ])('at %s° a meter throws %s m', (altitudeDeg, lengthM) => {
    expect(Math.hypot(...shadowPerMeter({ azimuthDeg: 77, altitudeDeg }, 12))).toBeCloseTo(lengthM, 10)
  })
})
