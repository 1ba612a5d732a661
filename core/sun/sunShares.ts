/** What an exposure says about an area, a cell, or all cells. */
import { type Area, cellsOf, type Exposure } from './exposure'

const bitCount = (word: number): number => {
  const pairs = word - ((word >>> 1) & 0x55555555)
  const fours = (pairs & 0x33333333) + ((pairs >>> 2) & 0x33333333)
  return Math.imul((fours + (fours >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24
}

/** The share of direct sun that reaches a cell's center past crowns and screens; `word` as in the planes. */
export const dappleShare = (exposed: Exposure, word: number, bit: number): number => {
  let share = 1
  for (const { transmission, counts } of exposed.dapple)
    for (let k = 0; k < counts.length; k++) if ((counts[k]![word]! >>> bit) & 1) share *= transmission ** (1 << k)
  return share
}

/** The cells of a word with any crown or screen in the sun's way. */
export const dappledBits = (exposed: Exposure, word: number): number => {
  let bits = 0
  for (const { counts } of exposed.dapple) for (const plane of counts) bits |= plane[word]!
  return bits
}

/** Transmitted share at a cell's center, 0 … 1, at a step of the planes (an index into `lit`). */
export const cellShare = (exposed: Exposure, cell: number, step: number): number => {
  const { grid, words, opaque } = exposed
  const column = cell % grid.columns
  const word = (step * grid.rows + Math.floor(cell / grid.columns)) * words + (column >> 5)
  return (opaque[word]! >>> (column & 31)) & 1 ? 0 : dappleShare(exposed, word, column & 31)
}

/** The words of a plane in which an area has cells, in order, with bits for those it covers whole and in part. */
export interface AreaMask {
  readonly words: Int32Array
  readonly full: Int32Array
  readonly partial: Int32Array
  /** Share of each cell, 32 a word. */
  readonly shares: Float64Array
  /** The area in cells. */
  readonly total: number
}

/** Where an area (the whole slab if left out) lies in the planes: the same for all exposures of one grid. */
export function areaMask(exposed: Exposure, area?: Area): AreaMask {
  const { grid, words: perRow } = exposed
  const { cells, shares } = cellsOf(exposed, area)
  const places = Int32Array.from(cells, cell => {
    const row = Math.floor(cell / grid.columns)
    return 32 * row * perRow + cell - row * grid.columns
  })
  let count = 0
  for (let i = 0; i < places.length; i++) if (i === 0 || places[i]! >> 5 !== places[i - 1]! >> 5) count++
  const mask = {
    words: new Int32Array(count),
    full: new Int32Array(count),
    partial: new Int32Array(count),
    shares: new Float64Array(32 * count),
  }
  let total = 0
  let at = -1
  for (let i = 0; i < places.length; i++) {
    const bit = places[i]! & 31
    if (i === 0 || places[i]! >> 5 !== mask.words[at]) mask.words[++at] = places[i]! >> 5
    const target = shares[i] === 1 ? mask.full : mask.partial
    target[at]! |= 1 << bit
    mask.shares[32 * at + bit] = shares[i]!
    total += shares[i]!
  }
  return { ...mask, total }
}

/** Sum of covered times transmitted share at a step. */
function sunnyCells(exposed: Exposure, mask: AreaMask, step: number): number {
  const { grid, words, opaque, dapple } = exposed
  const first = step * words * grid.rows
  let sunny = 0
  for (let i = 0; i < mask.words.length; i++) {
    const word = first + mask.words[i]!
    const clear = ~opaque[word]!
    const dappled = dapple.length === 0 ? 0 : dappledBits(exposed, word)
    sunny += bitCount(mask.full[i]! & clear & ~dappled)
    let rest = clear & (mask.partial[i]! | (mask.full[i]! & dappled))
    while (rest !== 0) {
      const bit = 31 - Math.clz32(rest & -rest)
      rest &= rest - 1
      const share = mask.shares[32 * i + bit]!
      sunny += (dappled >>> bit) & 1 ? share * dappleShare(exposed, word, bit) : share
    }
  }
  return sunny
}

/** Mean transmitted share over an area at each step with the sun up. Null without any area. */
const litShares = (exposed: Exposure, mask: AreaMask): readonly number[] | null =>
  mask.total === 0 ? null : exposed.lit.map((_, step) => sunnyCells(exposed, mask, step) / mask.total)

/**
 * Mean share of the direct sun that reaches an area, 0 … 1, at every instant; null where the sun is below the threshold
 * or the area is empty. Good to about the cells that the shade's edge runs through (`cellSizeM`).
 * @param mask of a shape within the slab; the whole slab if left out
 */
export const sunShares = (exposed: Exposure, mask = areaMask(exposed)): (number | null)[] => {
  const shares: (number | null)[] = exposed.instants.map(() => null)
  litShares(exposed, mask)?.forEach((share, step) => {
    shares[exposed.lit[step]!] = share
  })
  return shares
}

/**
 * Minutes of direct sun, ∫ τ dt: of one cell (row · columns + column), or the mean over a shape (over the slab if left
 * out). Null for an empty shape.
 */
export const directSunMinutes = (exposed: Exposure, where?: number | Area): number | null => {
  const { lit, litMin } = exposed
  const shares =
    typeof where === 'number'
      ? lit.map((_, step) => cellShare(exposed, where, step))
      : litShares(exposed, areaMask(exposed, where))
  return shares === null ? null : shares.reduce((sum, share, step) => sum + share * litMin[step]!, 0)
}
