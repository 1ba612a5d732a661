import type { TapeTie } from '../../../core/geometry/field/tapeTie'
import { tapeWithinM } from '../../../core/geometry/field/tapeWithin'
import type { Measures } from '../../../core/units/measures'

/** Three tapes that agree within this have closed; beyond it one of them was misread. 1/2 in, own choice. */
const closesWithinM = 0.0127

/** How many times better it must fit on the other side to be offered there. Own choice. */
const fitsBetter = 4

export interface TieWords {
  readonly words: string
  /** The third tape fits the point on the other side of the two known ones far better than the one that was set. */
  readonly fitsOtherSide: boolean
}

/** What is told of a tied point: how its third tape closes, and on which side. `no` counts the points from 1. */
export function tieWords({ closingErrorM, otherSide }: TapeTie, no: number, print: Measures): TieWords {
  const set = `Point ${no} is set`
  if (closingErrorM === undefined)
    return { words: `${set}. A check tape from a third point would tell how well it closes.`, fitsOtherSide: false }
  const offM = Math.abs(closingErrorM)
  if (offM < tapeWithinM) return { words: `${set}. The check tape agrees.`, fitsOtherSide: false }
  if (offM <= closesWithinM)
    return { words: `${set}. The check tape closes within ${print.size(offM)}.`, fitsOtherSide: false }
  const misses = `${set}, but the check tape is ${print.size(offM)} ${closingErrorM > 0 ? 'longer' : 'shorter'} than the two others make it`
  const otherM = Math.abs(otherSide?.closingErrorM ?? Infinity)
  if (otherM < offM / fitsBetter)
    return {
      words: `${misses}. On the other side of the two points it would ${otherM < tapeWithinM ? 'agree' : `close within ${print.size(otherM)}`}.`,
      fitsOtherSide: true,
    }
  return { words: `${misses}. Take the point back and measure all three again.`, fitsOtherSide: false }
}
