import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { haurwitzGlobal, ineichenPerez, relativeAirMass, simplifiedSolis } from '../../core/concrete/clearSky'
import { cloudySky } from '../../core/concrete/cloudySky'
import { airCoefficients, airOfDay, hoursOfConditions, hoursOfDay } from '../../core/concrete/dailyWeather'
import { equivalentAge } from '../../core/concrete/equivalentAge'
import { evaporationOfDay } from '../../core/concrete/evaporationOfDay'
import { dewPointFromHumidity, humidityFromDewPoint, saturationHPa } from '../../core/concrete/humidity'
import { shiftHours } from '../../core/concrete/shiftHours'
import { slabWeather } from '../../core/concrete/slabWeather'
import { readHourly } from '../../core/concrete/weatherHours'
import { clock, dayStartMs, hoursOf, juneLight, mildDay, sunAltitudeDeg, weatherOf } from './dayFixture'

const curve = { lowC: 15, highC: 26, sunriseH: 5.6, sunsetH: 20.4, ...airCoefficients }

describe('a day in words', () => {
  it('runs from the low after sunrise to the high after noon of the sun, and back, without a step', () => {
    expect(airOfDay(curve, 5.6 + 1.55)).toBeCloseTo(15, 9)
    expect(airOfDay(curve, 13 + 2.59)).toBeCloseTo(26, 9)
    for (let hour = 0; hour < 24; hour += 0.05) {
      const air = airOfDay(curve, hour)
      expect(air).toBeGreaterThanOrEqual(15 - 1e-9)
      expect(air).toBeLessThanOrEqual(26 + 1e-9)
      expect(Math.abs(airOfDay(curve, hour + 0.05) - air)).toBeLessThan(0.25)
    }
    expect(Math.abs(airOfDay(curve, 0) - airOfDay(curve, 24))).toBeLessThan(1e-9)
  })

  it('falls at night as the published curve does, but for the stretch to the low (TrenchR tests, 20.46866 at 20 h)', () => {
    const published = { lowC: 10, highC: 30, sunriseH: 6, sunsetH: 18, highAfterNoonH: 2.59, lowAfterSunriseH: 1.55 }
    const night = { ...published, nightDecay: 2.2 }
    const plain = (20.46866 - 10) / Math.exp((-2.2 * 2) / (24 - 12 + 1.55))
    expect(airOfDay(night, 18)).toBeCloseTo(10 + plain, 4)
    const stretched = (Math.exp((-2.2 * 2) / 13.55) - Math.exp(-2.2)) / (1 - Math.exp(-2.2))
    expect(airOfDay(night, 20)).toBeCloseTo(10 + plain * stretched, 4)
  })

  it('is within 9 % of the range of the daily table of ASHRAE Fundamentals, chapter 14 (from memory), mornings included', () => {
    // Share of the daily range under the high, hours 1 to 24.
    const table = [
      0.88, 0.92, 0.95, 0.98, 1, 0.98, 0.91, 0.74, 0.55, 0.38, 0.23, 0.13, 0.05, 0, 0, 0.06, 0.14, 0.24, 0.39, 0.5,
      0.59, 0.68, 0.75, 0.82,
    ]
    const solar = { lowC: 0, highC: 1, sunriseH: 4.6, sunsetH: 19.4, ...airCoefficients }
    table.forEach((under, index) => {
      const hour = index + 1
      const over = airOfDay(solar, hour) - (1 - under)
      expect(over, `hour ${hour}`).toBeGreaterThan(-0.04)
      expect(over, `hour ${hour}`).toBeLessThan(0.09)
    })
  })

  it('has a row for each hour of a day of 23, 24 and 25 hours', () => {
    for (const length of [23, 24, 25]) {
      const made = hoursOfDay(mildDay, { ...juneLight, toMs: clock(length) })
      expect(made.ok && made.value.hours.length).toBe(length)
    }
  })

  it('says it when the day has no sunrise, and when the dew point is over the air', () => {
    const polar = hoursOfDay(mildDay, { ...juneLight, sunriseMs: null, sunsetMs: null })
    expect(polar.ok && polar.value.findings.map(finding => finding.code)).toEqual(['noSunrise'])
    expect(polar.ok && new Set(polar.value.hours.map(row => row.airC))).toEqual(new Set([20.5]))
    const damp = hoursOfDay({ ...mildDay, dewPointC: 17 }, juneLight)
    expect(damp.ok && damp.value.findings[0]?.code).toBe('dewPointOverLow')
    expect(damp.ok && damp.value.hours.every(row => row.humidity! <= 1)).toBe(true)
  })
})

describe('water in the air', () => {
  it('has the saturation pressure of steam tables within 0.4 %: 6.11, 12.28, 23.39, 42.47 hPa (from memory)', () => {
    for (const [tempC, table] of [
      [0, 6.113],
      [10, 12.28],
      [20, 23.39],
      [30, 42.47],
    ] as const)
      expect(Math.abs(saturationHPa(tempC) / table - 1)).toBeLessThan(0.004)
  })

  it('goes from dew point to humidity and back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -10, max: 45, noNaN: true }),
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        (airC, humidity) => {
          expect(humidityFromDewPoint(airC, dewPointFromHumidity(airC, humidity))).toBeCloseTo(humidity, 9)
        },
      ),
      { seed: 3 },
    )
  })
})

