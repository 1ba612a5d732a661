/** The day of each cell in bits: which cells share one history, and how long the sun reaches each. */
import type { Exposure } from './exposure'
import { dappledBits, dappleShare } from './sunShares'

/** Words taken side by side from each plane: one line of cache. */
const lane = 16

/** Turns the 32 words of 32 bits from `at` by their diagonal. Source: H. S. Warren, Hacker's Delight, 2nd ed., 2013,
 * section 7–3. */
const turnBlock = (block: Int32Array, at: number): void => {
  let mask = 0x0000ffff
  for (let size = 16; size !== 0; size >>= 1) {
    for (let start = at; start < at + 32; start += 2 * size)
      for (let low = start; low < start + size; low++) {
        const a = block[low]!
        const b = block[low + size]!
        const swap = ((a >>> size) ^ b) & mask
        block[low + size] = b ^ swap
        block[low] = a ^ (swap << size)
      }
    mask ^= mask << (size >> 1)
  }
}

/** Opaque shade of each cell: bit s of `masks[g][cell]` = shaded at step 32·g + s of the planes. */
export const cellMasks = ({ grid, words, opaque, lit }: Exposure): Int32Array[] => {
  const { columns, rows } = grid
  const planeWords = words * rows
  const block = new Int32Array(32 * lane)
  const any = new Int32Array(lane)
  const groups = Math.ceil(lit.length / 32)
  return Array.from({ length: groups }, (_, group) => {
    const mask = new Int32Array(columns * rows)
    const steps = Math.min(32, lit.length - 32 * group)
    block.fill(0)
    for (let from = 0; from < planeWords; from += lane) {
      const side = Math.min(lane, planeWords - from)
      any.fill(0)
      for (let s = 0; s < steps; s++) {
        const at = (32 * group + s) * planeWords + from
        for (let k = 0; k < side; k++) {
          const bits = opaque[at + k]!
          block[32 * k + s] = bits
          any[k]! |= bits
        }
      }
      for (let k = 0; k < side; k++) {
        if (any[k] === 0) continue
        turnBlock(block, 32 * k)
        const row = Math.floor((from + k) / words)
        const left = (from + k - row * words) << 5
        const cells = Math.min(32, columns - left)
        const at = row * columns + left
        for (let cell = 0; cell < cells; cell++) mask[at + cell] = block[32 * k + cell]!
        block.fill(0, 32 * k + steps, 32 * k + 32)
      }
    }
    return mask
  })
}

/** Minutes of direct sun of every cell, row by row from the grid's lower left; cells off the slab too. */
export const cellSunMinutes = (exposed: Exposure): Float64Array => {
  const { grid, words, opaque, lit, litMin } = exposed
  const { columns, rows } = grid
  const cells = columns * rows
  const minutes = new Float64Array(cells)
  cellMasks(exposed).forEach((mask, group) => {
    for (let byte = 0; byte < 4; byte++) {
      const table = Float64Array.from({ length: 256 }, (_, bits) => {
        let sum = 0
        for (let s = 0; s < 8; s++) if (((bits >> s) & 1) === 0) sum += litMin[32 * group + 8 * byte + s] ?? 0
        return sum
      })
      for (let cell = 0; cell < cells; cell++) minutes[cell]! += table[(mask[cell]! >>> (8 * byte)) & 255]!
    }
  })
  if (exposed.dapple.length === 0) return minutes
  const planeWords = words * rows
  for (let step = 0; step < lit.length; step++)
    for (let here = 0; here < planeWords; here++) {
      const word = step * planeWords + here
      let marks = dappledBits(exposed, word) & ~opaque[word]!
      if (marks === 0) continue
      const row = Math.floor(here / words)
      const left = row * columns + ((here - row * words) << 5)
      while (marks !== 0) {
        const bit = 31 - Math.clz32(marks & -marks)
        marks &= marks - 1
        minutes[left + bit]! -= litMin[step]! * (1 - dappleShare(exposed, word, bit))
      }
    }
  return minutes
}
