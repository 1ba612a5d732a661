/** What is added to the sum of the price list, and how it is paid. */
import type { Bid, Payment } from '../../shared/document/bid'
import { toCent } from '../units/currency'
import { namedInputs } from './namedInputs'
import { plainName } from './plainName'
import type { PriceLine } from './priceFigures'
import { type Quantity, quantity } from './quantity'
import { toTheCent } from './toTheCent'

const percent = (value: number): readonly [number, string] => [value, '%']

/** What all payments come to, in percent. */
export const paidPercent = (payments: readonly Payment[]): number =>
  Math.round(payments.reduce((sum, own) => sum + own.percent, 0) * 1e6) / 1e6

/**
 * Tax on the lines that are taxed, rounded to the cent once; the bid with it; each payment to the cent, the last with a
 * share what is left where they come to 100 %. `sum` = a sum of the price list. Half a cent goes up: Streamlined Sales
 * and Use Tax Agreement, section 324 (from memory). What is taxed and at what rate is for local rules.
 */
export function bidFigures(lines: readonly PriceLine[], sum: Quantity, bid: Bid): Quantity[] {
  const currency = sum.unit
  const taxed = lines.reduce(
    (total, line) => (line.sum?.unit === currency && !line.price.taxFree ? total + line.sum.value : total),
    0,
  )
  const tax =
    bid.taxPercent === undefined
      ? undefined
      : quantity({
          ...{ id: `total-bid-tax-${currency}`, label: bid.taxName ?? 'Tax' },
          ...toTheCent((toCent(taxed) * bid.taxPercent) / 100, currency, 'taxed lines × tax rate ÷ whole', {
            'taxed lines': [toCent(taxed), currency],
            'tax rate': percent(bid.taxPercent),
            whole: percent(100),
          }),
          source: 'tax as entered for the site: local rules say what is taxed, and at what rate',
        })
  const whole =
    tax === undefined
      ? sum
      : quantity({
          ...{ id: `total-bid-with-tax-${currency}`, label: `${sum.label}, with tax` },
          ...{ value: toCent(sum.value + tax.value), unit: currency, formula: 'bid + tax' },
          inputs: { bid: [sum.value, currency], tax: [tax.value, currency] },
        })
  return [...(tax === undefined ? [] : [tax, whole]), ...paymentFigures(bid.payments ?? [], whole)]
}

function paymentFigures(payments: readonly Payment[], whole: Quantity): Quantity[] {
  const isWhole = paidPercent(payments) === 100
  const last = payments.findLastIndex(own => own.percent > 0)
  const paid: Quantity[] = []
  for (const [i, { name, percent: share }] of payments.entries()) {
    const own = { id: `total-bid-payment-${i + 1}-${whole.unit}`, label: `Payment: ${name}`, unit: whole.unit }
    const isRest = isWhole && i > 0 && i === last
    const inputs = namedInputs([
      ['bid', whole],
      ...paid.map((before, n) => [plainName(payments[n]!.name), before] as const),
    ])
    paid.push(
      isRest
        ? quantity({
            ...{ ...own, formula: Object.keys(inputs).join(' − '), inputs },
            value: toCent(paid.reduce((left, { value }) => left - value, whole.value)),
          })
        : quantity({
            ...own,
            ...toTheCent((whole.value * share) / 100, whole.unit, 'bid × share ÷ whole', {
              bid: [whole.value, whole.unit],
              share: percent(share),
              whole: percent(100),
            }),
          }),
    )
  }
  return paid
}
