import { describe, expect, it } from 'vitest'
import { dayPlan } from '../../core/pours/day/dayPlan'
import { solveDay } from '../../core/pours/day/solveDay'
import { nextSteps } from '../../core/pours/slab/nextSteps'
import { planAtSlab } from '../../core/pours/slab/planAtSlab'
import { readTaps, utcMinute } from '../../core/pours/slab/slabState'
import { tellPlan, tellStep } from '../../core/pours/slab/slabWords'
import { printMeasures } from '../../core/units/printMeasures'
import type { LogTap } from '../../shared/document/day'
import { mulberry32 } from '../concrete/dayFixture'
import { dayOf, planInput } from './crewDay'

const minuteMs = 60_000
const input = planInput(dayOf(88, 66), { areaFt2: 700, loads: 2, hands: 5, startH: 7, borderM: 20 })
const made = dayPlan(input)
const solvedDay = solveDay(input.day, { withLargest: true })
if (!made.ok || !solvedDay.ok) throw new Error('no day')
const plan = made.value
const solved = solvedDay.value
const { day } = input
const print = printMeasures('ftin')
const clock = (ms: number): string => new Date(ms).toISOString().slice(11, 16)

const tapAt = (afterMin: number, of: Omit<LogTap, 'id' | 'source' | 'atUtc'>): LogTap => ({
  ...of,
  ...{
    id: `t${1 + Math.abs(Math.round(afterMin))}`,
    atUtc: utcMinute(plan.startMs + afterMin * minuteMs),
    source: 'tap',
  },
})
const under = (afterMin: number, taps: readonly LogTap[]) => {
  const state = readTaps(taps, day.strips, plan.loads.length)
  const result = planAtSlab({ day, plan, solved, state, nowMs: plan.startMs + afterMin * minuteMs })
  return { state, result }
}
const planOf = (afterMin: number, taps: readonly LogTap[]) => {
  const { result } = under(afterMin, taps)
  if (!result.ok) throw new Error(result.error[0]?.code)
  return result.value
}

describe('a pour of two loads', () => {
  it('a second truck that is late moves its own strips and leaves those before it', () => {
    const late = planOf(-5, [tapAt(-5, { what: 'late', load: 2, minutes: 40 })])
    day.strips.forEach(({ load }, i) => {
      const moved = (late.strips[i]!.placedMs - plan.strips[i]!.placedMs) / minuteMs
      if (load === 0) expect(Math.abs(moved)).toBeLessThanOrEqual(10)
      else expect(moved).toBeGreaterThan(25)
    })
    expect(late.loads[1]!.onSiteMs - plan.loads[1]!.onSiteMs).toBeCloseTo(40 * minuteMs, -5)
  })

  it('a truck that was late comes its ride after it was batched, and what it is late on the way is added', () => {
    const told = tapAt(-50, { what: 'late', load: 1, minutes: 15 })
    const batched = tapAt(-20, { what: 'batched', load: 1 })
    const arrival = (...taps: readonly LogTap[]) => planOf(-19, taps).loads[0]!.onSiteMs
    const ride = arrival(batched)
    expect(arrival(told, batched)).toBe(ride)
    const held = tapAt(-19, { what: 'late', load: 1, minutes: 10 })
    expect(arrival(told, batched, held) - ride).toBe(10 * minuteMs)
  })

  it('counts the concrete left in each drum and the packages that went in', () => {
    const own = planOf(30, [
      tapAt(0, { what: 'onSite', load: 1 }),
      tapAt(4, { what: 'dosed', load: 1, count: 2, minutes: 30 }),
      tapAt(20, { what: 'placed', strip: day.strips[0]!.id }),
    ])
    expect(own.loads[0]).toMatchObject({ state: 'onSite', packages: 2 })
    expect(own.loads[0]!.leftM3).toBeCloseTo(plan.loads[0]!.volumeM3 - day.strips[0]!.volumeM3, 9)
    expect(own.loads[1]).toMatchObject({ state: 'toBatch', packages: 0 })
  })

  it('asks for the second load in time', () => {
    const { state, result } = under(5, [tapAt(0, { what: 'onSite', load: 1 })])
    if (!result.ok) throw new Error('no plan')
    expect(nextSteps(day, state, result.value)).toContainEqual(expect.objectContaining({ what: 'batched', load: 2 }))
  })
})

describe('whatever is tapped, in whatever order', () => {
  it('there is a plan that is in order, and words without a hole', () => {
    const random = mulberry32(23)
    const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!
    for (let turn = 0; turn < 150; turn++) {
      const taps = Array.from({ length: Math.floor(random() * 14) }, () => {
        const strip = pick(day.strips).id
        const load = 1 + Math.floor(random() * 3)
        const minutes = Math.floor(random() * 60)
        return tapAt(
          random() * 400 - 60,
          pick([
            { what: 'batched', load },
            { what: 'onSite', load },
            { what: 'late', load, minutes },
            { what: 'dosed', load, minutes, count: 1 },
            { what: 'placed', strip },
            { what: 'ready', strip },
            { what: 'stamped', strip },
            { what: 'placed', strip: 'zz' },
            { what: 'come', comeM: 10 * random(), outM3: 5 * random() },
            { what: 'rain', minutes },
          ] as const),
        )
      })
      const afterMin = random() * 500 - 60
      const { state, result } = under(afterMin, taps)
      if (!result.ok) throw new Error(result.error[0]?.code)
      const now = result.value
      expect(now.strips.map(({ id }) => id)).toEqual(day.strips.map(({ id }) => id))
      const steps = nextSteps(day, state, now)
      const due = steps.map(({ dueMs }) => dueMs)
      expect(due).toEqual([...due].sort((a, b) => a - b))
      const words = [
        tellPlan(day, now, state, clock),
        ...steps.flatMap(step => Object.values(tellStep(step, day, now, print, clock))),
      ].join(' ')
      expect(words).not.toMatch(/undefined|NaN|Infinity|Invalid/)
      if (now.slackMin !== null) expect(now.slackMin < 0).toBe(now.firstLostStripId !== null)
    }
  })
})
