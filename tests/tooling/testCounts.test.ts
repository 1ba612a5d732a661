import { describe, expect, it } from 'vitest'
import { addUp, countPlaywright, countSecondTries, countVitest } from '../../scripts/testCounts'

describe('the closing line of a test run', () => {
  it('counts what vitest passed, and everything else as failed', () => {
    expect(countVitest({ numPassedTests: 7, numFailedTests: 1, numPendingTests: 2, numTotalTests: 10 })).toEqual({
      passed: 7,
      failed: 3,
    })
  })

  it('counts a skipped browser test and an error outside a test as failed, and tells second tries', () => {
    const report = { stats: { expected: 4, unexpected: 1, flaky: 2, skipped: 1 }, errors: [{}] }
    expect(countPlaywright(report)).toEqual({ passed: 6, failed: 3 })
    expect(countSecondTries(report)).toBe(2)
  })

  it('refuses a report without figures', () => {
    expect(() => countVitest({})).toThrow()
    expect(() => countPlaywright({ stats: {} })).toThrow()
  })

  it('adds up', () => {
    expect(
      addUp([
        { passed: 1, failed: 0 },
        { passed: 2, failed: 3 },
      ]),
    ).toEqual({ passed: 3, failed: 3 })
  })
})
