import type { UnitSystem } from '../../shared/document/site'
import { feetToMeters, inchesToMeters } from './convert'
import { printMeasures } from './printMeasures'

/**
 * Between which sizes (m) a small measure of a slab lies at any work of the trade. Wide on purpose: what lies outside is
 * a slip, most often inches that were read as feet. Common practice, no source.
 */
export const tradeSizes = {
  thickness: { what: 'a slab', leastM: inchesToMeters(1), mostM: feetToMeters(2) },
  base: { what: 'a base', leastM: 0, mostM: feetToMeters(3) },
  thickenedDepth: { what: 'a thickened edge', leastM: inchesToMeters(2), mostM: feetToMeters(4) },
  thickenedWidth: { what: 'the width of a thickened edge', leastM: inchesToMeters(2), mostM: feetToMeters(5) },
  border: { what: 'the width of a border', leastM: inchesToMeters(1), mostM: feetToMeters(5) },
  band: { what: 'the width of a band', leastM: inchesToMeters(1), mostM: feetToMeters(10) },
  riser: { what: 'a riser', leastM: inchesToMeters(2), mostM: feetToMeters(1) },
  tread: { what: 'a tread', leastM: inchesToMeters(6), mostM: feetToMeters(8) },
  nosing: { what: 'a nosing', leastM: 0, mostM: inchesToMeters(4) },
  overhang: { what: 'an overhang', leastM: 0, mostM: feetToMeters(12) },
} as const

export type TradeSize = keyof typeof tradeSizes

const bare = /^(?:\d+(?:\.\d+)?|\.\d+)$/
/** What is left at a limit by the rounding of a conversion. */
const slackM = 1e-9

/**
 * Says why a typed size can hardly be meant, and how the small unit is typed where a figure without one would then fit;
 * `null` where the size may stand. `text` = as it was typed, `lengthM` = as it was read, in meters.
 */
export function oddSize(size: TradeSize, text: string, lengthM: number, system: UnitSystem): string | null {
  const { what, leastM, mostM } = tradeSizes[size]
  const fits = (m: number) => m >= leastM - slackM && m <= mostM + slackM
  if (fits(lengthM)) return null
  const print = printMeasures(system)
  const told = `${print.length(lengthM)} is far from any size of ${what}, ${print.size(leastM)} to ${print.size(mostM)}.`
  const figure = text.trim()
  if (!bare.test(figure)) return told
  const [unit, word, unitM] = system === 'ftin' ? ['in', 'inches', inchesToMeters(1)] : ['mm', 'millimeters', 0.001]
  return fits(Number(figure) * unitM) ? `${told} For ${figure} ${word} type ${figure}${unit}.` : told
}
