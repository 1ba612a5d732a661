import { metersToInches } from '../../../core/units/convert'
import type { UnitSystem } from '../../../shared/document/site'

/** A length for the ear: "12 ft 6 1/2 in", to the eighth of an inch, or "3.81 m". */
export function sayLength(lengthM: number, units: UnitSystem): string {
  if (units === 'metric') return `${Number(lengthM.toFixed(3))} m`
  const eighths = Math.round(Math.abs(metersToInches(lengthM)) * 8)
  const feet = Math.floor(eighths / 96)
  const inches = Math.floor((eighths % 96) / 8)
  const part = eighths % 8
  const [over, under] = part % 4 === 0 ? [part / 4, 2] : part % 2 === 0 ? [part / 2, 4] : [part, 8]
  const fraction = part === 0 ? '' : `${over}/${under}`
  const inchWords = [inches > 0 || (feet === 0 && part === 0) ? String(inches) : '', fraction].filter(Boolean).join(' ')
  const words = [feet > 0 ? `${feet} ft` : '', inchWords ? `${inchWords} in` : ''].filter(Boolean).join(' ')
  return lengthM < 0 && eighths > 0 ? `minus ${words}` : words
}
