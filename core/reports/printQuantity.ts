import type { UnitSystem } from '../../shared/document/site'
import { isCurrency } from '../units/currency'
import { perArea } from '../units/perArea'
import { printMeasures } from '../units/printMeasures'
import { printNumber } from '../units/printNumber'
import { printAsPriced, type ShownUnits, unitAsPriced } from './printAsPriced'

/** Avoirdupois, exact: 1 lb = 0.45359237 kg (NIST Handbook 44, Appendix C). A short ton is 2,000 lb. */
const poundKg = 0.45359237

function printMass(massKg: number, units: UnitSystem): string {
  if (units === 'metric') return massKg >= 1000 ? `${printNumber(massKg / 1000, 2)} t` : `${printNumber(massKg, 0)} kg`
  const pounds = massKg / poundKg
  return pounds >= 2000 ? `${printNumber(pounds / 2000, 1)} tons` : `${printNumber(pounds, 0)} lb`
}

/** A value in SI put into the measures of the site; a unit without a printer is shown as it is. */
export function printQuantity(value: number, unit: string, units: ShownUnits): string {
  if (units === 'asPriced') return `${printAsPriced(value, unit)} ${unitAsPriced(value, unit)}`
  const measures = printMeasures(units)
  switch (unit) {
    case 'm':
      return measures.length(value)
    case 'm²':
      return measures.area(value)
    case 'm³':
      return measures.volume(value)
    case 'kg':
      return printMass(value, units)
    case 'kg/m³':
      return units === 'metric'
        ? `${printNumber(value, 0)} kg/m³`
        : `${printNumber((value / poundKg) * 0.3048 ** 3, 1)} lb/ft³`
    case 'kg/m²':
      return units === 'metric'
        ? `${printNumber(value, 3)} kg/m²`
        : `${printNumber((value / poundKg) * 0.3048 ** 2, 3)} lb/ft²`
    case 'loads':
    case 'packages':
      return `${printNumber(value, 0)} ${value === 1 ? unit.slice(0, -1) : unit}`
    case '1':
      return printNumber(value, 4)
    default: {
      if (isCurrency(unit)) return `${printNumber(value, 2, 2)} ${unit}`
      const shown = perArea(value, unit, units)
      return `${printNumber(shown.value, shown.unit === unit ? 3 : 4)} ${shown.unit}`
    }
  }
}
