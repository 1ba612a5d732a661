/** What an exposure says about an area, a cell, or all cells. */
import { type Area, type Exposure, weightsOf } from './exposure'

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

/** Sum of weight times transmitted share at a step; `within` lists the words with any weight, in order. */
function sunnyWeight(
  exposed: Exposure,
  weights: Float64Array,
  full: Int32Array,
  partial: Int32Array,
  within: readonly number[],
  step: number,
): number {
  const { grid, words, opaque, dapple } = exposed
  const first = step * words * grid.rows
  let sunny = 0
  for (const here of within) {
    const clear = ~opaque[first + here]!
    const dappled = dapple.length === 0 ? 0 : dappledBits(exposed, first + here)
    sunny += bitCount(full[here]! & clear & ~dappled)
    let rest = clear & (partial[here]! | (full[here]! & dappled))
    if (rest === 0) continue
    const row = Math.floor(here / words)
    const corner = row * grid.columns + ((here - row * words) << 5)
    while (rest !== 0) {
      const bit = 31 - Math.clz32(rest & -rest)
      rest &= rest - 1
      const weight = weights[corner + bit]!
      sunny += (dappled >>> bit) & 1 ? weight * dappleShare(exposed, first + here, bit) : weight
    }
  }
  return sunny
}

/** Mean transmitted share over the weighted cells at each step with the sun up. Null without any area. */
const litShares = (exposed: Exposure, weights: Float64Array): readonly number[] | null => {
  const { grid, words, lit } = exposed
  const { columns, rows } = grid
  const planeWords = words * rows
  const full = new Int32Array(planeWords)
  const partial = new Int32Array(planeWords)
  let total = 0
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const weight = weights[row * columns + column]!
      if (weight === 0) continue
      total += weight
      const target = weight === 1 ? full : partial
      target[row * words + (column >> 5)]! |= 1 << (column & 31)
    }
  if (total === 0) return null
  const within: number[] = []
  for (let here = 0; here < planeWords; here++) if ((full[here]! | partial[here]!) !== 0) within.push(here)
  return lit.map((_, step) => sunnyWeight(exposed, weights, full, partial, within, step) / total)
}

/**
 * Mean share of the direct sun that reaches an area, 0 … 1, at every instant; null where the sun is below the threshold
 * or the area is empty. Good to about the cells that the shade's edge runs through (`cellSizeM`).
 * @param area a shape within the slab, or the whole slab if left out
 */
export const sunShares = (exposed: Exposure, area?: Area): (number | null)[] => {
  const shares: (number | null)[] = exposed.instants.map(() => null)
  litShares(exposed, weightsOf(exposed, area))?.forEach((share, step) => {
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
      : litShares(exposed, weightsOf(exposed, where))
  return shares === null ? null : shares.reduce((sum, share, step) => sum + share * litMin[step]!, 0)
}
