/** What waits for the concrete waits from the hour at which its own last print is done, not from a usual one. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type DaysInput, planDays } from '../../core/pours/order/planDays'
import { settleDays } from '../../core/pours/order/settleDays'
import { dayNumber } from '../../core/pours/order/workCalendar'
import type { Site } from '../../shared/document/site'
import { at, bareSite, ftM, plan } from '../jointEditing/acceptedSlab'
import { planOf, sampleSite } from '../plan/sampleSite'

const everyDay = [1, 2, 3, 4, 5, 6, 7]
const plant = { plantHours: [{ weekdays: everyDay, from: '06:00', to: '16:00' }], noiseHours: [], weatherDays: 0 }
const strip = [
  [0, 0],
  [120, 0],
  [120, 30],
  [0, 30],
] as const
const doorAt = (xFt: number, from: string) => ({
  ...{ id: `g${900 + xFt}`, name: `Door ${xFt}`, at: at(xFt, 30), widthM: 1 },
  open: [{ weekdays: everyDay, from, to: '20:00' }],
})

const pours = plan(bareSite(strip)).pours
const inputOf = (of: Partial<DaysInput>): DaysInput => ({
  pours: pours.map(({ id, slabId, part, region, areaM2, number }) => ({ id, number, slabId, part, region, areaM2 })),
  ...{ slabs: plan(bareSite(strip)).slabs, casters: [], noGo: [], ways: [], truckSpots: [] },
  ...{ capM2: 900 * ftM * ftM, startDate: '2026-07-21', ...of },
})

const done = (doneMin: number | null) => () => ({ doneMin, contractionM: null })

describe('the ways in and out of a day', () => {
  it('open again a day after the pour in front of each is done, not after the usual hour', () => {
    const { ground } = planDays(inputOf({ ways: [doorAt(10, '14:00')] }))
    const closedOf = (doneMin: number | null) => {
      const { days } = settleDays(ground, done(doneMin))
      return days.map(day => [day.closedWayIds.length, day.waysReopen.map(({ time }) => time).join()])
    }
    const own = closedOf(null).findIndex(([closed]) => closed === 1)
    // Usual: 15:00, so that the door, needed from 14:00 on, is closed the next day too.
    expect(closedOf(null)[own]).toEqual([1, '15:00'])
    expect(closedOf(null)[own + 1]?.[0] ?? 1).toBe(1)
    expect(closedOf(11 * 60)[own]).toEqual([1, '11:00'])
    expect(settleDays(ground, done(11 * 60)).findings.map(({ values }) => [values.date, values.until])).toEqual([
      [planDay(ground, own), planDay(ground, own)],
    ])
    const usual = settleDays(ground, done(null)).findings[0]!.values
    expect(dayNumber(String(usual.until)) - dayNumber(String(usual.date))).toBe(1)
  })

  const planDay = (ground: ReturnType<typeof planDays>['ground'], index: number): string | null =>
    settleDays(ground, done(null)).days[index]!.date

  it('an earlier last print closes no way longer, and finishes no later', () => {
    const ways = [doorAt(10, '07:00'), doorAt(50, '12:00'), doorAt(100, '16:00')]
    const { ground } = planDays(inputOf({ ways, calendar: { ...plant, finishBy: '2026-07-22' } }))
    const minutes = fc.integer({ min: 9 * 60, max: 22 * 60 })
    fc.assert(
      fc.property(fc.array(minutes, { minLength: 4, maxLength: 4 }), fc.nat(3), fc.nat(300), (late, which, less) => {
        const early = late.map((min, i) => (i === which ? min - less : min))
        const index = new Map(ground.pours.map(({ id }, i) => [id, i]))
        const settled = (doneMin: readonly number[]) =>
          settleDays(ground, id => ({ doneMin: doneMin[index.get(id)!] ?? null, contractionM: null }))
        const [a, b] = [settled(early), settled(late)]
        a.days.forEach((day, i) => {
          for (const id of day.closedWayIds) expect(b.days[i]!.closedWayIds).toContain(id)
          for (const way of day.waysReopen) {
            const other = b.days[i]!.waysReopen.find(({ wayId }) => wayId === way.wayId)!
            expect(`${way.date} ${way.time}` <= `${other.date} ${other.time}`).toBe(true)
          }
        })
        const finish = (of: typeof a) => String(of.findings.find(({ code }) => code === 'finishLate')?.values.finish)
        expect(finish(a) <= finish(b)).toBe(true)
      }),
      { seed: 20260721, numRuns: 60 },
    )
  })
})

describe('the finish date', () => {
  it('is missed by a last print after working hours: washing then waits for the next morning', () => {
    const calendar = { ...plant, noiseHours: [{ weekdays: everyDay, from: '06:00', to: '17:00' }] }
    const days = planDays(inputOf({ calendar })).ground
    const last = settleDays(days, done(null)).days.at(-1)!.date!
    const finishBy = new Date((dayNumber(last) + 1) * 86_400_000).toISOString().slice(0, 10)
    const { ground } = planDays(inputOf({ calendar: { ...calendar, finishBy } }))
    expect(settleDays(ground, done(16 * 60)).findings).toEqual([])
    expect(settleDays(ground, done(18 * 60)).findings).toMatchObject([
      { code: 'finishLate', values: { finishBy, finish: expect.stringMatching(/^2026/) } },
    ])
  })
})

describe('a plan with day plans', () => {
  const site = sampleSite('l-patio-accepted')

  it('settles ways and finish by them; a day without one keeps the usual hour and says so', () => {
    const known = planOf(site)
    for (const day of known.days) {
      const doneMin = Math.max(...day.pourIds.map(id => known.dayPlans.find(own => own.pourId === id)!.doneMin!))
      const time = `${String(Math.floor(doneMin / 60)).padStart(2, '0')}:${String(doneMin % 60).padStart(2, '0')}`
      expect(day.done).toEqual({ time, by: 'dayPlan' })
    }
    const { conditions: _, ...bare } = site
    expect(planOf(bare as Site).days.map(({ done }) => done)).toEqual(
      planOf(bare as Site).days.map(() => ({ time: '15:00', by: 'usual' })),
    )
  })
})

describe('sawing after a day', () => {
  it('takes the contraction joints of its pours at the pace of one saw, and is left out where there is none', () => {
    const site = sampleSite('l-patio-accepted')
    const { days, pours: all, quantities } = planOf(site)
    const perPour = all.map(({ number, slabId }) =>
      Number(
        quantities.find(({ id }) => id === `${slabId}-contraction-joint-length`)!.inputs[`pour ${number}`]?.value ?? 0,
      ),
    )
    const tasks = days.map(day => day.afterTasks.find(({ task }) => task === 'sawJoints'))
    days.forEach((day, i) => {
      const wantedM = day.pourIds.reduce((sum, id) => sum + perPour[all.findIndex(pour => pour.id === id)]!, 0)
      expect(tasks[i]?.work?.lengthM ?? 0).toBeCloseTo(wantedM, 9)
      // 120 ft an hour.
      expect(tasks[i]?.work?.hours ?? 0).toBeCloseTo(wantedM / 36.576, 9)
    })
    expect(perPour.reduce((sum, m) => sum + m, 0)).toBeGreaterThan(0)
    const { ground } = planDays(inputOf({}))
    const [bare] = settleDays(ground, () => ({ doneMin: null, contractionM: 0 })).days
    expect(bare!.afterTasks.map(({ task }) => task)).not.toContain('sawJoints')
  })
})
