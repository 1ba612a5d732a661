/** The bid for a spreadsheet, row by row as it stands on the screen: lines, sums, tax, payments, and what it says besides. */
import type { Bid } from '../../shared/document/bid'
import type { Price } from '../../shared/document/materials'
import type { Quantity } from '../../shared/planJson'
import { type CsvValue, writeCsv } from './csv'

export interface BidData {
  readonly prices: readonly Price[]
  readonly bid: Bid
}

type Row = readonly [
  row: string,
  name: string,
  quantity: CsvValue,
  unit: CsvValue,
  price: CsvValue,
  sum: CsvValue,
  currency: CsvValue,
  remark: CsvValue,
]

const header = ['row', 'name', 'quantity', 'unit', 'price', 'sum', 'currency', 'remark']

const remarkOf = ({ taxFree, amount }: Price, bid: Bid, sum: Quantity | undefined): string | null => {
  if (sum === undefined) return amount === undefined ? 'not in the bid: no price yet' : 'not in the bid'
  return taxFree === true && bid.taxPercent !== undefined ? 'free of tax' : null
}

function lineRow(price: Price, bid: Bid, figures: readonly Quantity[]): Row {
  const sum = figures.find(({ id }) => id === `price-${price.id}`)
  const measured = figures.find(({ id }) => id === `price-${price.id}-quantity`)
  const quantity = measured?.value ?? sum?.inputs.quantity?.value ?? price.quantity ?? (price.per === 'job' ? 1 : null)
  const currency = sum?.unit ?? price.currency
  return [
    'line',
    price.name,
    quantity,
    price.per,
    price.amount ?? null,
    sum?.value ?? null,
    currency,
    remarkOf(price, bid, sum),
  ]
}

/** Figures of the bid with what each is on it; a share where it is one. */
function sumRow({ id, label, value, unit }: Quantity, { taxPercent, payments = [] }: Bid): Row | undefined {
  const found = /^total-bid-(tax-|with-tax-|payment-(\d+)-)?[A-Z]{3}$/.exec(id)
  if (found === null) return undefined
  const [, kind, no] = found
  const row = (name: string, words: string, percent?: number): Row =>
    percent === undefined
      ? [name, words, null, null, null, value, unit, null]
      : [name, words, percent, '%', null, value, unit, null]
  if (kind === undefined) return row('sum', label)
  if (kind === 'tax-') return row('tax', label, taxPercent)
  if (no === undefined) return row('total', label)
  const payment = payments[Number(no) - 1]
  return row('payment', payment?.name ?? label, payment?.percent)
}

const holdsRow = (days: number): Row => ['holds', 'The price holds', days, 'days', null, null, null, null]

const noteRow = (note: string): Row => ['note', note, null, null, null, null, null, null]

/** Undefined where the site has neither prices nor a bid. */
export function bidTable({ prices, bid }: BidData, figures: readonly Quantity[]): string | undefined {
  if (prices.length === 0 && Object.keys(bid).length === 0) return undefined
  return writeCsv(header, [
    ...prices.map(price => lineRow(price, bid, figures)),
    ...figures.map(figure => sumRow(figure, bid)).filter(row => row !== undefined),
    ...(bid.holdsDays === undefined ? [] : [holdsRow(bid.holdsDays)]),
    ...(bid.notes ?? []).map(noteRow),
  ])
}
