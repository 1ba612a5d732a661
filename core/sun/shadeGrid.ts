/**
 * Scan conversion of shadow cycles into one bit a cell. Each crossing of an edge with a row of cell centers adds ±1 to
 * a difference grid; the running sum along the row is the winding number, so cycles of all casters share one grid, and
 * a caster is taken out by tracing it again with the opposite sign.
 */
import type { Grid } from './cellCoverage'

export interface ShadeGrid {
  readonly grid: Grid
  /** 32-bit words a row. */
  readonly words: number
  /** Windings that begin or end at a cell, `columns` a row. */
  readonly change: Int16Array
  /** A bit for each cell of `change` that may not be zero. */
  readonly touched: Int32Array
}

export const wordsPerRow = (grid: Grid): number => (grid.columns + 31) >>> 5

/** `change` and `touched` may be windows into longer arrays. */
export const shadeGrid = (grid: Grid, change?: Int16Array, touched?: Int32Array): ShadeGrid => {
  const words = wordsPerRow(grid)
  return {
    grid,
    words,
    change: change ?? new Int16Array(grid.columns * grid.rows),
    touched: touched ?? new Int32Array(words * grid.rows),
  }
}

/**
 * Adds a closed cycle (x0, y0, x1, y1 … in the first `count` numbers).
 * @param sign 1 puts it in, −1 takes it out
 */
export const addCycle = (target: ShadeGrid, cycle: Float64Array, count: number, sign: 1 | -1): void => {
  const { change, touched, words, grid } = target
  const { columns, rows } = grid
  const scale = 1 / grid.cellM
  const offX = -grid.minX * scale - 0.5
  const offY = -grid.minY * scale - 0.5
  const lastColumn = columns - 1
  const lastRow = rows - 1
  let px = cycle[count - 2]! * scale + offX
  let py = cycle[count - 1]! * scale + offY
  for (let i = 0; i < count; i += 2) {
    const qx = cycle[i]! * scale + offX
    const qy = cycle[i + 1]! * scale + offY
    const isUp = py < qy
    const ax = isUp ? px : qx
    const ay = isUp ? py : qy
    const bx = isUp ? qx : px
    const by = isUp ? qy : py
    const step = isUp ? -sign : sign
    px = qx
    py = qy
    if (by <= 0 || ay > lastRow || (ax > lastColumn && bx > lastColumn)) continue
    const first = ay > 0 ? Math.ceil(ay) : 0
    const last = by > lastRow ? lastRow : Math.ceil(by) - 1
    if (first > last) continue
    if (ax <= 0 && bx <= 0) {
      for (let row = first; row <= last; row++) {
        change[row * columns]! += step
        touched[row * words]! |= 1
      }
      continue
    }
    const slope = (bx - ax) / (by - ay)
    let x = ax + (first - ay) * slope
    for (let row = first; row <= last; row++) {
      if (x <= lastColumn) {
        const column = x > 0 ? Math.ceil(x) : 0
        change[row * columns + column]! += step
        touched[row * words + (column >> 5)]! |= 1 << (column & 31)
      }
      x += slope
    }
  }
}

/** Sets the bits from `from` up to, but not including, `to` of the row that starts at word `base`. */
const setSpan = (bits: Int32Array, base: number, from: number, to: number): void => {
  const firstWord = from >> 5
  const lastWord = (to - 1) >> 5
  const head = -1 << (from & 31)
  const tail = (to & 31) === 0 ? -1 : ~(-1 << (to & 31))
  if (firstWord === lastWord) bits[base + firstWord]! |= head & tail
  else {
    bits[base + firstWord]! |= head
    for (let word = firstWord + 1; word < lastWord; word++) bits[base + word] = -1
    bits[base + lastWord]! |= tail
  }
}

/**
 * Sets in `bits` (one plane, `words` a row, from word `at`) every cell with a winding number above 0.
 * @param wipe leave the grid empty for the next cycles
 */
export const resolveBits = (source: ShadeGrid, bits: Int32Array, at: number, wipe: boolean): void => {
  const { change, touched, words, grid } = source
  const { columns, rows } = grid
  for (let row = 0; row < rows; row++) {
    let winding = 0
    let start = 0
    const cells = row * columns
    const base = row * words
    for (let word = 0; word < words; word++) {
      let marks = touched[base + word]!
      if (marks === 0) continue
      if (wipe) touched[base + word] = 0
      do {
        const column = (word << 5) + 31 - Math.clz32(marks & -marks)
        marks &= marks - 1
        if (winding > 0 && column > start) setSpan(bits, at + base, start, column)
        winding += change[cells + column]!
        if (wipe) change[cells + column] = 0
        start = column
      } while (marks !== 0)
    }
    if (winding > 0) setSpan(bits, at + base, start, columns)
  }
}
