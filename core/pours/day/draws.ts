/** Seeded draws for the chance of missing a strip: the same plan has the same chance everywhere. */

/** Mulberry32 (T. Ettinger, 2017, public domain): a small generator of 32 bits, plenty for some hundred draws. */
export function seededDraws(seed: number): () => number {
  let state = seed | 0
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

/** Standard normal: G. E. P. Box and M. E. Muller, Annals of Mathematical Statistics 29, 1958. */
export const drawNormal = (draw: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - draw())) * Math.cos(2 * Math.PI * draw())
