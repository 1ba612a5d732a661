import { describe, expect, it } from 'vitest'
import { hoursOfDay } from '../../core/concrete/dailyWeather'
import { evaporation } from '../../core/concrete/evaporation'
import { predictSet } from '../../core/concrete/setClock'
import { slabWeather } from '../../core/concrete/slabWeather'
import { wordProblem } from '../../core/problems/wordProblem'
import { printMeasures } from '../../core/units/printMeasures'
import type { WeatherHour } from '../../shared/document/day'
import { concreteCodes, type Finding } from '../../shared/problem'
import { clock, hoursOf, juneLight, mildDay, sunAltitudeDeg, weatherOf } from './dayFixture'

const words = (finding: Finding): string => wordProblem(finding, printMeasures('ftin')).message
const refuse = (hours: readonly WeatherHour[]): string[] => {
  const made = slabWeather({ hours, sunAltitudeDeg, elevationM: 200 })
  return made.ok ? [] : made.error.map(words)
}
const note = (hours: readonly WeatherHour[]): string[] => {
  const made = slabWeather({ hours, sunAltitudeDeg, elevationM: 200 })
  return made.ok ? made.value.findings.map(words) : ['refused']
}
const good = hoursOf(mildDay)
const change = (hour: number, row: Partial<WeatherHour>): WeatherHour[] =>
  good.map((kept, index) => (index === hour ? { ...kept, ...row } : kept))

describe('weather that cannot be is refused in words', () => {
  it('no hours at all', () => {
    expect(refuse([])).toEqual(['There is no weather for this day.'])
  })

  it('a gap of three hours', () => {
    expect(refuse(good.filter((_, hour) => hour < 8 || hour > 10))).toEqual([
      'The weather has a gap of 3 hours from 2026-06-12 13:00 UTC.',
    ])
  })

  it('an hour twice', () => {
    expect(refuse([...good, good[4]!])).toEqual([
      'The hour 2026-06-12 09:00 UTC is in the weather twice, or is not a whole hour after the one before.',
    ])
  })

  it('a humidity of 140 %', () => {
    expect(refuse(change(7, { humidity: 1.4 }))).toEqual([
      'A humidity of 140 % at 2026-06-12 12:00 UTC is not possible: it lies from 0 to 100 %.',
    ])
    const wet = evaporation({ concreteC: 25, airC: 25, humidity: 1.4, windAtSlabMs: 3 })
    expect(wet.findings.map(words)).toEqual(['A humidity of 140 % is not possible: it lies from 0 to 100 %.'])
  })

  it('a dew point over the air, air in the wrong unit, a gale, sky cover and rain that cannot be', () => {
    expect(refuse(change(7, { airC: 20, dewPointC: 25 }))).toEqual([
      'A dew point of 77 °F does not go with air of 68 °F at 2026-06-12 12:00 UTC.',
    ])
    expect(refuse(change(7, { airC: 82 }))).toEqual([
      'Air of 180 °F at 2026-06-12 12:00 UTC is not weather to pour in.',
    ])
    expect(refuse(change(7, { wind10mMs: 60 }))).toEqual([
      'A wind of 134 mph (60 m/s) at 2026-06-12 12:00 UTC is not weather to pour in.',
    ])
    expect(refuse(change(7, { cloud: 8 }))).toEqual([
      'A sky cover of 800 % at 2026-06-12 12:00 UTC is not possible: it lies from 0 to 100 %.',
    ])
    expect(refuse(change(7, { rainChance: 40 }))).toEqual([
      'A chance of rain of 4,000 % at 2026-06-12 12:00 UTC is not possible: it lies from 0 to 100 %.',
    ])
    expect(refuse(change(7, { airC: Number.NaN }))).toEqual([
      'Air of NaN °F at 2026-06-12 12:00 UTC is not weather to pour in.',
    ])
  })

  it('a high under the low', () => {
    const made = hoursOfDay({ ...mildDay, highC: 10, lowC: 15 }, juneLight)
    expect(!made.ok && made.error.map(words)).toEqual(['The high of 50 °F is under the low of 59 °F.'])
  })
})

describe('weather with holes is used and said', () => {
  it('one hour, two hours', () => {
    expect(note(good.filter((_, hour) => hour !== 8))).toEqual([
      '1 hour of weather missing from 2026-06-12 13:00 UTC: taken from the hours beside it.',
    ])
    expect(note(good.filter((_, hour) => hour !== 8 && hour !== 9))).toEqual([
      '2 hours of weather missing from 2026-06-12 13:00 UTC: taken from the hours beside them.',
    ])
  })

  it('no humidity, no wind, no sky cover', () => {
    const bare = good.map(({ startUtc, airC }) => ({ startUtc, airC }))
    expect(note(bare)).toEqual([
      '24 hours of weather have no humidity and no dew point: 50 % is used.',
      '24 hours of weather have no wind: 4 mph (2 m/s) is used.',
      '24 hours of weather have no sky cover: a sunny sky is used.',
    ])
  })
})

describe('a pour that asks for more than is known', () => {
  it('says the concrete temperature it took, and where the hours end', () => {
    const set = predictSet({
      weather: weatherOf(mildDay),
      thicknessM: 0.1016,
      mix: {},
      placedMs: clock(22),
      doseMin: 75,
    })
    expect(set.findings.map(words)).toEqual([
      'No concrete temperature given: 73 °F is used, a little over the air of 67 °F.',
      'A retarder dose for 75 min is more than on-site retarder usually buys (up to an hour, common practice).',
      'The weather ends at 2026-06-13 05:00 UTC, before this strip is too hard.',
    ])
  })
})

describe('every finding of the concrete part', () => {
  it('has words of its own with no value left out', () => {
    const values = {
      ...{ startUtc: '2026-06-12T12:00Z', atUtc: '2026-06-12T12:00Z', fromUtc: '2026-06-12T12:00Z' },
      ...{ endsUtc: '2026-06-12T12:00Z', hours: 3, airC: 20, percent: 40, dewPointC: 10, windMs: 3, highC: 20 },
      ...{ lowC: 10, concreteC: 20, rateLbFt2H: 0.22, rateKgM2H: 1.07, placedC: 20, mostC: 35, leastC: 13, limitC: 4 },
      ...{ doseMin: 70, partMin: 12, dries: 0, lastPrintMin: 100, firstMatMin: 120, pour: 'Pour 2', strip: '2a' },
      ...{ factor: 2.4, mostPercent: 75, coolingK: 12, part: 'cement', rainMm: 2, feltC: 33 },
    }
    for (const code of concreteCodes) {
      const { message, hint } = wordProblem({ code, severity: 'check', values }, printMeasures('metric'))
      expect(message, code).not.toBe(code)
      expect(`${message} ${hint}`, code).not.toMatch(/undefined|NaN|\[object/)
      expect(hint, code).toMatch(/[.]$/)
    }
  })
})
