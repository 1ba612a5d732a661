import { describe, expect, it } from 'vitest'
import { noonHeightApart } from '../../core/sun/noonHeightApart'
import { planOf, sampleSite } from '../plan/sampleSite'

describe('the noon sun of two days', () => {
  it('stands twice the obliquity of the ecliptic higher at midsummer than at midwinter', () => {
    // Mean obliquity of 2000 23.439 28°: J. Meeus, Astronomical Algorithms, 1998, chapter 22; from memory.
    const place = { latDeg: 43.6, lonDeg: -116.2 }
    expect(noonHeightApart(place, '2026-06-21', '2026-12-21')).toBeCloseTo(46.88, 1)
    expect(noonHeightApart(place, '2026-12-21', '2026-06-21')).toBeCloseTo(-46.88, 1)
  })

  it('moves by 4° at most in ten days', () => {
    const place = { latDeg: 43.6, lonDeg: -116.2 }
    const dates = Array.from({ length: 365 }, (_, i) => new Date(Date.UTC(2026, 0, 1 + i)).toISOString().slice(0, 10))
    const most = Math.max(
      ...dates.slice(0, -10).map((date, i) => Math.abs(noonHeightApart(place, dates[i + 10]!, date))),
    )
    expect(most).toBeGreaterThan(3.8)
    expect(most).toBeLessThan(4.05)
  })

  it('is told where a pour is planned by the shade of another season, and not within the week', () => {
    const site = sampleSite('l-patio-accepted')
    const told = (date: string) =>
      planOf(site, { date })
        .problems.filter(({ code }) => code === 'shadeOfOtherDay')
        .map(({ message }) => message)
    expect(told('2026-07-21')).toEqual([])
    const winter = told('2026-12-21')
    expect(winter).toHaveLength(3)
    expect(winter[0]).toMatch(
      /^Pour 1 is poured on .*; its sun and shade are those of .*, when the sun at noon stands 4\d° lower\.$/,
    )
  })
})
