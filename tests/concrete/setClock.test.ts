import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { DayInWords } from '../../core/concrete/dailyWeather'
import { ageRate } from '../../core/concrete/equivalentAge'
import { predictSet, quickSet, quickSetByDose, type SetInput, setRun } from '../../core/concrete/setClock'
import { setTargets } from '../../core/concrete/setTargets'
import { blackBody } from '../../core/concrete/skyRadiation'
import { surfaceGain } from '../../core/concrete/slabHeat'
import { clock, mildDay, minutesAfter, steadyShade, weatherOf } from './dayFixture'

const seeded = { seed: 20260612, numRuns: 120 }

const input = (change: Partial<SetInput> = {}, day: DayInWords = mildDay): SetInput => ({
  weather: weatherOf(day),
  thicknessM: 0.1016,
  mix: {},
  placedMs: clock(8),
  doseMin: 0,
  ...change,
})

/** Instants that were not reached count as later than any. */
const late = (atMs: number | null): number => atMs ?? Number.POSITIVE_INFINITY

const dayArbitrary = fc.record({
  lowC: fc.double({ min: 8, max: 24, noNaN: true }),
  rangeK: fc.double({ min: 4, max: 16, noNaN: true }),
  belowK: fc.double({ min: 2, max: 12, noNaN: true }),
  windMs: fc.double({ min: 0, max: 8, noNaN: true }),
  sky: fc.constantFrom('sunny' as const, 'some' as const, 'mostly' as const, 'overcast' as const),
})
const makeDay = (of: { lowC: number; rangeK: number; belowK: number; windMs: number; sky: DayInWords['sky'] }) => ({
  kind: 'day' as const,
  date: '2026-06-12',
  highC: of.lowC + of.rangeK,
  lowC: of.lowC,
  dewPointC: of.lowC - of.belowK,
  windMs: of.windMs,
  sky: of.sky,
})

