/** One line of the bench table. `ok` gates ratios, exponents, closures and errors; it is null for times and memory. */
export interface BenchRow {
  readonly id: string
  readonly what: string
  readonly value: number
  readonly unit: string
  /** What it is compared with; null for a plain reading. */
  readonly peer: string | null
  /** Such as `≥ 20` or `≤ 0.015`; for times: reported, never failing. */
  readonly target: string | null
  readonly ok: boolean | null
}

/** Every `tests/bench/*.bench.ts` exports a function of this type as `bench`. */
export type Bench = () => Promise<readonly BenchRow[]>
