import { isCurrency } from '../../core/units/currency'
import type { Site } from '../../shared/document/site'

/** Currency that a price without letters is in: that of the prices which are there already. */
export const siteCurrency = ({ materials = [], prices = [], units }: Site): string =>
  [...materials.flatMap(({ packagePrice }) => packagePrice?.currency ?? []), ...prices.map(({ currency }) => currency)]
    .filter(isCurrency)
    .at(0) ?? (units === 'ftin' ? 'USD' : 'EUR')