describe('ready and too hard', () => {
  it('comes in order: p10, ready, p90, and ready before too hard', () => {
    const set = predictSet(input())
    const order = [set.readyP10Ms, set.readyMs, set.readyP90Ms].map(late)
    expect(order).toEqual([...order].sort((first, second) => first - second))
    expect(late(set.tooHardP10Ms)).toBeLessThan(late(set.tooHardMs))
    expect(late(set.tooHardMs)).toBeLessThan(late(set.tooHardP90Ms))
    expect(set.tooHardP90Ms).not.toBeNull()
    expect(late(set.readyMs)).toBeLessThan(late(set.tooHardMs))
    expect(set.tempC).toHaveLength(set.atMs.length)
  })

  it('has a band of 25 to 40 minutes either way before any log, on a mild morning', () => {
    const { readyMs, readyP10Ms, readyP90Ms } = predictSet(input())
    expect(minutesAfter(readyP10Ms!, readyMs)).toBeGreaterThan(22)
    expect(minutesAfter(readyMs!, readyP90Ms)).toBeLessThan(42)
  })

  it('is never later on a hotter day with hotter concrete', () => {
    fc.assert(
      fc.property(
        dayArbitrary,
        fc.double({ min: 0.5, max: 8, noNaN: true }),
        fc.double({ min: 6, max: 13, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (of, hotterK, hour, share) => {
          const day = makeDay(of)
          const hot = { ...day, highC: day.highC + hotterK, lowC: day.lowC + hotterK }
          const at = { placedMs: clock(hour), shade: steadyShade(share) }
          const cool = quickSet(input(at, day))
          const warm = quickSet(input(at, hot))
          expect(late(warm.readyMs)).toBeLessThanOrEqual(late(cool.readyMs))
          expect(late(warm.tooHardMs)).toBeLessThanOrEqual(late(cool.tooHardMs))
        },
      ),
      seeded,
    )
  })

  it('is never later with more sun by day', () => {
    fc.assert(
      fc.property(
        dayArbitrary,
        fc.double({ min: 6, max: 14, noNaN: true }),
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 24, maxLength: 24 }),
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 24, maxLength: 24 }),
        (of, hour, less, added) => {
          const share = less.map((value, index) => Math.min(1, value + added[index]!))
          const at = (shares: number[]) =>
            input({ placedMs: clock(hour), shade: { fromMs: clock(0), stepMs: 3_600_000, share: shares } }, makeDay(of))
          const dim = quickSet(at(less))
          const bright = quickSet(at(share))
          expect(late(bright.readyMs)).toBeLessThanOrEqual(late(dim.readyMs))
          expect(late(bright.tooHardMs)).toBeLessThanOrEqual(late(dim.tooHardMs))
        },
      ),
      seeded,
    )
  })

  it('is never earlier with more retarder, and the dose buys about its minutes at the placed temperature', () => {
    fc.assert(
      fc.property(
        dayArbitrary,
        fc.integer({ min: 0, max: 60 }),
        fc.integer({ min: 0, max: 60 }),
        (of, doseMin, moreMin) => {
          const day = makeDay(of)
          const plain = quickSet(input({ doseMin }, day))
          const dosed = quickSet(input({ doseMin: doseMin + moreMin }, day))
          expect(late(dosed.readyMs)).toBeGreaterThanOrEqual(late(plain.readyMs))
          expect(late(dosed.tooHardMs)).toBeGreaterThanOrEqual(late(plain.tooHardMs))
        },
      ),
      seeded,
    )
    const steady = { ...mildDay, highC: 21.2, lowC: 21, sky: 'overcast' as const }
    const at = (doseMin: number) => quickSet(input({ doseMin, placedC: 21, placedMs: clock(2) }, steady))
    expect(minutesAfter(at(0).tooHardMs!, at(60).tooHardMs)).toBeGreaterThan(45)
    expect(minutesAfter(at(0).tooHardMs!, at(60).tooHardMs)).toBeLessThan(75)
  })

  it('buys the dose’s minutes at the temperature the concrete is placed at', () => {
    for (const placedC of [12, 30]) {
      const { ageHPerDoseMin } = setRun(input({ placedC }))
      expect(ageHPerDoseMin * 60).toBeCloseTo(ageRate(placedC, 41570), 12)
    }
  })

  it('answers several doses in one run as it answers each alone', () => {
    const { doseMin: _none, ...rest } = input()
    const together = quickSetByDose(rest, [0, 30, 60])
    expect(together.map(set => set.tooHardMs)).toEqual(
      [0, 30, 60].map(doseMin => quickSet({ ...rest, doseMin }).tooHardMs),
    )
  })

  it('says so when the hours end before it is too hard', () => {
    const set = predictSet(input({ placedMs: clock(22) }))
    expect(set.tooHardMs).toBeNull()
    expect(set.findings.map(finding => finding.code)).toContain('setNotReached')
    const outside = predictSet(input({ placedMs: clock(30) }))
    expect(outside.readyMs).toBeNull()
  })

  it('counts the ride: batched half an hour earlier is ready sooner', () => {
    const { readyMs: soon } = quickSet(input({ batchedMs: clock(7) }))
    const { readyMs: later } = quickSet(input({ batchedMs: clock(7.5) }))
    expect(late(soon)).toBeLessThan(late(later))
  })

  it('takes the sky that walls hide as ground at the air’s temperature: warmer by night, cooler by day', () => {
    const night = (skyView: number) => predictSet(input({ skyView, placedMs: clock(0.5), placedC: 16 })).tempC
    const day = (skyView: number) =>
      predictSet(input({ skyView, placedMs: clock(11), placedC: 24, shade: steadyShade(0) }, overcast)).tempC
    const overcast = { ...mildDay, sky: 'overcast' as const }
    expect(night(0.3)[36]!).toBeGreaterThan(night(1)[36]! + 0.5)
    expect(day(0.3)[24]!).toBeLessThan(day(1)[24]! - 0.5)
    // At no sky at all the long-wave exchange is with bodies at the air's temperature: 0 W/m² when both are equal.
    const { run } = setRun(input({ skyView: 0, shade: steadyShade(0), placedMs: clock(3), placedC: 15 }))
    const air = run.weather.airC[36]!
    const gain = surfaceGain(run, 36) - run.weather.convectionWM2K[36]! * air
    expect(gain).toBeCloseTo(run.model.emissivity * blackBody(air), 9)
  })

  it('warns of a crust in sun and dry wind, and not in mild shade', () => {
    const dry = { ...mildDay, highC: 34, lowC: 22, dewPointC: 6, windMs: 6 }
    expect(predictSet(input({ placedMs: clock(10) }, dry)).crust).toBe(true)
    expect(predictSet(input({ shade: steadyShade(0) })).crust).toBe(false)
  })
})

