/** Measures and money of the price list, as the bid has them: a measure in the unit of its price, never converted. */
import type { UnitSystem } from '../../shared/document/site'
import type { Quantity } from '../../shared/planJson'
import { isBulkFigure } from '../quantities/bulkPrice'
import { isBidFigure } from '../quantities/priceFigures'
import { isCurrency, isUnitPrice } from '../units/currency'
import { printNumber } from '../units/printNumber'

/** How a figure is printed: in the measures of the site, or as the price list has them. */
export type ShownUnits = UnitSystem | 'asPriced'

export const shownUnits = (quantity: Pick<Quantity, 'id'>, units: UnitSystem): ShownUnits =>
  isBidFigure(quantity) || isBulkFigure(quantity) ? 'asPriced' : units

const tenths: ReadonlySet<string> = new Set(['ft²', 'm²', 'ft', 'm'])

/** The unit beside such a figure. */
export const unitAsPriced = (value: number, unit: string): string => (unit === 'riser' && value !== 1 ? 'risers' : unit)

/** The figure without its unit: areas and lengths to a tenth, money to the cent, counts as they were typed. */
export function printAsPriced(value: number, unit: string): string {
  if (isCurrency(unit)) return printNumber(value, 2, 2)
  if (isUnitPrice(unit)) return printNumber(value, 4, 2)
  if (unit === '%') return printNumber(value, 6)
  return tenths.has(unit) ? printNumber(value, 1, 1) : printNumber(value, 2)
}
