/** The price list put to the drawing: what each line comes to, their sum, and what it leaves open. */
import type { Bid } from '../../shared/document/bid'
import type { Price } from '../../shared/document/materials'
import type { Finding } from '../../shared/problem'
import { type FinishPart, finishParts } from '../geometry/finishParts'
import { toCent } from '../units/currency'
import { bidFigures, paidPercent } from './bidFigures'
import { currencySums } from './currencySums'
import { namedInputs } from './namedInputs'
import { finishPartNamer, hasFinish, type Priced, type PricedPart, pricedByOf, pricedParts } from './priceParts'
import { type Quantity, quantity, sumFormula, sumInputs } from './quantity'
import { toTheCent } from './toTheCent'

/** Why a line of the list comes to nothing. */
export type OpenReason = 'price' | 'quantity' | 'unit' | 'drawing'

export interface PriceLine {
  readonly price: Price
  /** ISO 4217. */
  readonly currency: string
  /** Empty where the line is open. */
  readonly figures: readonly Quantity[]
  readonly sum: Quantity | undefined
  readonly open: OpenReason | undefined
}

/** Of a line of the list, and of their sum in a currency. */
export const isBidFigure = ({ id }: Pick<Quantity, 'id'>): boolean => /^(price-|total-bid-)/.test(id)

/** The line of the list that a figure of the bid is of; undefined of a sum. */
export const priceOfFigure = (figureId: string, prices: readonly Price[] | undefined): Price | undefined =>
  prices?.find(({ id }) => figureId === `price-${id}` || figureId === `price-${id}-quantity`)

const currencyOf = ({ currency }: Price): string => (currency === '$' ? 'USD' : currency)

const listSource = 'price list of the site'
const measuredSource = 'measured on the drawing, each part to a tenth: own choice'

export function priceLines(prices: readonly Price[], priced: Priced): readonly PriceLine[] {
  return prices.map((price): PriceLine => {
    const currency = currencyOf(price)
    const line = { price, currency, figures: [], sum: undefined }
    const parts = pricedParts(price, priced)
    if (parts === undefined) return { ...line, open: pricedByOf(price) === 'own' ? 'quantity' : 'unit' }
    if (parts.length === 0) return { ...line, open: 'drawing' }
    if (price.amount === undefined) return { ...line, open: 'price' }
    const figures = figuresOf(price, price.amount, currency, parts)
    return { ...line, figures, sum: figures.at(-1), open: undefined }
  })
}

function figuresOf(
  { id, name, per, by }: Price,
  amount: number,
  currency: string,
  parts: readonly PricedPart[],
): readonly Quantity[] {
  const inputs = namedInputs(parts.map(part => [part.name, { value: part.value, unit: per }] as const))
  const measure = sumInputs(inputs)
  // A tenth and a tenth make two tenths.
  const taken = Math.round(measure * 1e6) / 1e6
  const own = { id: `price-${id}`, label: name, unit: currency, source: listSource }
  const isOwn = pricedByOf({ by, per }) === 'own'
  if (isOwn && per === 'job' && taken === 1)
    return [
      quantity({
        ...{ ...own, value: toCent(amount), formula: 'price of the job' },
        inputs: { 'price of the job': [toCent(amount), currency] },
      }),
    ]
  const line = quantity({
    ...own,
    ...toTheCent(taken * amount, currency, 'quantity × price', {
      quantity: [taken, per],
      price: [amount, `${currency}/${per}`],
    }),
  })
  if (isOwn) return [line]
  return [
    quantity({
      ...{ id: `price-${id}-quantity`, label: `${name}, quantity`, value: taken, unit: per },
      ...{ formula: sumFormula(inputs), inputs, source: measuredSource },
    }),
    line,
  ]
}

