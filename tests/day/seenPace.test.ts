/** The pace of placing as it is seen at the slab: what is still to be placed is planned with it. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { derivePlan } from '../../core/plan/derivePlan'
import { solveDay } from '../../core/pours/day/solveDay'
import { planAtSlab } from '../../core/pours/slab/planAtSlab'
import { seenPace } from '../../core/pours/slab/seenPace'
import { readTaps, utcMinute } from '../../core/pours/slab/slabState'
import { tellPlan } from '../../core/pours/slab/slabWords'
import { lPatioAccepted } from '../../samples/sites/lPatioAccepted'
import type { LogTap } from '../../shared/document/day'

const minuteMs = 60_000
const made = derivePlan(lPatioAccepted(), { date: '2026-07-21', budget: 'small' })
if (!made.ok) throw new Error('no plan')
const day = made.value.dayPlans[0]!
const { input, plan } = day
const found = solveDay(input, { withLargest: true })
if (!found.ok) throw new Error('no day')
const solved = found.value
const { strips } = input
const plannedMin = strips.map((_, i) => solved.placed[i]!.toMin - solved.placed[i]!.fromMin)

/** The first truck on time, then each of the first strips down after so many times its planned time. */
function tapsAt(factors: readonly number[], doses: readonly number[] = []): LogTap[] {
  const taps: LogTap[] = []
  const tap = (atMin: number, of: Partial<LogTap> & Pick<LogTap, 'what'>) =>
    taps.push({
      ...{ id: `t${taps.length + 1}`, source: 'tap', ...of },
      atUtc: new Date(plan.startMs + atMin * minuteMs).toISOString(),
    })
  let at = 0
  tap(0, { what: 'onSite', load: 1 })
  factors.forEach((factor, i) => {
    if (i > 0 && strips[i]!.load !== strips[i - 1]!.load) tap(at, { what: 'onSite', load: strips[i]!.load + 1 })
    if (doses[i] !== undefined) tap(at, { what: 'dosed', load: strips[i]!.load + 1, minutes: doses[i]!, count: 1 })
    at += factor * plannedMin[i]!
    tap(at, { what: 'placed', strip: strips[i]!.id })
  })
  return taps
}

const stateOf = (taps: readonly LogTap[]) => readTaps(taps, strips, plan.loads.length)
const paceOf = (factors: readonly number[]) => seenPace(input, solved, stateOf(tapsAt(factors)))
const planOf = (taps: readonly LogTap[]) => {
  const now = planAtSlab({
    ...{ day: input, plan, solved, state: stateOf(taps) },
    nowMs: Math.max(...taps.map(({ atUtc }) => Date.parse(atUtc))),
  })
  if (!now.ok) throw new Error(now.error[0]!.code)
  return now.value
}

const pace = fc.double({ min: 0.4, max: 3, noNaN: true })
const some = fc.array(pace, { minLength: 1, maxLength: strips.length - 1 })
const runs = { seed: 20260721, numRuns: 80 }

