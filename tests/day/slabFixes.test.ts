/** What helps at the slab: each offer holds what it says when it is taken. */
import { describe, expect, it } from 'vitest'
import { derivePlan } from '../../core/plan/derivePlan'
import { solveDay } from '../../core/pours/day/solveDay'
import { slabFront } from '../../core/pours/slab/front'
import { type AtSlabInput, planAtSlab } from '../../core/pours/slab/planAtSlab'
import { type SlabFix, slabFixes } from '../../core/pours/slab/slabFixes'
import { tellFix } from '../../core/pours/slab/slabFixWords'
import { readTaps } from '../../core/pours/slab/slabState'
import { printMeasures } from '../../core/units/printMeasures'
import { lPatioAccepted } from '../../samples/sites/lPatioAccepted'
import type { LogTap } from '../../shared/document/day'

const minuteMs = 60_000
const print = printMeasures('ftin')
const site = lPatioAccepted()
const made = derivePlan(site, { date: '2026-07-21', budget: 'small' })
if (!made.ok) throw new Error('no plan')
const day = made.value.dayPlans[0]!
const { input, plan } = day
const front = slabFront(made.value.pours.find(({ id }) => id === day.pourId)!.region, day.direction)
const found = solveDay(input, { withLargest: true })
if (!found.ok) throw new Error('no day')
const solved = found.value

type Told = Omit<LogTap, 'id' | 'source' | 'atUtc'> & { readonly min: number }
const inputOf = (nowMin: number, taps: readonly Told[]): AtSlabInput => ({
  ...{ day: input, plan, solved, nowMs: plan.startMs + nowMin * minuteMs },
  state: readTaps(
    taps.map(({ min, ...tap }, i) => ({
      ...{ ...tap, id: `t${i + 1}`, source: 'tap' as const },
      atUtc: new Date(plan.startMs + min * minuteMs).toISOString(),
    })),
    input.strips,
    plan.loads.length,
  ),
})
const handsShort = (count: number, min = -5): Told[] =>
  Array.from({ length: count }, () => ({ what: 'handShort', min }))
const of = <K extends SlabFix['does']>(fixes: readonly SlabFix[], does: K) =>
  fixes.find((fix): fix is Extract<SlabFix, { does: K }> => fix.does === does)
const downTo = (count: number): Told[] =>
  plan.strips.slice(0, count).map(({ id, placedMs }) => ({
    ...{ what: 'placed', strip: id },
    min: (placedMs - plan.startMs) / minuteMs,
  }))

describe('too few hands', () => {
  const gone = input.hands - 2

  it('before the first truck: hands back, or the plant is told later, with the slack of each', () => {
    const short = inputOf(-20, handsShort(gone, -20))
    expect(planAtSlab(short).ok).toBe(false)
    const fixes = slabFixes(short, front)
    const hands = of(fixes, 'hands')!
    expect(hands).toMatchObject({ more: 1, hands: 3, areMissing: true })
    const back = planAtSlab(inputOf(-20, handsShort(gone - 1, -20)))
    expect(back.ok && back.value.slackMin).toBeCloseTo(hands.slackMin!, 9)
    expect(of(fixes, 'later')).toMatchObject({ load: 1 })
    expect(of(fixes, 'stop')).toBeUndefined()
    expect(tellFix(hands, print, true)).toMatchObject({ tap: 'One hand back' })
    expect(tellFix(hands, print, true).what).toMatch(/^Get one hand more, 3 at work\. (Still )?\d+ min/)
    expect(tellFix(of(fixes, 'later')!, print, true).what).toMatch(
      /^Call the plant: load 1 \d+ min later\. With 3 hands by then, (still )?\d+ min/,
    )
  })

  it('with concrete down: the header before the next strip, and retarder only where it gains', () => {
    const taps: Told[] = [{ what: 'onSite', load: 1, min: 0 }, ...downTo(1), ...handsShort(gone, 40)]
    const fixes = slabFixes(inputOf(41, taps), front)
    const stop = of(fixes, 'stop')!
    expect(stop).toMatchObject({ stripId: input.strips[1]!.id, slackMin: null })
    expect(stop.areaM2).toBeCloseTo(input.strips[0]!.areaM2, 9)
    expect(front.areaTo(stop.comeM)).toBeCloseTo(stop.areaM2, 2)
    // Retarder only where it beats what the hands alone would bring.
    for (const dose of fixes.filter(({ does }) => does === 'dose'))
      expect(dose.slackMin!).toBeGreaterThan(of(fixes, 'hands')!.slackMin!)
    expect(tellFix({ does: 'dose', load: 1, packages: 2, doseMin: 60, slackMin: -7.2 }, print, true)).toEqual({
      what: 'Retarder up to 60 min in load 1: 2 packages. The label and the producer rule. With 3 hands by then, still 7 min short.',
      tap: '2 packages in',
    })
    expect(tellFix(stop, print, true).what).toContain(`set the header before strip ${stop.stripId}`)
  })
})

describe('a strip that would be lost', () => {
  // Everything three times as slow as planned, one hand short, in the heat of the day.
  const slow: Told[] = [
    { what: 'onSite', load: 1, min: 150 },
    ...handsShort(Math.max(0, input.hands - 3)),
    { what: 'placed', strip: input.strips[0]!.id, min: 240 },
  ]
  const late = inputOf(241, slow)
  const before = planAtSlab(late)

  it('every offer brings more slack than there is, the most first', () => {
    if (!before.ok) throw new Error('no plan')
    expect(before.value.slackMin).toBeLessThan(0)
    const fixes = slabFixes(late, front)
    expect(fixes.length).toBeGreaterThan(0)
    for (const { slackMin } of fixes) expect(slackMin!).toBeGreaterThan(before.value.slackMin! + 2)
    const order = fixes.map(({ slackMin }) => slackMin!)
    expect(order).toEqual([...order].sort((a, b) => b - a))
    for (const fix of fixes) expect(tellFix(fix, print, false).what).toMatch(/min (of slack|short) then\.$/)
  })

  it('a smaller pour keeps what is down, and its slack is that of the pour cut there', () => {
    const stop = of(slabFixes(late, front), 'stop')!
    const count = input.strips.findIndex(({ id }) => id === stop.stripId)
    expect(count).toBeGreaterThanOrEqual(1)
    const cut = planAtSlab({
      ...late,
      day: { ...input, strips: input.strips.slice(0, count) },
      plan: {
        ...plan,
        strips: plan.strips.slice(0, count),
        loads: plan.loads.slice(0, input.strips[count - 1]!.load + 1),
      },
      state: { ...late.state, strips: late.state.strips.slice(0, count) },
    })
    expect(cut.ok && cut.value.slackMin).toBeCloseTo(stop.slackMin!, 9)
  })
})

describe('a day that runs as planned', () => {
  it('is not helped by less: no stop, no later truck where slack is enough', () => {
    const fixes = slabFixes(inputOf(-40, []), front)
    for (const { slackMin } of fixes) expect(slackMin!).toBeGreaterThan(plan.slackMin + 2)
  })
})
