/** What the client pays, as far as the site's prices say it: prices by area and by length of border. */
import type { Site } from '../../../shared/document/site'
import type { ResolvedSlab } from '../../geometry/resolvedSlab'
import { m2ToSquareFeet, metersToFeet } from '../../units/convert'
import { printNumber } from '../../units/printNumber'

export interface PriceLine {
  readonly label: string
  readonly value: string
}

export interface ClientPrice {
  readonly lines: readonly PriceLine[]
  readonly total: string
}

/** An amount with its currency, two places: `$33,610.00`. */
export const printMoney = (amount: number, currency: string): string =>
  `${currency === 'USD' || currency === '$' ? '$' : `${currency} `}${printNumber(amount, 2, 2)}`

/** What one unit of a price measures on the site; undefined for units that no drawing tells. */
function measureOf(per: string, slabs: readonly ResolvedSlab[]): number | undefined {
  const areaM2 = slabs.reduce((sum, { netAreaM2 }) => sum + netAreaM2, 0)
  const borderM = slabs.flatMap(({ borders }) => borders).reduce((sum, { outerLengthM }) => sum + outerLengthM, 0)
  switch (per) {
    case 'ft²':
      return m2ToSquareFeet(areaM2)
    case 'm²':
      return areaM2
    case 'ft':
      return metersToFeet(borderM)
    case 'm':
      return borderM
    case 'job':
      return 1
    default:
      return undefined
  }
}

/**
 * The sum of the site's prices by the slabs' area, the borders' outer length, or the job; null where it has none of
 * these. Amounts are rounded to the cent, each line before they are added.
 */
export function clientPrice(site: Site, slabs: readonly ResolvedSlab[]): ClientPrice | null {
  const rows = (site.prices ?? []).flatMap(({ name, per, amount, currency }) => {
    const measure = measureOf(per, slabs)
    return measure === undefined ? [] : [{ name, currency, sum: Math.round(measure * amount * 100) / 100 }]
  })
  const [first] = rows
  if (first === undefined || rows.some(({ currency }) => currency !== first.currency)) return null
  return {
    lines: rows.map(({ name, sum, currency }) => ({ label: name, value: printMoney(sum, currency) })),
    total: printMoney(
      rows.reduce((sum, row) => sum + row.sum, 0),
      first.currency,
    ),
  }
}