describe('facts of the trade (common practice, no source)', () => {
  it('gives a stamping window near 45 minutes on a warm morning (Stamps for Patterned Concrete, Concrete Construction)', () => {
    const { readyMs, tooHardMs } = quickSet(input({ placedMs: clock(10) }, { ...mildDay, highC: 30, lowC: 19 }))
    const window = minutesAfter(readyMs!, tooHardMs)
    expect(window).toBeGreaterThan(30)
    expect(window).toBeLessThan(60)
  })

  it('has 97 °F concrete too hard about 75 minutes after placing (trade article on summer pours)', () => {
    const hot = { ...mildDay, highC: 36, lowC: 24, dewPointC: 18 }
    const { tooHardMs } = quickSet(input({ placedC: 36.1, placedMs: clock(12) }, hot))
    expect(minutesAfter(clock(12), tooHardMs)).toBeGreaterThan(60)
    expect(minutesAfter(clock(12), tooHardMs)).toBeLessThan(90)
  })

  it('bunches the windows of a warming morning: an hour later in placing moves too hard by far less', () => {
    const { tooHardMs: early } = quickSet(input({ placedMs: clock(8) }))
    const { tooHardMs: later } = quickSet(input({ placedMs: clock(9) }))
    expect(minutesAfter(early!, later)).toBeGreaterThan(10)
    expect(minutesAfter(early!, later)).toBeLessThan(45)
  })
})

describe('the needed age', () => {
  it('takes the crew’s two answers over the shares of initial set', () => {
    const targets = setTargets({ minutesFromPlant: 30, firstMatAt21CMin: 120, lastPrintAt21CMin: 180 })
    expect(targets.readyAgeH).toBeCloseTo(2.5, 12)
    expect(targets.tooHardAgeH).toBeCloseTo(3.5, 12)
    expect(targets.from).toBe('answers')
  })

  it('makes the missing answer from the other by the ratio of the shares', () => {
    const first = setTargets({ minutesFromPlant: 30, firstMatAt21CMin: 120 })
    expect(first.tooHardAgeH).toBeCloseTo((2.5 * 0.95) / 0.65, 12)
    const last = setTargets({ minutesFromPlant: 30, lastPrintAt21CMin: 180 })
    expect(last.readyAgeH).toBeCloseTo((3.5 * 0.65) / 0.95, 12)
  })

  it('gives back the answers on a steady 70 °F morning', () => {
    const steady = { ...mildDay, highC: 21.12, lowC: 21.1, windMs: 1, sky: 'overcast' as const }
    const mix = { minutesFromPlant: 30, firstMatAt21CMin: 120, lastPrintAt21CMin: 180, placedTempC: 21.1 }
    const { readyMs } = quickSet(input({ mix, placedMs: clock(1) }, steady))
    expect(Math.abs(minutesAfter(clock(1), readyMs) - 120)).toBeLessThan(12)
  })

  it('falls back to the shares, and says so, when the answers contradict each other', () => {
    const targets = setTargets({ firstMatAt21CMin: 180, lastPrintAt21CMin: 120 })
    expect(targets.readyAgeH).toBeCloseTo(0.65 * 4.5, 12)
    expect(targets.findings[0]?.code).toBe('lastPrintBeforeFirstMat')
  })

  it('adds them to the crew’s answers too', () => {
    const mix = { minutesFromPlant: 30, firstMatAt21CMin: 120, lastPrintAt21CMin: 180, setsLaterMin: 60 }
    expect(setTargets(mix).readyAgeH).toBeCloseTo(2.5 + 0.65, 12)
    expect(setTargets(mix).tooHardAgeH).toBeCloseTo(3.5 + 0.95, 12)
  })

  it('adds the minutes a mix sets later and multiplies by what the log has taught', () => {
    expect(setTargets({ setsLaterMin: 60 }).readyAgeH).toBeCloseTo(0.65 * 5.5, 12)
    expect(setTargets({}, undefined, { lnFactor: Math.log(1.1), spreadLn: 0.07 }).readyAgeH).toBeCloseTo(
      0.65 * 4.5 * 1.1,
      12,
    )
  })
})