describe('the pace seen at the slab', () => {
  it('is seen on the strip under way too, once the front is marked well into it', () => {
    const marked = (share: number, factor: number) => {
      const taps = tapsAt([1])
      const atMs = plan.startMs + (plannedMin[0]! + share * factor * plannedMin[1]!) * minuteMs
      const come: LogTap = { id: 't9', source: 'tap', what: 'come', comeM: 1, atUtc: new Date(atMs).toISOString() }
      return seenPace(input, solved, stateOf([...taps, come]), strips[0]!.areaM2 + share * strips[1]!.areaM2)
    }
    expect(marked(0.5, 1)).toMatchObject({ strips: 2, factor: expect.closeTo(1, 6) })
    expect(marked(0.5, 2).factor).toBeGreaterThan(marked(0.5, 1.2).factor)
    // Too little to tell, or past the strip: the strip that is down speaks alone.
    for (const share of [0.1, 1.3]) expect(marked(share, 2)).toMatchObject({ strips: 1, factor: expect.closeTo(1, 6) })
  })

  it('is the plan’s without a strip whose beginning and end were tapped', () => {
    expect(paceOf([])).toEqual({ factor: 1, strips: 0, isLimited: false })
    const [, ...withoutTruck] = tapsAt([2])
    expect(seenPace(input, solved, stateOf(withoutTruck)).strips).toBe(0)
    const known = planOf(tapsAt([1, 1]))
    expect(known.pace.factor).toBeCloseTo(1, 6)
    known.strips.forEach(({ placedMs }, i) => {
      if (strips[i]!.load === strips[0]!.load)
        expect(Math.abs(placedMs - plan.strips[i]!.placedMs)).toBeLessThan(6 * minuteMs)
    })
  })

  it('lies between the plan and what was seen, the nearer to it the more strips were seen', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.6, max: 1.9, noNaN: true }), factor => {
        const steps = [1, 2, strips.length].map(count => paceOf(Array.from({ length: count }, () => factor)).factor)
        for (const own of steps) {
          expect(own).toBeGreaterThanOrEqual(Math.min(1, factor) - 1e-3)
          expect(own).toBeLessThanOrEqual(Math.max(1, factor) + 1e-3)
        }
        const off = steps.map(own => Math.abs(Math.log(own / factor)))
        expect(off[1]!).toBeLessThanOrEqual(off[0]! + 1e-3)
        expect(off[2]!).toBeLessThanOrEqual(off[1]! + 1e-3)
      }),
      runs,
    )
  })

  it('is never more than twice as slow or as fast, and says where more was seen', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0.05, max: 20, noNaN: true }), { minLength: 1, maxLength: 4 }), factors => {
        const seen = paceOf(factors.slice(0, strips.length))
        expect(seen.factor).toBeGreaterThanOrEqual(0.5 - 1e-9)
        expect(seen.factor).toBeLessThanOrEqual(2 + 1e-9)
        expect(seen.isLimited).toBe(Math.abs(Math.log(seen.factor)) > Math.log(2) - 1e-9)
      }),
      runs,
    )
    const slow = tapsAt([9, 9])
    expect(tellPlan(input, planOf(slow), stateOf(slow), () => '')).toContain(
      'Placing was tapped more than twice as slow as planned, seen on 2 strips: the rest is planned at twice.',
    )
  })

  it('one tap gone wrong among three moves it by less than the others’ spread and the plan’s weight', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 20, noNaN: true }), wrong => {
        const { factor } = paceOf([1.3, wrong, 1.3])
        expect(Math.log(factor)).toBeGreaterThan(0.7 * Math.log(1.3))
        expect(Math.log(factor)).toBeLessThanOrEqual(Math.log(1.3) + 1e-3)
      }),
      runs,
    )
  })

  it('a mixing stop and a hand that is missing are no slower pace', () => {
    const stop = tapsAt([1, 1], [0, 30]).map(tap => ({ ...tap }))
    // The stop lies between the taps of a and b: two minutes and more of it.
    const later = stop.map(tap =>
      tap.what === 'placed' && tap.strip === strips[1]!.id
        ? { ...tap, atUtc: new Date(Date.parse(tap.atUtc) + 5 * minuteMs).toISOString() }
        : tap,
    )
    expect(seenPace(input, solved, stateOf(later)).factor).toBeLessThan(
      seenPace(input, solved, stateOf(later.filter(({ what }) => what !== 'dosed'))).factor,
    )
    const short: LogTap = { id: 't99', what: 'handShort', atUtc: utcMinute(plan.startMs - minuteMs), source: 'tap' }
    expect(seenPace(input, solved, stateOf([short, ...tapsAt([1.2, 1.2])])).factor).toBeLessThan(
      paceOf([1.2, 1.2]).factor,
    )
  })
})

describe('the rest of the pour', () => {
  it('is placed later the slower the strips before were, never in the past', () => {
    fc.assert(
      fc.property(some, fc.double({ min: 1.05, max: 1.6, noNaN: true }), (factors, more) => {
        const [quick, slow] = [factors, factors.map(factor => factor * more)].map(own => {
          const taps = tapsAt(own)
          return { now: planOf(taps), lastMs: Date.parse(taps.at(-1)!.atUtc) }
        })
        for (let i = factors.length; i < strips.length; i++) {
          expect(slow!.now.strips[i]!.placedMs).toBeGreaterThanOrEqual(quick!.now.strips[i]!.placedMs - minuteMs)
          expect(slow!.now.strips[i]!.placedMs).toBeGreaterThanOrEqual(slow!.lastMs)
        }
        expect(slow!.now.pace.factor).toBeGreaterThanOrEqual(quick!.now.pace.factor - 1e-9)
      }),
      { ...runs, numRuns: 25 },
    )
  })

  it('is told where it differs by a tenth or more, and not once all is down', () => {
    const slow = tapsAt([1.5, 1.5])
    expect(tellPlan(input, planOf(slow), stateOf(slow), () => '')).toMatch(
      /Placing takes about 3\d % longer than planned, seen on 2 strips: the rest is planned so\./,
    )
    const fine = tapsAt([1.05, 1.05])
    expect(tellPlan(input, planOf(fine), stateOf(fine), () => '')).not.toContain('Placing')
    const all = tapsAt(strips.map(() => 1.5))
    expect(tellPlan(input, planOf(all), stateOf(all), () => '')).not.toContain('Placing')
  })
})
