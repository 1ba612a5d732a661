import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { coldChecks } from '../../core/concrete/coldChecks'
import { evaporation, evaporationBand, evaporationRate, kgM2PerLbFt2 } from '../../core/concrete/evaporation'
import { type BatchWeights, freshTemperature, iceForTemperature } from '../../core/concrete/freshTemperature'
import { hotChecks } from '../../core/concrete/hotChecks'
import { rainOutlook } from '../../core/concrete/rain'
import type { WeatherHour } from '../../shared/document/day'
import { clock, hoursOf, mildDay } from './dayFixture'

const codes = (findings: readonly { readonly code: string }[]): string[] => findings.map(finding => finding.code)

describe('drying', () => {
  it('is never below nothing, grows with the wind and the heat of the concrete, shrinks with damp air', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 45, noNaN: true }),
        fc.double({ min: -5, max: 42, noNaN: true }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        fc.double({ min: 0, max: 12, noNaN: true }),
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        (concreteC, airC, humidity, windAtSlabMs, more) => {
          const at = { concreteC, airC, humidity, windAtSlabMs }
          const rate = evaporationRate(at)
          expect(rate).toBeGreaterThanOrEqual(0)
          expect(evaporationRate({ ...at, windAtSlabMs: windAtSlabMs + more })).toBeGreaterThanOrEqual(rate)
          expect(evaporationRate({ ...at, concreteC: concreteC + more })).toBeGreaterThanOrEqual(rate)
          expect(evaporationRate({ ...at, humidity: humidity + more / 50 })).toBeLessThanOrEqual(rate)
        },
      ),
      { seed: 1 },
    )
  })

  it('is nothing over cool concrete in warm moist air', () => {
    expect(evaporationRate({ concreteC: 15, airC: 28, humidity: 0.9, windAtSlabMs: 3 })).toBe(0)
  })

  it('has its bands at 0.05, 0.10 and 0.20 lb/ft²/h', () => {
    const band = (lb: number) => evaporationBand(lb * kgM2PerLbFt2)
    expect([0.049, 0.051, 0.099, 0.101, 0.199, 0.201].map(band)).toEqual([
      'low',
      'veryLowBleed',
      'veryLowBleed',
      'lowBleed',
      'lowBleed',
      'precautions',
    ])
  })

  it('says ± 40 % and stays a value outside the chart, with a check', () => {
    const hot = evaporation({ concreteC: 42, airC: 40, humidity: 0.2, windAtSlabMs: 4 })
    expect(hot.leastKgM2H / hot.rateKgM2H).toBeCloseTo(0.6, 12)
    expect(hot.mostKgM2H / hot.rateKgM2H).toBeCloseTo(1.4, 12)
    expect(hot.rateKgM2H).toBeGreaterThan(1)
    expect(codes(hot.findings)).toEqual(['evaporationOutsideChart'])
    expect(codes(evaporation({ concreteC: 25, airC: 25, humidity: 0.5, windAtSlabMs: 3 }).findings)).toEqual([])
    const wet = evaporation({ concreteC: 25, airC: 25, humidity: 1.4, windAtSlabMs: 3 })
    expect(wet.findings.map(finding => [finding.code, finding.severity])).toEqual([['humidityOutOfRange', 'stop']])
  })
})

describe('fresh temperature', () => {
  const batch: BatchWeights = {
    aggregate: { massKg: 1850, tempC: 32 },
    cement: { massKg: 335, tempC: 55 },
    water: { massKg: 120, tempC: 24 },
    aggregateWaterKg: 40,
    iceKg: 0,
  }

  it('keeps the heat: what the parts bring, melted ice included, is what the mix holds', () => {
    const made = freshTemperature({ ...batch, water: { massKg: 80, tempC: 24 }, iceKg: 40 })
    const heat = 0.22 * (1850 * 32 + 335 * 55) + 80 * 24 + 40 * 32
    const melt = (40 * 143.5) / 1.8
    const share = 0.22 * (1850 + 335) + 80 + 40 + 40
    expect(made.ok && made.value.tempC).toBeCloseTo((heat - melt) / share, 9)
  })

  it('puts in the ice it takes to reach a temperature', () => {
    const iceKg = iceForTemperature(batch, 27)
    expect(iceKg).toBeGreaterThan(10)
    const made = freshTemperature({ ...batch, water: { massKg: 120 - iceKg, tempC: 24 }, iceKg })
    expect(made.ok && made.value.tempC).toBeCloseTo(27, 9)
    expect(iceForTemperature(batch, 60)).toBe(0)
  })

  it('checks ice over 75 % of the water and cooling over 20 °F, and stops without weights', () => {
    const icy = freshTemperature({ ...batch, water: { massKg: 10, tempC: 24 }, iceKg: 130 })
    expect(icy.ok && codes(icy.value.findings)).toEqual(['iceOverLimit', 'coolingOverLimit'])
    const empty = freshTemperature({ ...batch, cement: { massKg: 0, tempC: 20 }, iceKg: Number.NaN })
    expect(!empty.ok && empty.error.map(finding => finding.values.part)).toEqual(['cement', 'ice'])
  })
})

