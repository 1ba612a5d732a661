import { describe, expect, it } from 'vitest'
import { spanFault } from '../../renderer/slab/HourSpan'

describe('a span of the clock', () => {
  it.each([
    ['07:00', '22:00'],
    ['00:00', '00:01'],
    ['09:59', '10:00'],
  ])('runs from %s until %s', (from, to) => {
    expect(spanFault({ from, to })).toBeNull()
  })

  it.each([
    ['22:00', '07:00'],
    ['10:00', '09:59'],
    ['07:00', '07:00'],
  ])('from %s until %s is told to be none', (from, to) => {
    expect(spanFault({ from, to })).toBe(
      'Until must be later than From. Hours past midnight go into a row of their own.',
    )
  })
})
