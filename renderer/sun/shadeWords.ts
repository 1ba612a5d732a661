/** What the shade line does on a slab, as the ledger and the stage bar say it. */
import type { ShadeLineTimes } from '../../core/sun/shadeLineTimes'

export interface ShadeWords {
  /** When all of the slab comes into sun for the first time; null if some of it is always in shade. */
  readonly leavesMs: number | null
  /** When shade first comes back after that. */
  readonly returnsMs: number | null
  readonly firstSunMs: number | null
  readonly lastSunMs: number | null
}

export function shadeWords({ changes, firstSunMs, lastSunMs }: ShadeLineTimes): ShadeWords {
  const leaves = changes.findIndex(({ to }) => to === 'sun')
  return {
    leavesMs: changes[leaves]?.ms ?? null,
    returnsMs: leaves < 0 ? null : (changes[leaves + 1]?.ms ?? null),
    firstSunMs,
    lastSunMs,
  }
}
