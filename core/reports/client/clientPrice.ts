/** What the client pays, as the price list has it. */
import type { Site } from '../../../shared/document/site'
import type { Quantity } from '../../../shared/planJson'
import type { ResolvedSlab } from '../../geometry/resolvedSlab'
import { paidPercent } from '../../quantities/bidFigures'
import { priceFigures, priceLines } from '../../quantities/priceFigures'
import { printNumber } from '../../units/printNumber'

export interface PriceRow {
  readonly label: string
  readonly value: string
}

export interface ClientPrice {
  readonly lines: readonly PriceRow[]
  /** The sum before tax and the tax; empty where none is added. */
  readonly tax: readonly PriceRow[]
  readonly total: string
  /** Empty where none are entered, or they do not come to 100 %. */
  readonly payments: readonly PriceRow[]
  /** Names of the lines that are not in the total. */
  readonly open: readonly string[]
}

/** What the sum of the price is called. */
export const totalWords = ({ open, tax }: Pick<ClientPrice, 'open' | 'tax'>): string =>
  `Price${open.length === 0 ? '' : ' so far'}${tax.length === 0 ? '' : ', with tax'}`

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
  const { prices = [], bid = {} } = site
  const lines = priceLines(prices, { slabs, sources: site.slabs, figures, pourCount })
  const sums = lines.flatMap(({ sum }) => (sum ? [sum] : []))
  const [first] = sums
  if (first === undefined || sums.some(({ unit }) => unit !== first.unit)) return null
  const currency = first.unit
  const bidden = priceFigures(lines, bid)
  const money = (id: string): string | undefined => {
    const found = bidden.find(own => own.id === `total-bid-${id}${currency}`)
    return found && printMoney(found.value, currency)
  }
  const [sum = '', tax, withTax] = [money(''), money('tax-'), money('with-tax-')]
  const payments = bid.payments ?? []
  return {
    lines: lines.flatMap(({ price, sum: own, open }) =>
      open === 'drawing'
        ? []
        : [
            {
              label: tax !== undefined && price.taxFree ? `${price.name}, free of tax` : price.name,
              value: own ? printMoney(own.value, currency) : 'not priced yet',
            },
          ],
    ),
    tax:
      tax === undefined
        ? []
        : [
            { label: 'Before tax', value: sum },
            { label: `${bid.taxName ?? 'Tax'}, ${printNumber(bid.taxPercent ?? 0, 6)} %`, value: tax },
          ],
    total: withTax ?? sum,
    payments:
      paidPercent(payments) === 100
        ? payments.map(({ name, percent }, i) => ({
            label: `${name}, ${printNumber(percent, 6)} %`,
            value: money(`payment-${i + 1}-`) ?? '',
          }))
        : [],
    open: lines.flatMap(({ price, open }) => (open === undefined || open === 'drawing' ? [] : [price.name])),
  }
}
