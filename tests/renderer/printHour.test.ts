import fc from 'fast-check'
import { DateTime } from 'luxon'
import { describe, expect, it } from 'vitest'
import { printHour } from '../../renderer/app/printDate'

describe('the clock of the site', () => {
  it('reads as one says it', () => {
    const ms = Date.parse('2026-07-21T15:40:00Z')
    expect(printHour(ms, 'America/Boise', 'ftin')).toBe('9:40')
    expect(printHour(ms, 'America/Boise', 'ftin', true)).toBe('9:40 am')
    expect(printHour(ms, 'Europe/Oslo', 'metric')).toBe('17:40')
    expect(printHour(Date.parse('2026-07-21T06:05:00Z'), 'America/Boise', 'ftin', true)).toBe('12:05 am')
    expect(printHour(Date.parse('2026-07-21T22:05:00Z'), 'Europe/Oslo', 'metric')).toBe('0:05')
  })

  it('agrees with another clock at any instant, summer time or not', () => {
    const zones = fc.constantFrom(
      'America/Denver',
      'America/St_Johns',
      'Europe/Oslo',
      'Asia/Kolkata',
      'Pacific/Auckland',
    )
    fc.assert(
      fc.property(fc.integer({ min: 1.6e12, max: 2e12 }), zones, (ms, zone) => {
        const at = DateTime.fromMillis(ms, { zone, locale: 'en-US' })
        expect(printHour(ms, zone, 'metric')).toBe(at.toFormat('H:mm'))
        expect(printHour(ms, zone, 'ftin', true)).toBe(at.toFormat('h:mm a').toLowerCase())
      }),
      { seed: 9, numRuns: 300 },
    )
  })
})
