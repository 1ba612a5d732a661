/** The order follows the hours of its own day plans: late pours are set so that people still have a way in. */
import { describe, expect, it } from 'vitest'
import type { CurveRegion } from '../../core/geometry/curve'
import { createMemo } from '../../core/plan/memo'
import { dayNumber } from '../../core/pours/order/workCalendar'
import type { Site } from '../../shared/document/site'
import { at, bareSite } from '../jointEditing/acceptedSlab'
import { planOf, sampleSite } from '../plan/sampleSite'

const { crew, mix, conditions } = sampleSite('l-patio-accepted')

/** Four pours in a row, two doors in front of the middle ones, two pours a crew's day: the second is done at 13:51. */
function stripSite(from: string): Site {
  const door = (xFt: number) => ({
    ...{ id: `g${900 + xFt}`, name: `Door ${xFt}`, at: at(xFt, 30), widthM: 1 },
    open: [{ weekdays: [1, 2, 3, 4, 5, 6, 7], from, to: '23:00' }],
  })
  return {
    ...bareSite([
      [0, 0],
      [120, 0],
      [120, 30],
      [0, 30],
    ]),
    ...{ crew: crew!, mix: mix!, conditions: conditions!, settings: { poursPerCrewDay: 2 } },
    access: { truckSpots: [], pumpSpots: [], washouts: [], chuteReachM: 0, noGo: [], ways: [door(40), door(80)] },
  }
}

const leftOf = ({ outer }: CurveRegion): number => Math.min(...outer.map(({ from }) => from[0]))

const planned = (from: string) => {
  const memo = createMemo()
  const plan = planOf(stripSite(from), { date: '2026-07-21' }, memo)
  return { plan, orders: memo.computed.get('order'), dates: plan.days.map(({ date }) => date) }
}

describe('the order of the pours', () => {
  it('waits a day where a pour done later than usual would close the last way at the hour it is needed', () => {
    const needed = planned('12:00')
    expect(needed.orders).toBe(2)
    expect(needed.dates).toEqual(['2026-07-21', '2026-07-23'])
    // By hand: 24 h after the last print a pour bears feet, and one of the two doors is clear at noon of each day.
    const { plan } = needed
    const openFrom = plan.days.flatMap(({ date, pourIds }) =>
      pourIds.map(id => ({
        id,
        day: dayNumber(date!),
        min: dayNumber(date!) * 1440 + plan.dayPlans.find(own => own.pourId === id)!.doneMin! + 1440,
      })),
    )
    for (let day = dayNumber('2026-07-21'); day < dayNumber('2026-07-26'); day++) {
      const shut = plan.pours
        .toSorted((a, b) => leftOf(a.region) - leftOf(b.region))
        .slice(1, 3)
        .filter(({ id }) => openFrom.some(own => own.id === id && own.day <= day && own.min > day * 1440 + 720))
      expect(shut.length).toBeLessThan(2)
    }
    expect(plan.problems.map(({ code }) => code)).not.toContain('waysClosed')
  })

  it('stays as it was where the hours of the day plans hold up no more than the usual ones', () => {
    const afternoon = planned('14:00')
    expect(afternoon.orders).toBe(1)
    expect(afternoon.dates).toEqual(['2026-07-21', '2026-07-22'])
  })

  it('numbers, figures and days agree after the second search, and a start only tried moves no pour', () => {
    const site = stripSite('12:00')
    const memo = createMemo()
    const { pours, days, dayPlans, quantities } = planOf(site, { date: '2026-07-21' }, memo)
    expect(pours.map(({ number }) => number)).toEqual(['1', '2', '3', '4'])
    expect(days.flatMap(({ pourIds }) => pourIds)).toEqual(pours.map(({ id }) => id))
    for (const pour of pours) {
      expect(dayPlans.find(({ pourId }) => pourId === pour.id)).toMatchObject({ date: pour.date, number: pour.number })
      expect(quantities.some(({ id }) => id === `${pour.id}-concrete-order`)).toBe(true)
    }
    const triedStart = { pourId: pours[0]!.id, time: '12:00' }
    const tried = planOf(site, { date: '2026-07-21', triedStart }, memo)
    expect(tried.pours).toEqual(pours)
    const doneOf = (plans: typeof dayPlans) => plans.find(({ pourId }) => pourId === triedStart.pourId)!.doneMin!
    expect(doneOf(tried.dayPlans)).toBeGreaterThan(doneOf(dayPlans) + 60)
    expect(memo.computed.get('order')).toBe(2)
  })
})
