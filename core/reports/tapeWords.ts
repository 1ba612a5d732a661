/** What a tape dimension says: its length on the drawing, and what the tape said in the field with the difference. */
import type { TapeDimension } from '../../shared/document/shown'
import { tapeLength } from '../document/tapeEnds'
import type { Measures } from '../units/measures'

/** Less than this is nothing a tape can tell: half an eighth of an inch. */
const sameM = 0.0016

/** The first line is the drawing's; the second stands only where the field has been measured. */
export function tapeWords(tape: TapeDimension, print: Measures): readonly [string] | readonly [string, string] {
  const drawnM = tapeLength(tape)
  const words = print.length(drawnM)
  if (tape.measuredM === undefined) return [words]
  const offM = tape.measuredM - drawnM
  const off =
    Math.abs(offM) < sameM ? 'as drawn' : `${print.size(Math.abs(offM))} ${offM > 0 ? 'longer' : 'shorter'} than drawn`
  return [words, `field ${print.length(tape.measuredM)}, ${off}`]
}
