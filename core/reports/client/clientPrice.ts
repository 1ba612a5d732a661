/** What the client pays, as the price list has it. */
import type { Site } from '../../../shared/document/site'
import type { Quantity } from '../../../shared/planJson'
import type { ResolvedSlab } from '../../geometry/resolvedSlab'
import { priceLines } from '../../quantities/priceFigures'
import { printNumber } from '../../units/printNumber'

export interface PriceRow {
  readonly label: string
  readonly value: string
}

export interface ClientPrice {
  readonly lines: readonly PriceRow[]
  readonly total: string
  /** Names of the lines that are not in the total. */
  readonly open: readonly string[]
}

/** An amount with its currency, two places: `$33,610.00`. */
export const printMoney = (amount: number, currency: string): string =>
  `${currency === 'USD' ? '$' : `${currency} `}${printNumber(amount, 2, 2)}`

/** What the client's price is worked out from besides the slabs as drawn. */
export interface PricedPlan {
  /** Of the last plan: joint lengths. */
  readonly figures: readonly Quantity[]
  readonly pourCount: number
}

/**
 * The lines of the price list for the slabs as drawn, each rounded to the cent before they are added; null where none
 * comes to a sum, or they are in two currencies. Lines of things that are not drawn are left out.
 */
export function clientPrice(
  site: Site,
  slabs: readonly ResolvedSlab[],
  { figures, pourCount }: PricedPlan,
): ClientPrice | null {
  const lines = priceLines(site.prices ?? [], { slabs, sources: site.slabs, figures, pourCount })
  const sums = lines.flatMap(({ sum }) => (sum ? [sum] : []))
  const [first] = sums
  if (first === undefined || sums.some(({ unit }) => unit !== first.unit)) return null
  return {
    lines: lines.flatMap(({ price, sum, open }) =>
      open === 'drawing'
        ? []
        : [{ label: price.name, value: sum ? printMoney(sum.value, sum.unit) : 'not priced yet' }],
    ),
    total: printMoney(
      sums.reduce((total, { value }) => total + value, 0),
      first.unit,
    ),
    open: lines.flatMap(({ price, open }) => (open === undefined || open === 'drawing' ? [] : [price.name])),
  }
}
