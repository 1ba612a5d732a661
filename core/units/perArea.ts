import type { UnitSystem } from '../../shared/document/site'
import { squareFeetToM2 } from './convert'

/** A rate of what has no printer of its own, `gal/m²`, by the foot where the site is measured in feet. */
export const perArea = (value: number, unit: string, units: UnitSystem): { value: number; unit: string } =>
  units === 'ftin' && unit.endsWith('/m²')
    ? { value: value * squareFeetToM2(1), unit: unit.replace(/m²$/, 'ft²') }
    : { value, unit }
