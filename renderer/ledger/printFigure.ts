/** A figure as the ledger shows it: number and unit in columns of their own, in the site's units. */
import { printAsPriced, type ShownUnits, unitAsPriced } from '../../core/reports/printAsPriced'
import { kgToPounds, metersToFeet } from '../../core/units/convert'
import { isCurrency } from '../../core/units/currency'
import { perArea } from '../../core/units/perArea'
import { printMeasures } from '../../core/units/printMeasures'
import { printNumber } from '../../core/units/printNumber'

export interface PrintedFigure {
  readonly figure: string
  /** Empty where the figure carries its marks: `12′ 6½″`. */
  readonly unit: string
}

const cut = (printed: string): PrintedFigure => {
  const at = printed.lastIndexOf(' ')
  const unit = printed.slice(at + 1)
  return at < 0 || /[′″]$/.test(unit) ? { figure: printed, unit: '' } : { figure: printed.slice(0, at), unit }
}

/** 1 kg/m² in lb/ft², from the exact pound and foot. */
const poundsPerSquareFoot = kgToPounds(1) / metersToFeet(1) ** 2

/** 1 kg/m³ in lb/ft³, from the exact pound and foot. */
const poundsPerCubicFoot = kgToPounds(1) / metersToFeet(1) ** 3

export function printFigure(value: number, unit: string, units: ShownUnits): PrintedFigure {
  if (units === 'asPriced') return { figure: printAsPriced(value, unit), unit: unitAsPriced(value, unit) }
  const print = printMeasures(units)
  switch (unit) {
    case 'm²':
      return cut(print.area(value))
    case 'm':
      return cut(print.length(value))
    case 'm³':
      return cut(print.volume(value))
    case 'kg':
      return units === 'ftin'
        ? { figure: printNumber(kgToPounds(value), 0), unit: 'lb' }
        : { figure: printNumber(value, 0), unit: 'kg' }
    case 'kg/m³':
      return units === 'ftin'
        ? { figure: printNumber(value * poundsPerCubicFoot, 1), unit: 'lb/ft³' }
        : { figure: printNumber(value, 0), unit: 'kg/m³' }
    case 'kg/m²':
      return units === 'ftin'
        ? { figure: printNumber(value * poundsPerSquareFoot, 3), unit: 'lb/ft²' }
        : { figure: printNumber(value, 3), unit: 'kg/m²' }
    case 'loads':
    case 'packages':
      return { figure: printNumber(value, 0), unit: value === 1 ? unit.slice(0, -1) : unit }
    case '1':
      return { figure: printNumber(value, 3), unit: '' }
    default: {
      if (isCurrency(unit)) return { figure: printNumber(value, 2, 2), unit }
      const shown = perArea(value, unit, units)
      return { figure: printNumber(shown.value, /\/(ft²|m²)$/.test(shown.unit) ? 4 : 2), unit: shown.unit }
    }
  }
}

/** The figure as one phrase, its unit after a space. */
export const figurePhrase = (value: number, unit: string, units: ShownUnits): string => {
  const printed = printFigure(value, unit, units)
  return printed.unit === '' ? printed.figure : `${printed.figure} ${printed.unit}`
}
