import * as z from 'zod/mini'

export interface TestCount {
  readonly passed: number
  readonly failed: number
}

const VitestReport = z.object({ numPassedTests: z.number(), numTotalTests: z.number() })

/** Counts vitest's JSON report; what neither passed nor failed (skipped, to do) counts as failed. */
export function countVitest(report: unknown): TestCount {
  const { numPassedTests, numTotalTests } = VitestReport.parse(report)
  return { passed: numPassedTests, failed: numTotalTests - numPassedTests }
}

const PlaywrightReport = z.object({
  stats: z.object({ expected: z.number(), unexpected: z.number(), flaky: z.number(), skipped: z.number() }),
  errors: z.array(z.unknown()),
})

/** Counts playwright's JSON report; skipped counts as failed, as does an error outside a test. */
export function countPlaywright(report: unknown): TestCount {
  const { stats, errors } = PlaywrightReport.parse(report)
  return { passed: stats.expected + stats.flaky, failed: stats.unexpected + stats.skipped + errors.length }
}

/** How many browser tests passed only at their second try. */
export function countSecondTries(report: unknown): number {
  return PlaywrightReport.parse(report).stats.flaky
}

export function addUp(counts: readonly TestCount[]): TestCount {
  return {
    passed: counts.reduce((sum, { passed }) => sum + passed, 0),
    failed: counts.reduce((sum, { failed }) => sum + failed, 0),
  }
}
