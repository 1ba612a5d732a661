/** How the hands are told off for the day. */

export interface CrewSplit {
  /** Place first, stamp afterwards. */
  readonly placers: number
  /** Hardener, floats, touch-up. */
  readonly color: number
  /** Border alone; 0 where the stampers print it. */
  readonly border: number
}

/** Two strike off, one throws color: fewer cannot do it. */
export const leastHands = 3

/**
 * Every way to tell off up to `hands` hands: two at least place and stamp, one at least colors, two at most print a
 * border alone. Ways that leave a hand idle are in, so that what fewer hands can do, more can.
 */
export function crewSplits(hands: number, hasBorder: boolean): CrewSplit[] {
  const splits: CrewSplit[] = []
  for (let used = hands; used >= leastHands; used--)
    for (let border = 0; border <= (hasBorder ? 2 : 0); border++)
      for (let color = 1; color <= Math.min(4, used - border - 2); color++)
        splits.push({ placers: used - border - color, color, border })
  return splits
}
