import type { UnitSystem } from '../../shared/document/site'
import { squareFeetToM2 } from './convert'
import { isUnitPrice } from './currency'

/** A rate of what has no printer of its own, `gal/m²`, by the foot where the site is measured in feet; a price stays as it was typed. */
export const perArea = (value: number, unit: string, units: UnitSystem): { value: number; unit: string } =>
  units === 'ftin' && unit.endsWith('/m²') && !isUnitPrice(unit)
    ? { value: value * squareFeetToM2(1), unit: unit.replace(/m²$/, 'ft²') }
    : { value, unit }
