import type { UnitSystem } from '../../shared/document/site'
import { m2ToSquareFeet, m3ToCubicYards, metersToInches } from './convert'
import type { Measures } from './measures'
import { printNumber } from './printNumber'

const eighthGlyphs = ['', '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞'] as const

/** Below this many feet a size is told in inches alone: `18″`, not `1′ 6″`. */
const sizeInInchesFt = 4

const printInches = (eighths: number): string => {
  const whole = Math.floor(eighths / 8)
  const glyph = eighthGlyphs[eighths % 8] ?? ''
  return `${whole === 0 && glyph !== '' ? '' : whole}${glyph}″`
}

/** Beside feet the whole inches always stand, `98′ 0⅜″`: the fraction alone would be read as one of the feet. */
const printFeet = (eighths: number): string =>
  `${printNumber(Math.floor(eighths / 96), 0)}′ ${Math.floor((eighths % 96) / 8)}${eighthGlyphs[eighths % 8] ?? ''}″`

const printFeetAndInches = (lengthM: number, inchesBelowFt: number): string => {
  const eighths = Math.round(Math.abs(metersToInches(lengthM)) * 8)
  const sign = lengthM < 0 && eighths > 0 ? '−' : ''
  if (eighths < inchesBelowFt * 96) return sign + printInches(eighths)
  return sign + printFeet(eighths)
}

/** One decimal below a thousand, none above; a small area keeps two digits rather than read as nothing. */
const printArea = (value: number): string => {
  const size = Math.abs(value)
  if (size >= 999.95) return printNumber(value, 0)
  return printNumber(value, size >= 0.95 || size === 0 ? 1 : 1 - Math.max(-9, Math.floor(Math.log10(size))))
}

const partsOf = (clock: string): readonly [hour: number, minute: string] => {
  const [hour = '0', minute = '00'] = clock.split(':')
  return [Number(hour), minute]
}

const feetAndInches: Measures = {
  length: lengthM => printFeetAndInches(lengthM, 1),
  size: lengthM => printFeetAndInches(lengthM, sizeInInchesFt),
  area: areaM2 => `${printArea(m2ToSquareFeet(areaM2))} ft²`,
  volume: volumeM3 => `${printNumber(m3ToCubicYards(volumeM3), 2)} yd³`,
  temperature: tempC => `${printNumber(tempC * 1.8 + 32, 0)} °F`,
  time: clock => {
    const [hour, minute] = partsOf(clock)
    return `${hour % 12 || 12}:${minute} ${hour < 12 ? 'am' : 'pm'}`
  },
}

const metric: Measures = {
  // Without the comma of thousands, which would be read as a decimal one where meters are used.
  length: lengthM => `${printNumber(lengthM, 3, 2).replaceAll(',', '')} m`,
  size: lengthM => `${printNumber(lengthM * 1000, 0)} mm`,
  area: areaM2 => `${printArea(areaM2)} m²`,
  volume: volumeM3 => `${printNumber(volumeM3, 2)} m³`,
  temperature: tempC => `${printNumber(tempC, 0)} °C`,
  time: clock => partsOf(clock).join(':'),
}

/**
 * The printer of a unit system. Lengths round to the nearest 1/8 in or 1 mm, areas to 0.1 (whole from 1,000 up),
 * volumes to 0.01, temperatures to a degree. Takes any finite SI value.
 */
export const printMeasures = (system: UnitSystem): Measures => (system === 'ftin' ? feetAndInches : metric)
