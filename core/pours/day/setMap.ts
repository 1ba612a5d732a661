/** When each cell of a pour is ready to stamp and when it is too hard: placed where the concrete comes by, in its own sun. */
import { type CellHistories, setTimesOfCells } from '../../concrete/groupedSetClock'
import type { Grid } from '../../sun/cellCoverage'
import { cellsOf, type Exposure } from '../../sun/exposure'
import { daysApartMs, siteDay } from '../../sun/siteDay'
import { cellShare } from '../../sun/sunShares'
import type { PourDayPlan } from './pourDay'

export interface PourSetMap {
  readonly pourId: string
  readonly grid: Grid
  /** Row by row from the lower left, UTC ms; NaN off the pour and where the known hours end before. */
  readonly placedMs: Float64Array
  readonly readyMs: Float64Array
  readonly tooHardMs: Float64Array
}

/** Shares of sun are told in this many steps. */
const shareSteps = 20

/**
 * Cells of a strip are run at the instants its placing begins and ends; a cell between takes the time on the straight
 * line between the two by how far it lies in the placing direction.
 */
export function setMap(exposed: Exposure, day: PourDayPlan): PourSetMap {
  const { grid, instants, lit } = exposed
  const { minX, minY, cellM, columns, rows } = grid
  const made = (): Float64Array => new Float64Array(columns * rows).fill(Number.NaN)
  const map = { pourId: day.pourId, grid, placedMs: made(), readyMs: made(), tooHardMs: made() }
  const own = siteDay(day.date, exposed.place.zone)
  const movedMs = own.ok ? daysApartMs(exposed.day, own.value) : 0
  const { strips: _, startMs: __, hands: ___, known: ____, tables: _____, ...input } = day.input
  const shareOfClass = Array.from({ length: shareSteps + 1 }, (_one, i) => i / shareSteps)
  const [ux, uy] = day.direction
  day.shapes.forEach((shape, index) => {
    const strip = day.plan.strips[index]!
    const load = day.plan.loads.find(({ no }) => no === strip.load + 1)
    const cells = [...cellsOf(exposed, shape.regions).cells]
    if (cells.length === 0 || !load) return
    const along = cells.map(cell => {
      const x = minX + ((cell % columns) + 0.5) * cellM
      const y = minY + (Math.floor(cell / columns) + 0.5) * cellM
      return ux * x + uy * y
    })
    const [low, high] = [Math.min(...along), Math.max(...along)]
    const classes = new Uint8Array(cells.length * instants.length)
    cells.forEach((cell, i) => {
      lit.forEach((at, step) => {
        classes[i * instants.length + at] = Math.round(cellShare(exposed, cell, step) * shareSteps)
      })
    })
    const histories: CellHistories = {
      ...{ cells: cells.length, steps: instants.length, classes, shareOfClass },
      fromMs: instants[0]! + movedMs,
      stepMs: instants.length > 1 ? instants[1]! - instants[0]! : 60_000,
    }
    const at = (placedMs: number) =>
      setTimesOfCells(histories, { ...input, placedMs, batchedMs: load.batchMs, doseMin: strip.doseMin })
    const [first, last] = [at(strip.placeMs), at(strip.placedMs)]
    cells.forEach((cell, i) => {
      const share = high > low ? (along[i]! - low) / (high - low) : 0
      const between = (of: 'readyMs' | 'tooHardMs'): number => {
        const from = first[of][first.groupOf[i]!]!
        return from + share * (last[of][last.groupOf[i]!]! - from)
      }
      map.placedMs[cell] = strip.placeMs + share * (strip.placedMs - strip.placeMs)
      map.readyMs[cell] = between('readyMs')
      map.tooHardMs[cell] = between('tooHardMs')
    })
  })
  return map
}
