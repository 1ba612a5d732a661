import { describe, expect, it } from 'vitest'
import { calibrateSet, type LoggedStrip } from '../../core/concrete/calibrate'
import { quickSet, type SetInput } from '../../core/concrete/setClock'
import { clock, mildDay, mulberry32, normal, steadyShade, weatherOf } from './dayFixture'

const days = [
  mildDay,
  { ...mildDay, highC: 22, lowC: 11, dewPointC: 8 },
  { ...mildDay, highC: 30, lowC: 19, dewPointC: 16 },
  { ...mildDay, sky: 'some' as const },
  { ...mildDay, highC: 24, windMs: 2 },
].map(day => weatherOf(day))

/** A strip of a pour whose mix really needs e^trueLn times the first guess. */
function logged(pour: number, trueLn: number, noiseMs: () => number, doseMin = 0): LoggedStrip {
  const set: Omit<SetInput, 'learned'> = {
    weather: days[pour % days.length]!,
    shade: steadyShade(pour % 2),
    thicknessM: 0.1016,
    mix: {},
    placedMs: clock(7.5 + (pour % 3) * 0.7),
    placedC: 20 + (pour % 4) * 2,
    doseMin,
  }
  const seen = quickSet({ ...set, learned: { lnFactor: trueLn, spreadLn: 0.05 } })
  return {
    pour: `Pour ${pour + 1}`,
    strip: '1a',
    set,
    readyMs: seen.readyMs! + noiseMs(),
    tooHardMs: seen.tooHardMs! + noiseMs(),
  }
}

const noNoise = () => 0

describe('what the log teaches', () => {
  it('recovers ln te of the model’s own log within 2 %, noise-free', () => {
    for (const trueLn of [-0.2, -0.1, 0, 0.08, 0.2])
      for (const doseMin of [0, 30]) {
        const log = [0, 1, 2, 3, 4].map(pour => logged(pour, trueLn, noNoise, doseMin))
        const { loggedLn, lnFactor, sightings } = calibrateSet(log)
        expect(sightings).toBe(10)
        expect(Math.abs(loggedLn - trueLn)).toBeLessThan(0.002)
        expect(Math.abs(lnFactor - trueLn)).toBeLessThan(0.02)
      }
  })

  it('brings the ready time within 10 minutes after five logs of an observer who is 7 minutes off', () => {
    const random = mulberry32(7)
    const errors = new Map<number, number[]>([
      [0, []],
      [1, []],
      [5, []],
    ])
    for (let draw = 0; draw < 60; draw++) {
      const mixLn = 0.15 * normal(random)
      const pourLn = () => mixLn + 0.06 * normal(random)
      const noise = () => 7 * 60_000 * normal(random)
      const log = [0, 1, 2, 3, 4].map(pour => logged(pour, pourLn(), noise))
      const next = { ...logged(5, 0, noNoise).set }
      const truth = quickSet({ ...next, learned: { lnFactor: pourLn(), spreadLn: 0.05 } }).readyMs!
      for (const [count, found] of errors) {
        const guess = quickSet({ ...next, learned: calibrateSet(log.slice(0, count)) }).readyMs!
        found.push(Math.abs(guess - truth) / 60_000)
      }
    }
    const mean = (count: number): number => {
      const found = errors.get(count)!
      return found.reduce((sum, error) => sum + error, 0) / found.length
    }
    expect(mean(5)).toBeLessThanOrEqual(10)
    expect(mean(1)).toBeLessThan(mean(0))
    expect(mean(5)).toBeLessThan(mean(1))
  })

  it('holds one log against the first guess, and narrows the band with every pour', () => {
    const one = calibrateSet([logged(0, 0.2, noNoise)])
    expect(one.lnFactor).toBeGreaterThan(0.12)
    expect(one.lnFactor).toBeLessThan(0.2)
    const five = calibrateSet([0, 1, 2, 3, 4].map(pour => logged(pour, 0.2, noNoise)))
    expect(five.spreadLn).toBeLessThan(one.spreadLn)
    expect(one.spreadLn).toBeLessThan(0.15)
  })

  it('counts two strips of one pour as one pour', () => {
    const first = logged(0, 0.1, noNoise)
    const again = calibrateSet([first, { ...first, strip: '1b' }])
    expect(again.pours).toBe(1)
    expect(again.sightings).toBe(4)
    expect(again.loggedLn).toBeCloseTo(calibrateSet([first]).loggedLn, 12)
  })

  it('keeps the first guess without a log', () => {
    expect(calibrateSet([])).toEqual({
      lnFactor: 0,
      spreadLn: 0.15,
      loggedLn: 0,
      pours: 0,
      sightings: 0,
      findings: [],
    })
  })

  it('leaves out times in the wrong order and slips of the pen, and says so', () => {
    const good = logged(0, 0.05, noNoise)
    const swapped = { ...good, strip: '1b', readyMs: good.tooHardMs!, tooHardMs: good.readyMs! }
    const slip = { ...good, strip: '1c', readyMs: clock(8.2), tooHardMs: good.tooHardMs! }
    const { findings, sightings } = calibrateSet([good, swapped, slip])
    expect(sightings).toBe(3)
    expect(findings.map(finding => [finding.code, finding.values.strip])).toEqual([
      ['logTimesOutOfOrder', '1b'],
      ['logFarFromPlan', '1c'],
    ])
  })
})
