import type { CellHistories } from '../../core/concrete/groupedSetClock'
import { dayStartMs, mulberry32 } from './dayFixture'

/** Steps of a day a cell's history has: 168 over 24 h. */
export const daySteps = 168

/** Cells that share `groups` histories at most: a run or two of shade, some of it under leaves. Seeded. */
export function cellHistories(of: { cells: number; groups: number; seed: number }): CellHistories {
  const random = mulberry32(of.seed)
  const kinds = Array.from({ length: of.groups }, () => {
    const history = new Uint8Array(daySteps).fill(2)
    for (let run = 0; run < 2; run++) {
      const from = Math.floor(random() * daySteps)
      history.fill(random() < 0.3 ? 1 : 0, from, from + Math.floor(random() * 50))
    }
    return history
  })
  const classes = new Uint8Array(of.cells * daySteps)
  for (let cell = 0; cell < of.cells; cell++) classes.set(kinds[Math.floor(random() * of.groups)]!, cell * daySteps)
  return {
    cells: of.cells,
    steps: daySteps,
    fromMs: dayStartMs,
    stepMs: (24 * 3_600_000) / daySteps,
    classes,
    shareOfClass: [0, 0.2, 1],
  }
}
