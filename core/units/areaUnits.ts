/** The unit areas are typed in. */
import type { UnitSystem } from '../../shared/document/site'
import { metersToFeet } from './convert'

export const areaUnits: Readonly<Record<UnitSystem, { readonly name: string; readonly m2: number }>> = {
  ftin: { name: 'ft²', m2: 1 / metersToFeet(1) ** 2 },
  metric: { name: 'm²', m2: 1 },
}
