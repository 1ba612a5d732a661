/** Direct sun of a strip through the day, as up to four histories of equal area from the shadiest to the sunniest. */
import type { ShadeHistory } from '../../concrete/shadeHistory'
import type { CurveRegion } from '../../geometry/curve'
import { cellsOf, type Exposure } from '../../sun/exposure'
import { cellShare } from '../../sun/sunShares'

export interface SunQuantile {
  /** Share of the strip's area. */
  readonly share: number
  readonly history: ShadeHistory
}

const quarters = 4
/** More cells than this say no more about a quarter's mean: then every nth stands for its neighbors. */
const mostCells = 400

/**
 * Cells are ranked by their direct sun between two instants and gathered in parts of equal area, quarters where not said
 * otherwise; each has the mean history of its cells. Parts with one history are one. `movedMs` is added to the instants of the exposure, for a
 * pour on another day of the same plan.
 */
export function stripSun(
  exposed: Exposure,
  regions: readonly CurveRegion[],
  fromMs: number,
  toMs: number,
  movedMs = 0,
  quantiles = quarters,
): readonly SunQuantile[] {
  const { instants, lit } = exposed
  const stepMs = instants.length > 1 ? instants[1]! - instants[0]! : 60_000
  const history = (share: Float64Array): ShadeHistory => ({ fromMs: instants[0]! + movedMs, stepMs, share })
  const empty = new Float64Array(instants.length)
  const covered = cellsOf(exposed, regions)
  const steps = lit
    .map((at, step) => ({ at, step }))
    .filter(({ at }) => instants[at]! + movedMs >= fromMs - stepMs && instants[at]! + movedMs <= toMs + stepMs)
  const cells: { readonly weight: number; readonly shares: Float64Array; readonly sun: number }[] = []
  let whole = 0
  const every = Math.max(1, Math.ceil(covered.cells.length / mostCells))
  for (let i = 0; i < covered.cells.length; i += every) {
    const weight = covered.shares[i]!
    const shares = Float64Array.from(steps, ({ step }) => cellShare(exposed, covered.cells[i]!, step))
    cells.push({ weight, shares, sun: shares.reduce((sum, share) => sum + share, 0) })
    whole += weight
  }
  if (whole === 0) return [{ share: 1, history: history(empty) }]
  cells.sort((a, b) => a.sun - b.sun)
  const made: { share: number; readonly values: Float64Array }[] = []
  let next = 0
  for (let part = 0; part < quantiles; part++) {
    const values = new Float64Array(instants.length)
    let weight = 0
    while (next < cells.length && (weight < whole / quantiles || part === quantiles - 1)) {
      const cell = cells[next++]!
      weight += cell.weight
      steps.forEach(({ at }, i) => {
        values[at]! += cell.weight * cell.shares[i]!
      })
    }
    if (weight === 0) continue
    for (const { at } of steps) values[at]! /= weight
    const last = made.at(-1)
    if (last?.values.every((value, i) => Math.abs(value - values[i]!) < 1e-9)) last.share += weight / whole
    else made.push({ share: weight / whole, values })
  }
  return made.map(({ share, values }) => ({ share, history: history(values) }))
}

/** In the open all day, for a pour whose shade is not known. */
export const openStrip: readonly SunQuantile[] = [{ share: 1, history: { fromMs: 0, stepMs: 1, share: [1] } }]
