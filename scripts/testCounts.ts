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

/** Counts playwright's JSON report; flaky and skipped count as failed, as do errors outside a test. */
export function countPlaywright(report: unknown): TestCount {
  const { stats, errors } = PlaywrightReport.parse(report)
  return { passed: stats.expected, failed: stats.unexpected + stats.flaky + stats.skipped + errors.length }
}

export function addUp(counts: readonly TestCount[]): TestCount {
  return {
    passed: counts.reduce((sum, { passed }) => sum + passed, 0),
    failed: counts.reduce((sum, { failed }) => sum + failed, 0),
  }
}