describe('the sky', () => {
  it('gives two clear skies of independent make within 12 % of each other and of Haurwitz, the sun over 30°', () => {
    for (const altitudeDeg of [30, 45, 60, 75]) {
      const ineichen = ineichenPerez({
        altitudeDeg,
        airMassAbsolute: relativeAirMass(altitudeDeg),
        linkeTurbidity: 3.5,
        elevationM: 0,
        extraterrestrialWm2: 1364,
      })
      const solis = simplifiedSolis({
        altitudeDeg,
        aerosol700: 0.12,
        waterCm: 2,
        pressureShare: 1,
        extraterrestrialWm2: 1364,
      })
      expect(Math.abs(ineichen.globalWm2 / solis.globalWm2 - 1)).toBeLessThan(0.12)
      expect(Math.abs(ineichen.globalWm2 / haurwitzGlobal(altitudeDeg) - 1)).toBeLessThan(0.12)
    }
  })

  it('keeps 1 − 0.75 n^3.4 of the clear global under clouds, and no direct sun under an overcast', () => {
    const clear = { directWm2: 600, diffuseWm2: 100 }
    for (const cloud of [0, 0.3, 0.7, 1]) {
      const level = cloudySky(clear, cloud)
      expect(level.directWm2 + level.diffuseWm2).toBeCloseTo(700 * (1 - 0.75 * cloud ** 3.4), 9)
    }
    expect(cloudySky(clear, 1).directWm2).toBeCloseTo(0, 9)
    expect(cloudySky(clear, 0)).toEqual(clear)
    const half = cloudySky(clear, 0.5)
    expect(half.diffuseWm2 / (half.directWm2 + half.diffuseWm2)).toBeCloseTo(1 / 7 + (6 / 7) * 0.25, 12)
    expect(cloudySky({ directWm2: 0, diffuseWm2: 0 }, 0.5)).toEqual({ directWm2: 0, diffuseWm2: 0 })
  })
})

describe('hourly rows', () => {
  it('are means of their hour: read back at the middle of the hour as given', () => {
    const values = [10, 14, 12]
    expect(readHourly(values, 0, 1.5 * 3_600_000)).toBe(14)
    expect(readHourly(values, 0, 3_600_000)).toBe(12)
    expect(readHourly(values, 0, 0)).toBe(10)
    expect(readHourly(values, 0, 3 * 3_600_000)).toBe(12)
  })

  it('bridge two missing hours by a straight line and say so', () => {
    const hours = hoursOf(mildDay).filter((_, index) => index !== 9 && index !== 10)
    const made = slabWeather({ hours, sunAltitudeDeg, elevationM: 200 })
    expect(made.ok && made.value.findings.map(finding => [finding.code, finding.values.hours])).toEqual([
      ['weatherHourMissing', 2],
    ])
    expect(made.ok && made.value.steps).toBe(288)
    const whole = weatherOf(mildDay)
    expect(made.ok && Math.abs(made.value.airC[117]! - whole.airC[117]!)).toBeLessThan(0.6)
  })

  it('may come in any order', () => {
    const hours = [...hoursOf(mildDay)].reverse()
    const made = slabWeather({ hours, sunAltitudeDeg, elevationM: 200 })
    expect(made.ok && made.value.airC).toEqual(weatherOf(mildDay).airC)
  })

  it('have no sun at night and a strong one at noon', () => {
    const weather = weatherOf(mildDay)
    expect(weather.directWm2[Math.floor((2 * 60) / 5)]).toBe(0)
    expect(weather.directWm2[Math.floor((13 * 60) / 5)]).toBeGreaterThan(700)
    expect(weather.fromMs).toBe(dayStartMs)
  })
})

describe('the day moved a little', () => {
  it('is hotter with the same water in the air, windier and cloudier, and ends at clear and overcast', () => {
    const hours = hoursOf(mildDay)
    const moved = shiftHours(hours, { airK: 5, windFactor: 1.5, cloudAdd: 0.97 })
    const before = hours[10]!
    const after = moved[10]!
    expect(after.airC).toBeCloseTo(before.airC + 5, 12)
    expect(after.dewPointC).toBeCloseTo(12, 9)
    expect(after.humidity).toBeUndefined()
    expect(after.wind10mMs).toBeCloseTo(4.5, 12)
    expect(after.cloud).toBe(1)
    expect(shiftHours(hours, { airK: -10 })[5]!.dewPointC).toBeLessThan(12)
    const same = slabWeather({ hours: shiftHours(hours, {}), sunAltitudeDeg, elevationM: 200 })
    expect(same.ok && Math.abs(same.value.humidity[100]! - weatherOf(mildDay).humidity[100]!)).toBeLessThan(0.005)
  })

  it('takes hourly conditions as they are and makes hours of a day in words', () => {
    const hours = [...hoursOf(mildDay)]
    const table = hoursOfConditions({ kind: 'hourly', date: '2026-06-12', hours, source: 'typed' }, juneLight)
    expect(table.ok && table.value.hours).toBe(hours)
    const words = hoursOfConditions(mildDay, juneLight)
    expect(words.ok && words.value.hours).toEqual(hours)
  })
})

describe('the drying row', () => {
  it('has an entry an hour, dries most in the afternoon, and names its band', () => {
    const drying = evaporationOfDay(weatherOf({ ...mildDay, highC: 34, dewPointC: 8, windMs: 5 }), airC => airC + 3)
    expect(drying).toHaveLength(24)
    const most = drying.reduce((high, row) => (row.rateKgM2H > high.rateKgM2H ? row : high))
    expect(most.fromMs).toBe(clock(15))
    expect(most.band).toBe('precautions')
    expect(drying[4]!.band).not.toBe('precautions')
  })
})

describe('equivalent age', () => {
  it('adds up spans: hours at 70 °F count whole, warmer ones more (rates as ASTM C1074, 41.57 kJ/mol)', () => {
    const spans = [
      { tempC: 190 / 9, hours: 2 },
      { tempC: 290 / 9, hours: 1 },
    ]
    expect(equivalentAge(spans, 41570)).toBeCloseTo(2 + 1 / 0.539, 2)
  })
})
