/** What the screen asks of a day besides its plan: the set map, a pour planned otherwise, the map of crews and hours. */
import { createElement } from 'react'
import { renderToString } from 'react-dom/server'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { createStore } from 'zustand/vanilla'
import { deriveScreen, type ScreenParts, type ScreenRequest } from '../../core/plan/deriveScreen'
import { createMemo } from '../../core/plan/memo'
import { type Session, SessionContext } from '../../renderer/app/session'
import { PourDayRow } from '../../renderer/rail/PourDayRow'
import { createViewStore } from '../../renderer/store/viewStore'
import { sampleSite } from '../plan/sampleSite'

const site = sampleSite('l-patio-accepted')
const memos = [createMemo(), createMemo()] as const
const screenOf = (request: Partial<ScreenRequest>): ScreenParts => {
  const steps = deriveScreen(site, { date: '2026-07-21', extras: [], ...request }, ...memos)
  for (let step = steps.next(); ; step = steps.next()) {
    if (!step.done) continue
    if (!step.value.ok) throw new Error('no screen')
    return step.value.value
  }
}
const first = screenOf({ extras: ['setMaps', 'capacityMap'] })
const [plan] = first.dayPlans

describe('the set map', () => {
  const [map] = first.setMaps!

  it('has a time in every cell of the pour and none off it', () => {
    expect(first.setMaps).toHaveLength(first.dayPlans.length)
    const cells = [...map!.readyMs.keys()].filter(cell => !Number.isNaN(map!.readyMs[cell]!))
    const areaM2 = cells.length * map!.grid.cellM ** 2
    const pourM2 = first.pours.find(({ id }) => id === plan!.pourId)!.areaM2
    // Cells on the edge are counted whole.
    expect(areaM2 / pourM2).toBeGreaterThan(0.98)
    expect(areaM2 / pourM2).toBeLessThan(1.08)
    for (const cell of cells) {
      expect(map!.placedMs[cell]!).toBeLessThan(map!.readyMs[cell]!)
      expect(map!.readyMs[cell]!).toBeLessThan(map!.tooHardMs[cell]!)
    }
  })

  it('agrees with the windows of the strips: the last tenth is ready near ready, the first hard near too hard', () => {
    plan!.plan.strips.forEach((strip, i) => {
      const shape = plan!.shapes[i]!
      const inside = [...map!.placedMs.keys()].filter(
        cell => map!.placedMs[cell]! >= strip.placeMs - 1 && map!.placedMs[cell]! <= strip.placedMs + 1,
      )
      expect(inside.length * map!.grid.cellM ** 2).toBeGreaterThan(0.9 * shape.areaM2)
      const sorted = (of: Float64Array) => inside.map(cell => of[cell]!).sort((a, b) => a - b)
      const ready = sorted(map!.readyMs)[Math.floor(0.9 * inside.length)]!
      const tooHard = sorted(map!.tooHardMs)[Math.floor(0.05 * inside.length)]!
      expect(Math.abs(ready - strip.readyMs) / 60_000).toBeLessThan(8)
      // A quarter of the strip stands for all of its cells: the sunniest few are hard a little before.
      expect(Math.abs(tooHard - strip.tooHardMs) / 60_000).toBeLessThan(16)
    })
  })
})

describe('a pour planned otherwise', () => {
  const ask = { pourId: plan!.pourId, date: '2026-07-21', time: '07:00', hands: 5 }

  it('as it is planned is the plan', () => {
    const { comparedPour } = screenOf({ otherPour: ask })
    expect(comparedPour!.day!.plan.slackMin).toBeCloseTo(plan!.plan.slackMin, 6)
    expect(comparedPour!.day!.plan.startMs).toBe(plan!.plan.startMs)
  })

  it('with another hand has no less slack, and another day its own date and weather', () => {
    const more = screenOf({ otherPour: { ...ask, hands: 6 } }).comparedPour!
    expect(more.day!.plan.largestSlackMin).toBeGreaterThanOrEqual(plan!.plan.largestSlackMin - 1e-6)
    const later = screenOf({ otherPour: { ...ask, date: '2026-09-21' } }).comparedPour!
    expect(later.day!.date).toBe('2026-09-21')
    expect(later.problems.some(({ code }) => code === 'dayWeatherShifted')).toBe(true)
  })

  it('that two hands cannot do says so', () => {
    const { comparedPour } = screenOf({ otherPour: { ...ask, hands: 2 } })
    expect(comparedPour).toMatchObject({ day: null })
    expect(comparedPour!.problems.map(({ code }) => code)).toContain('crewTooSmall')
  })

  it('can be sent: nothing in it is a function', () => {
    const { comparedPour, setMaps, capacityMap } = screenOf({ otherPour: ask, extras: ['setMaps', 'capacityMap'] })
    expect(() => structuredClone({ comparedPour, setMaps, capacityMap })).not.toThrow()
  })
})

describe('the map of crews and hours', () => {
  it('has a row an hour and a column a crew, the site’s own among them', () => {
    const map = first.capacityMap!
    expect(map.hands).toContain(site.crew!.hands)
    expect(map.cells).toHaveLength(map.startsMs.length * map.hands.length)
  })
})

describe('the day of a pour on the rail', () => {
  afterEach(() => {
    vi.unstubAllGlobals()
  })
  const heightOf = (isOpen: boolean): number => {
    const pour = first.pours.find(({ id }) => id === plan!.pourId)!
    const scale = {
      width: 800,
      left: 112,
      right: 24,
      x: (ms: number) => (ms - plan!.plan.startMs) / 60_000,
      ms: () => 0,
    }
    const row = { site, pour, day: plan!, tint: 1, when: 'Tue Jul 21', shiftMs: 0, isOpen, scale }
    const session = { view: createViewStore(), plan: createStore(() => ({ parts: {} })) } as unknown as Session
    const html = renderToString(
      createElement(SessionContext.Provider, { value: session }, createElement(PourDayRow, row)),
    )
    return Number(/^<li[^>]*style="height:(\d+)px"/.exec(html)![1])
  }

  it('is a fingertip high under a finger, and its unfolded lines come below', () => {
    const [closed, open] = [heightOf(false), heightOf(true)]
    vi.stubGlobal('matchMedia', (query: string) => ({ matches: query === '(pointer: coarse)' }))
    expect(heightOf(false)).toBe(44)
    expect(heightOf(true) - 44).toBe(open - 24)
    expect(closed).toBeLessThan(44)
  })
})
