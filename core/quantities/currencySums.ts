import { toCent } from '../units/currency'
import { namedInputs } from './namedInputs'
import { plainName } from './plainName'
import { type Quantity, type QuantityOf, quantity, sumFormula, sumInputs } from './quantity'

/** What sums of money come to, a figure for each currency in the order they appear. */
export const currencySums = (
  costs: readonly { readonly name: string; readonly cost: Quantity }[],
  told: (currency: string) => Pick<QuantityOf, 'id' | 'label'>,
): Quantity[] =>
  [...new Set(costs.map(({ cost }) => cost.unit))].map(currency => {
    const own = costs.filter(({ cost }) => cost.unit === currency)
    const inputs = namedInputs(own.map(({ name, cost }) => [plainName(name), cost] as const))
    return quantity({
      ...{ ...told(currency), value: toCent(sumInputs(inputs)), unit: currency },
      ...{ formula: sumFormula(inputs), inputs },
    })
  })
