/**
 * Scan conversion of shadow cycles into one bit a cell, set where the winding number about the cell's center is above 0.
 * A cycle that rises once and falls once (nearly every shadow of a box, crown, screen or roof face) goes straight into
 * the plane, one run of bits a row. Any other adds ±1 to a difference grid at each crossing of an edge with a row of
 * centers; the running sum along the row is the winding number, so such cycles share one grid.
 */
import type { Grid } from './cellCoverage'

export interface ShadeGrid {
  readonly grid: Grid
  /** 32-bit words a row. */
  readonly words: number
  /** Windings that begin or end at a cell, `columns` a row. */
  readonly change: Int16Array
  /** A bit for each cell of `change` that is not zero. */
  readonly touched: Int32Array
  /** First cell of a run and the one after its last, by row. */
  readonly runStart: Int32Array
  readonly runEnd: Int32Array
}

export const wordsPerRow = (grid: Grid): number => (grid.columns + 31) >>> 5

export const shadeGrid = (grid: Grid): ShadeGrid => {
  const words = wordsPerRow(grid)
  return {
    grid,
    words,
    change: new Int16Array(grid.columns * grid.rows),
    touched: new Int32Array(words * grid.rows),
    runStart: new Int32Array(grid.rows),
    runEnd: new Int32Array(grid.rows),
  }
}

/** Whether a closed cycle rises once and falls once. */
const isRiseAndFall = (cycle: Float64Array, count: number): boolean => {
  let turns = 0
  let rising: boolean | null = null
  let first: boolean | null = null
  let before = cycle[count - 1]!
  for (let i = 1; i < count; i += 2) {
    const y = cycle[i]!
    if (y !== before) {
      const up = y > before
      if (rising === null) first = up
      else if (up !== rising) turns++
      rising = up
    }
    before = y
  }
  return turns + (rising === first ? 0 : 1) <= 2
}

/** Sets the runs of a counter-clockwise cycle that rises once and falls once. */
const setRuns = (target: ShadeGrid, cycle: Float64Array, count: number, bits: Int32Array, at: number): void => {
  const { words, grid, runStart, runEnd } = target
  const { columns, rows } = grid
  const scale = 1 / grid.cellM
  const offX = -grid.minX * scale - 0.5
  const offY = -grid.minY * scale - 0.5
  const lastColumn = columns - 1
  const lastRow = rows - 1
  let lowest = rows
  let highest = -1
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
    px = qx
    py = qy
    if (by <= 0 || ay > lastRow) continue
    const first = ay > 0 ? ceiling(ay) : 0
    const last = by > lastRow ? lastRow : ceiling(by) - 1
    if (first > last) continue
    if (first < lowest) lowest = first
    if (last > highest) highest = last
    const ends = isUp ? runEnd : runStart
    const slope = (bx - ax) / (by - ay)
    let x = ax + (first - ay) * slope
    for (let row = first; row <= last; row++) {
      ends[row] = x <= 0 ? 0 : x > lastColumn ? columns : ceiling(x)
      x += slope
    }
  }
  let base = at + lowest * words
  for (let row = lowest; row <= highest; row++) {
    const from = runStart[row]!
    const to = runEnd[row]!
    if (from < to) {
      const firstWord = base + (from >> 5)
      const lastWord = base + ((to - 1) >> 5)
      const head = -1 << (from & 31)
      const tail = -1 >>> (-to & 31)
      if (firstWord === lastWord) bits[firstWord]! |= head & tail
      else {
        bits[firstWord]! |= head
        for (let word = firstWord + 1; word < lastWord; word++) bits[word] = -1
        bits[lastWord]! |= tail
      }
    }
    base += words
  }
}

/** Math.ceil for 0 ≤ x < 2³¹, without leaving whole numbers. */
const ceiling = (x: number): number => {
  const whole = x | 0
  return whole < x ? whole + 1 : whole
}

const addChanges = (target: ShadeGrid, cycle: Float64Array, count: number): void => {
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
    const step = isUp ? -1 : 1
    px = qx
    py = qy
    if (by <= 0 || ay > lastRow || (ax > lastColumn && bx > lastColumn)) continue
    const first = ay > 0 ? ceiling(ay) : 0
    const last = by > lastRow ? lastRow : ceiling(by) - 1
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
        const column = x > 0 ? ceiling(x) : 0
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
 * Puts one cycle (x0, y0, x1, y1 … in the first `count` numbers) into the plane of `words` a row that starts at word `at`
 * of `bits`.
 * @param alone the cycle winds negatively nowhere by itself
 * @returns true if it is still held in the grid, for `resolveChanges` to bring into the plane
 */
export const addCycle = (
  target: ShadeGrid,
  cycle: Float64Array,
  count: number,
  alone: boolean,
  bits: Int32Array,
  at: number,
): boolean => {
  if (alone && isRiseAndFall(cycle, count)) {
    setRuns(target, cycle, count, bits, at)
    return false
  }
  addChanges(target, cycle, count)
  return true
}

/** Brings what the grid holds into the plane and leaves the grid empty. */
export const resolveChanges = (source: ShadeGrid, bits: Int32Array, at: number): void => {
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
      touched[base + word] = 0
      do {
        const column = (word << 5) + 31 - Math.clz32(marks & -marks)
        marks &= marks - 1
        if (winding > 0 && column > start) setSpan(bits, at + base, start, column)
        winding += change[cells + column]!
        change[cells + column] = 0
        start = column
      } while (marks !== 0)
    }
    if (winding > 0) setSpan(bits, at + base, start, columns)
  }
}
