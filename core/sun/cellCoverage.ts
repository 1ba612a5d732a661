/** How much of each cell of a square grid a shape covers. */
import type { Region, Ring } from '../geometry/curve'

export interface Grid {
  readonly minX: number
  readonly minY: number
  readonly cellM: number
  readonly columns: number
  readonly rows: number
}

/** The cells from a first row and column up to those before `endRow` and `endColumn`. */
interface Window {
  readonly row: number
  readonly column: number
  readonly endRow: number
  readonly endColumn: number
}

/** Adds to `cover` the change of coverage that one edge makes in its row and every cell right of it; see below. */
const addEdge = (cover: Float64Array, within: Window, ax: number, ay: number, bx: number, by: number): void => {
  if (ay === by) return
  const sign = ay < by ? -1 : 1
  const [x0, y0, x1, y1] = ay < by ? [ax, ay, bx, by] : [bx, by, ax, ay]
  const slope = (x1 - x0) / (y1 - y0)
  const firstRow = Math.max(within.row, Math.floor(y0))
  const lastRow = Math.min(within.endRow, Math.ceil(y1)) - 1
  const width = within.endColumn - within.column + 1
  for (let row = firstRow; row <= lastRow; row++) {
    const low = Math.max(row, y0)
    const high = Math.min(row + 1, y1)
    const height = (high - low) * sign
    const xa = clamp(x0 + (low - y0) * slope, within)
    const xb = clamp(x0 + (high - y0) * slope, within)
    const left = Math.min(xa, xb)
    const right = Math.max(xa, xb)
    const base = (row - within.row) * width - within.column
    const first = Math.min(within.endColumn - 1, Math.floor(left))
    const last = Math.min(within.endColumn - 1, Math.max(first, Math.ceil(right) - 1))
    let given = 0
    for (let column = first; column <= last; column++) {
      // Mean over the edge's height of the part of this cell right of it.
      const share = meanRightOf(left, right, column) * height
      cover[base + column]! += share - given
      given = share
    }
    cover[base + last + 1]! += height - given
  }
}

/** Outside the window an edge acts from its border: the error is outside too. */
const clamp = (x: number, { column, endColumn }: Window): number => Math.min(endColumn, Math.max(column, x))

/** Mean of clamp(column + 1 − x, 0, 1) for x spread evenly over [left, right]. */
const meanRightOf = (left: number, right: number, column: number): number => {
  if (right - left < 1e-12) return Math.min(1, Math.max(0, column + 1 - left))
  const rising = (x: number): number => {
    const t = Math.min(1, Math.max(0, column + 1 - x))
    return x <= column ? column - x + 0.5 : (t * t) / 2
  }
  return (rising(left) - rising(right)) / (right - left)
}

const addRing = (cover: Float64Array, grid: Grid, within: Window, ring: Ring): void => {
  const { minX, minY, cellM } = grid
  let [px, py] = ring.at(-1)!
  for (const [x, y] of ring) {
    addEdge(cover, within, (px - minX) / cellM, (py - minY) / cellM, (x - minX) / cellM, (y - minY) / cellM)
    px = x
    py = y
  }
}

/** The part of the grid that shapes lie in. */
const windowOf = (regions: readonly Region[], { minX, minY, cellM, columns, rows }: Grid): Window => {
  let [left, low, right, high] = [columns, rows, 0, 0]
  for (const { ring } of regions)
    for (const [x, y] of ring) {
      left = Math.min(left, Math.floor((x - minX) / cellM))
      low = Math.min(low, Math.floor((y - minY) / cellM))
      right = Math.max(right, Math.ceil((x - minX) / cellM))
      high = Math.max(high, Math.ceil((y - minY) / cellM))
    }
  const [row, column] = [Math.max(0, low), Math.max(0, left)]
  return {
    row,
    column,
    endRow: Math.max(row, Math.min(rows, high)),
    endColumn: Math.max(column, Math.min(columns, right)),
  }
}

/** Cells by number (row · columns + column, from the grid's lower left) in order, and the share of each, above 0. */
export interface CoveredCells {
  readonly cells: Int32Array
  readonly shares: Float64Array
}

/**
 * The exact share of every cell that lies in the regions, for those that do at all: each edge's signed cover is entered
 * where it stands and summed along the row.
 */
export const coveredCells = (regions: readonly Region[], grid: Grid): CoveredCells => {
  const within = windowOf(regions, grid)
  const width = within.endColumn - within.column + 1
  const cover = new Float64Array(width * (within.endRow - within.row))
  for (const { ring, holes } of regions) {
    addRing(cover, grid, within, ring)
    for (const hole of holes) addRing(cover, grid, within, hole)
  }
  const cells = new Int32Array(cover.length)
  const shares = new Float64Array(cover.length)
  let count = 0
  for (let row = within.row; row < within.endRow; row++) {
    let sum = 0
    for (let column = within.column; column < within.endColumn; column++) {
      sum += cover[(row - within.row) * width + column - within.column]!
      // Sums of parts of 1 leave crumbs of rounding.
      if (sum < 1e-9) continue
      cells[count] = row * grid.columns + column
      shares[count++] = sum > 1 - 1e-9 ? 1 : sum
    }
  }
  return { cells: cells.subarray(0, count), shares: shares.subarray(0, count) }
}

/** One share for each cell of the grid, 0 … 1, row by row. */
export const overGrid = ({ cells, shares }: CoveredCells, grid: Grid): Float64Array => {
  const all = new Float64Array(grid.columns * grid.rows)
  for (let i = 0; i < cells.length; i++) all[cells[i]!] = shares[i]!
  return all
}
