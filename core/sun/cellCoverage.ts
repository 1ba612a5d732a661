/** How much of each cell of a square grid a shape covers. */
import type { Region, Ring } from '../geometry/curve'

export interface Grid {
  readonly minX: number
  readonly minY: number
  readonly cellM: number
  readonly columns: number
  readonly rows: number
}

/** Adds to `cover` the change of coverage that one edge makes in its row and every cell right of it; see below. */
const addEdge = (cover: Float64Array, grid: Grid, ax: number, ay: number, bx: number, by: number): void => {
  if (ay === by) return
  const { columns, rows } = grid
  const sign = ay < by ? -1 : 1
  const [x0, y0, x1, y1] = ay < by ? [ax, ay, bx, by] : [bx, by, ax, ay]
  const slope = (x1 - x0) / (y1 - y0)
  const firstRow = Math.max(0, Math.floor(y0))
  const lastRow = Math.min(rows - 1, Math.ceil(y1) - 1)
  for (let row = firstRow; row <= lastRow; row++) {
    const low = Math.max(row, y0)
    const high = Math.min(row + 1, y1)
    const height = (high - low) * sign
    const xa = clamp(x0 + (low - y0) * slope, columns)
    const xb = clamp(x0 + (high - y0) * slope, columns)
    const left = Math.min(xa, xb)
    const right = Math.max(xa, xb)
    const base = row * (columns + 1)
    const first = Math.min(columns - 1, Math.floor(left))
    const last = Math.min(columns - 1, Math.max(first, Math.ceil(right) - 1))
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

/** Outside the grid an edge acts from its border: the error is outside too. */
const clamp = (x: number, columns: number): number => Math.min(columns, Math.max(0, x))

/** Mean of clamp(column + 1 − x, 0, 1) for x spread evenly over [left, right]. */
const meanRightOf = (left: number, right: number, column: number): number => {
  if (right - left < 1e-12) return Math.min(1, Math.max(0, column + 1 - left))
  const rising = (x: number): number => {
    const t = Math.min(1, Math.max(0, column + 1 - x))
    return x <= column ? column - x + 0.5 : (t * t) / 2
  }
  return (rising(left) - rising(right)) / (right - left)
}

const addRing = (cover: Float64Array, grid: Grid, ring: Ring): void => {
  const { minX, minY, cellM } = grid
  let [px, py] = ring.at(-1)!
  for (const [x, y] of ring) {
    addEdge(cover, grid, (px - minX) / cellM, (py - minY) / cellM, (x - minX) / cellM, (y - minY) / cellM)
    px = x
    py = y
  }
}

/**
 * The exact share of every cell that lies in the regions, row by row from `minY`, 0 … 1: each edge's signed cover is
 * entered where it stands and summed along the row.
 */
export const cellCoverage = (regions: readonly Region[], grid: Grid): Float64Array => {
  const { columns, rows } = grid
  const cover = new Float64Array((columns + 1) * rows)
  for (const { ring, holes } of regions) {
    addRing(cover, grid, ring)
    for (const hole of holes) addRing(cover, grid, hole)
  }
  const share = new Float64Array(columns * rows)
  for (let row = 0; row < rows; row++) {
    let sum = 0
    for (let column = 0; column < columns; column++) {
      sum += cover[row * (columns + 1) + column]!
      // Sums of parts of 1 leave crumbs of rounding.
      share[row * columns + column] = sum < 1e-9 ? 0 : sum > 1 - 1e-9 ? 1 : sum
    }
  }
  return share
}
