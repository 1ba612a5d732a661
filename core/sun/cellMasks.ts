/** The day of each cell in bits: which cells share one history, and how long the sun reaches each. */
import type { Exposure } from './exposure'
import { dappledBits, dappleShare } from './sunShares'

/**
 * Two steps of turning a block: of each four words `size` apart, those 2 · size apart change halves off the diagonal,
 * then those `size` apart. Words are read and written once for both.
 */
const swapQuarters = (block: Int32Array, size: number, wide: number, narrow: number): void => {
  for (let first = 0; first < 32; first = (first + 3 * size + 1) & ~(3 * size)) {
    let a = block[first]!
    let b = block[first + size]!
    let c = block[first + 2 * size]!
    let d = block[first + 3 * size]!
    let swap = ((a >>> (2 * size)) ^ c) & wide
    c ^= swap
    a ^= swap << (2 * size)
    swap = ((b >>> (2 * size)) ^ d) & wide
    d ^= swap
    b ^= swap << (2 * size)
    swap = ((a >>> size) ^ b) & narrow
    block[first] = a ^ (swap << size)
    block[first + size] = b ^ swap
    swap = ((c >>> size) ^ d) & narrow
    block[first + 2 * size] = c ^ (swap << size)
    block[first + 3 * size] = d ^ swap
  }
}

/** Turns 32 words of 32 bits by their diagonal, into `cells` words of `into` from `to`.
 * Source: H. S. Warren, Hacker's Delight, 2nd ed., 2013, section 7–3. */
const turnBlock = (block: Int32Array, into: Int32Array, to: number, cells: number): void => {
  swapQuarters(block, 8, 0x0000ffff, 0x00ff00ff)
  swapQuarters(block, 2, 0x0f0f0f0f, 0x33333333)
  for (let cell = 0; cell < cells; cell += 2) {
    const a = block[cell]!
    const b = block[cell + 1]!
    const swap = ((a >>> 1) ^ b) & 0x55555555
    into[to + cell] = a ^ (swap << 1)
    if (cell + 1 < cells) into[to + cell + 1] = b ^ swap
  }
}

/** Opaque shade of each cell: bit s of `masks[g][cell]` = shaded at step 32·g + s of the planes. */
export const cellMasks = ({ grid, words, opaque, lit }: Exposure): Int32Array[] => {
  const { columns, rows } = grid
  const planeWords = words * rows
  const block = new Int32Array(32)
  return Array.from({ length: Math.ceil(lit.length / 32) }, (_, group) => {
    const mask = new Int32Array(columns * rows)
    const from = 32 * group
    const steps = Math.min(32, lit.length - from)
    for (let row = 0; row < rows; row++)
      for (let word = 0; word < words; word++) {
        let any = 0
        for (let s = 0, at = from * planeWords + row * words + word; s < steps; s++, at += planeWords) {
          const bits = opaque[at]!
          block[s] = bits
          any |= bits
        }
        if (any === 0) continue
        for (let s = steps; s < 32; s++) block[s] = 0
        const left = word << 5
        turnBlock(block, mask, row * columns + left, Math.min(32, columns - left))
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
