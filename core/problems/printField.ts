import { defaults, type SettingName } from '../../shared/settings'
import type { Measures } from '../units/measures'
import { printNumber } from '../units/printNumber'

/** Sizes small enough to be told in inches or millimeters. */
const sizes = new Set(['thicknessM', 'widthM', 'depthM', 'baseDepthM', 'riserM', 'treadM', 'nosingM', 'overhangM'])

const unitOf = (key: string, isSetting: boolean): string => {
  if (isSetting) return Object.hasOwn(defaults, key) ? defaults[key as SettingName].unit : '1'
  if (key.endsWith('M2')) return 'm²'
  if (key.endsWith('M3')) return 'm³'
  if (key.endsWith('Deg') || key === 'deg') return '°'
  if (/(^|[a-z])(tempC|TempC|airC|highC|lowC|PointC)$/.test(key)) return '°C'
  return /[a-z]M$/.test(key) ? 'm' : '1'
}

/**
 * A number of the document in the unit system of the site. The unit stands at the end of the field's name
 * (`widthM`, `capM2`, `latDeg`), a setting's in its definition.
 */
export const printField = (value: number, key: string, isSetting: boolean, print: Measures): string => {
  switch (unitOf(key, isSetting)) {
    case 'm':
      return sizes.has(key) ? print.size(value) : print.length(value)
    case 'm²':
      return print.area(value)
    case 'm³':
      return print.volume(value)
    case '°C':
      return print.temperature(value)
    case '°':
      return `${printNumber(value, 6)}°`
    default:
      return printNumber(value, 6)
  }
}