describe('cold and heat', () => {
  const cold = (airC: number): WeatherHour[] =>
    hoursOf(mildDay).map((row, hour) => ({ ...row, airC: hour === 20 ? airC : 10 }))

  it('checks air under 40 °F and frost in the day after placing', () => {
    const at = (airC: number) =>
      codes(coldChecks({ hours: cold(airC), placedMs: clock(8), placedC: 15, thicknessM: 0.1 }))
    expect(at(4.5)).toEqual([])
    expect(at(4.4)).toEqual(['coldWeather'])
    expect(at(-1)).toEqual(['coldWeather', 'freezeAhead'])
  })

  it('does not look before placing', () => {
    expect(coldChecks({ hours: cold(-5), placedMs: clock(21.5), placedC: 15, thicknessM: 0.1 })).toEqual([])
  })

  it('wants 55 °F of thin concrete and no more than 95 °F of any', () => {
    expect(codes(coldChecks({ hours: [], placedMs: 0, placedC: 12, thicknessM: 0.1 }))).toEqual(['placedTooCold'])
    expect(codes(coldChecks({ hours: [], placedMs: 0, placedC: 12, thicknessM: 0.4 }))).toEqual([])
    expect(codes(hotChecks({ placedC: 35.1, mostEvaporationKgM2H: 0.3 }))).toEqual(['placedTooHot'])
    expect(codes(hotChecks({ placedC: 35, mostEvaporationKgM2H: 1.1 }))).toEqual(['evaporationHigh'])
  })
})

describe('rain', () => {
  const wet = (chances: Record<number, number>, mm: Record<number, number> = {}): WeatherHour[] =>
    hoursOf(mildDay).map((row, hour) => ({
      ...row,
      rainChance: chances[hour] ?? 0,
      ...(mm[hour] === undefined ? {} : { rainMm: mm[hour] }),
    }))
  const look = (hours: readonly WeatherHour[]) =>
    rainOutlook({ hours, firstConcreteMs: clock(8), allHardMs: clock(12) })

  it('goes, watches or calls it off by the chance while it sets and after', () => {
    expect(look(wet({})).answer).toBe('go')
    expect(look(wet({ 18: 0.3 })).answer).toBe('watch')
    expect(look(wet({ 10: 0.5 })).answer).toBe('noGo')
    expect(look(wet({ 10: 0.1 }, { 10: 2 })).answer).toBe('noGo')
    expect(look(wet({ 6: 0.9 })).answer).toBe('go')
    expect(look(hoursOf(mildDay)).answer).toBe('unknown')
  })

  it('bounds the chance of the span by the largest hour and by hours that do not know of each other', () => {
    const { settingChanceLeast, settingChanceMost } = look(wet({ 8: 0.2, 9: 0.3 }))
    expect(settingChanceLeast).toBeCloseTo(0.3, 12)
    expect(settingChanceMost).toBeCloseTo(1 - 0.8 * 0.7, 12)
  })

  it('lies open from first concrete to a day after too hard, and says which hours it does not know', () => {
    const outlook = look(wet({ 20: 0.25 }))
    expect(outlook.exposedHours).toBe(28)
    expect(outlook.washableMs).toBe(clock(36))
    expect(outlook.watchFromMs).toBe(clock(20))
    expect(outlook.findings.map(finding => [finding.code, finding.severity])).toEqual([
      ['rainWatch', 'check'],
      ['rainUnknown', 'note'],
    ])
  })

  it('counts part of an hour by its share', () => {
    const outlook = rainOutlook({
      hours: wet({}, { 10: 0.8 }),
      firstConcreteMs: clock(10.5),
      allHardMs: clock(14),
    })
    expect(outlook.settingRainMm).toBeCloseTo(0.4, 12)
    const { settingChanceMost } = rainOutlook({
      hours: wet({ 10: 0.3, 11: 0.3 }),
      firstConcreteMs: clock(10.5),
      allHardMs: clock(14),
    })
    expect(settingChanceMost).toBeCloseTo(1 - 0.7 ** 1.5, 12)
  })
})
