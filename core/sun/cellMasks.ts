/** The day of each cell in bits: which cells share one history, and how long the sun reaches each. */
import type { Exposure } from './exposure'
import { dappledBits, dappleShare } from './sunShares'

/** Turns 32 words of 32 bits by their diagonal. Source: H. S. Warren, Hacker's Delight, 2nd ed., 2013, section 7–3. */
const turnBlock = (block: Int32Array): void => {
  let mask = 0x0000ffff
  for (let size = 16; size !== 0; size >>= 1, mask ^= mask << size)
    for (let k = 0; k < 32; k = ((k | size) + 1) & ~size) {
      const swap = ((block[k]! >>> size) ^ block[k | size]!) & mask
      block[k | size]! ^= swap
      block[k]! ^= swap << size
    }
}

/** Opaque shade of each cell: bit s of `masks[g][cell]` = shaded at step 32·g + s of the planes. */
export const cellMasks = ({ grid, words, opaque, lit }: Exposure): Int32Array[] => {
  const { columns, rows } = grid
  const planeWords = words * rows
  const block = new Int32Array(32)
  const groups = Math.ceil(lit.length / 32)
  const masks = Array.from({ length: groups }, () => new Int32Array(columns * rows))
  for (let here = 0; here < planeWords; here++) {
    const row = Math.floor(here / words)
    const left = (here - row * words) << 5
    const cells = Math.min(32, columns - left)
    for (let group = 0; group < groups; group++) {
      const steps = Math.min(32, lit.length - 32 * group)
      let any = 0
      for (let s = 0; s < 32; s++) {
        const bits = s < steps ? opaque[(32 * group + s) * planeWords + here]! : 0
        block[s] = bits
        any |= bits
      }
      if (any === 0) continue
      turnBlock(block)
      const mask = masks[group]!
      const at = row * columns + left
      for (let cell = 0; cell < cells; cell++) mask[at + cell] = block[cell]!
    }
  }
  return masks
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
