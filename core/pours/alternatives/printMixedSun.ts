import { printNumber } from '../../units/printNumber'
import type { AlternativeFigures } from './alternative'

/** How long pours lie part in sun and part in shade between placing and stamping; null where it was not looked at. */
export function printMixedSun({ mixedSunMin, mixedSunWorstMin }: AlternativeFigures): string | null {
  if (mixedSunMin === null || mixedSunWorstMin === null) return null
  if (mixedSunMin < 1) return 'none'
  const all = `${printNumber(mixedSunMin / 60, 1)} h`
  // Of one pour, or where all of it is in one.
  if (mixedSunMin - mixedSunWorstMin < 1) return all
  return `${all}, worst ${printNumber(mixedSunWorstMin / 60, 1)} h`
}
