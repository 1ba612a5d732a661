import { describe, expect, it } from 'vitest'
import { nextQuarter, sheetClock, toFiveMinutes } from '../../core/reports/sheetClock'

const zone = 'America/Boise'
const at = (clock: string): number => Date.parse(`2026-07-21T${clock}-06:00`)

describe('times on paper', () => {
  it('are told by the clock of the site, with am and pm where feet are used', () => {
    expect(sheetClock(at('13:05:00'), zone, 'ftin')).toBe('1:05 pm')
    expect(sheetClock(at('13:05:00'), zone, 'metric')).toBe('13:05')
  })

  it('are to five minutes where a model gave them, and never later where they are a limit', () => {
    expect(toFiveMinutes(at('10:03:00'))).toBe(at('10:05:00'))
    expect(toFiveMinutes(at('10:04:59'), 'atLatest')).toBe(at('10:00:00'))
  })

  it.each([
    ['10:45', '10:45'],
    ['10:46', '11:00'],
    ['23:50', '23:50'],
  ])('from %s on is told as from %s', (clock, told) => {
    expect(nextQuarter(clock)).toBe(told)
  })
})
