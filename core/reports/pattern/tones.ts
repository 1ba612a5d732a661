/** Tints of a finish's color: stones a little darker or lighter, joints a good deal darker. */

/** What a color that is not written as `#rrggbb` is drawn in. */
const unknownColor = '#c9bfae'

const channels = (color: string): readonly number[] => {
  const hex = /^#[0-9a-f]{6}$/i.test(color) ? color : unknownColor
  return [1, 3, 5].map(at => Number.parseInt(hex.slice(at, at + 2), 16))
}

/** `share` 0 … 1 of the way to black (below zero) or white. */
export function tint(color: string, share: number): string {
  const to = share < 0 ? 0 : 255
  return `#${channels(color)
    .map(value => Math.round(value + (to - value) * Math.min(1, Math.abs(share))))
    .map(value => value.toString(16).padStart(2, '0'))
    .join('')}`
}

/** How far a stone may leave the finish's color. */
export const stoneShare = 0.17
/** How far a joint lies toward black. */
export const jointShare = -0.42

/** Stones are drawn in this many tones, so that a sheet stays small. */
const steps = 7

/** The tone of a stone out of a few, as a share for `tint`. */
export const stoneTint = (tone: number, share = stoneShare): number =>
  (Math.round(((tone + 1) / 2) * (steps - 1)) / (steps - 1)) * 2 * share - share