/** Lines, their sum in each currency, and what the bid makes of it. */
export function priceFigures(lines: readonly PriceLine[], bid: Bid = {}): Quantity[] {
  const closed = lines.flatMap(({ price, sum }) => (sum ? [{ name: price.name, cost: sum }] : []))
  const isPart = lines.some(({ open }) => open === 'price' || open === 'quantity' || open === 'unit')
  const sums = currencySums(closed, currency => ({
    id: `total-bid-${currency}`,
    label: isPart ? 'Bid so far, by the price list' : 'Bid by the price list',
  }))
  return [...lines.flatMap(({ figures }) => figures), ...sums, ...sums.flatMap(sum => bidFigures(lines, sum, bid))]
}

/** What the bid leaves for crew, machines, overhead and profit, in each currency that both are in. */
export function bidOverMaterials(figures: readonly Quantity[]): Quantity[] {
  return figures.flatMap(bid => {
    const currency = /^total-bid-([A-Z]{3})$/.exec(bid.id)?.[1]
    const materials = figures.find(({ id }) => id === `total-materials-${currency}`)
    if (currency === undefined || !materials) return []
    return [
      quantity({
        ...{ id: `total-bid-over-${currency}`, label: 'Bid less the priced materials', unit: currency },
        value: toCent(bid.value - materials.value),
        formula: 'bid − priced materials',
        inputs: { bid: [bid.value, currency], 'priced materials': [materials.value, currency] },
      }),
    ]
  })
}

/** Lines that come to nothing, sums that are not added, and what is drawn without a price. */
export function checkPrices(lines: readonly PriceLine[], priced: Priced, { payments = [] }: Bid = {}): Finding[] {
  const found = lines.flatMap(({ price, open }): Finding[] =>
    open === undefined
      ? []
      : [
          {
            ...{ code: 'priceOpen', severity: open === 'drawing' ? 'note' : 'check' },
            values: { name: price.name, per: price.per, lacks: open },
          },
        ],
  )
  const currencies = [...new Set(lines.flatMap(({ sum }) => (sum ? [sum.unit] : [])))]
  if (currencies.length > 1)
    found.push({ code: 'priceCurrencies', severity: 'check', values: { currencies: currencies.join(', ') } })
  if (payments.length > 0 && paidPercent(payments) !== 100)
    found.push({ code: 'paymentsUneven', severity: 'check', values: { percent: paidPercent(payments) } })
  return [...found, ...unpricedParts(lines, priced)]
}

/** A bid that goes by no measure of the slabs, a lump sum, leaves nothing of them out. */
function unpricedParts(lines: readonly PriceLine[], { slabs, sources }: Priced): Finding[] {
  const prices = lines.map(({ price }) => ({ by: pricedByOf(price), finishId: price.finishId }))
  const hasSteps = prices.some(({ by }) => by === 'steps')
  if (!hasSteps && !prices.some(({ by }) => hasFinish(by))) return []
  const isPriced = ({ kind, finishId }: FinishPart): boolean =>
    prices.some(
      price =>
        (price.by === 'slab' || price.by === kind) && (price.finishId === undefined || price.finishId === finishId),
    )
  return slabs.flatMap(slab => {
    const source = sources.find(({ id }) => id === slab.id)
    const nameOf = finishPartNamer(source)
    const open = finishParts(slab).filter(part => part.areaM2 > 0 && !isPriced(part))
    const risers = hasSteps ? 0 : (source?.steps ?? []).reduce((sum, own) => sum + own.risers, 0)
    return [
      ...open.map(
        (part): Finding => ({
          ...{ code: 'partUnpriced', severity: 'check' },
          values: {
            slab: slab.name,
            what: part.kind === 'field' ? 'the field' : nameOf(part),
            areaM2: part.areaM2,
          },
        }),
      ),
      ...(risers > 0
        ? [
            {
              ...{ code: 'stepsUnpriced' as const, severity: 'check' as const },
              values: { slab: slab.name, risers },
            },
          ]
        : []),
    ]
  })
}
