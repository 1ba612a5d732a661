import { tapeWithinM } from '../../../core/geometry/field/tapeWithin'
import type { Traverse } from '../../../core/geometry/field/traverse'
import type { Measures } from '../../../core/units/measures'

/** Turns are printed to a tenth. */
const turnsWithinDeg = 0.05

/** What is left open by a walk that may be drawn, and that it is spread. */
export function walkWords({ closingErrorM, walkedM, turnErrorDeg }: Traverse, print: Measures): string {
  const turns =
    turnErrorDeg !== undefined && Math.abs(turnErrorDeg) > turnsWithinDeg
      ? `The turns miss a full turn by ${Math.abs(turnErrorDeg).toFixed(1)}°, shared by all corners. `
      : ''
  return closingErrorM < tapeWithinM
    ? `${turns}The walk closes.`
    : `${turns}The walk misses its start by ${print.size(closingErrorM)} over ${print.length(walkedM)}, spread over its corners.`
}
