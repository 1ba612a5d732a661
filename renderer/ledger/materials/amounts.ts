/** Amounts of a material as they are typed and shown: a mass in the pounds or kilograms of the site, else as its label has it. */
import { kgToPounds, poundsToKg, squareFeetToM2 } from '../../../core/units/convert'
import { isCurrency } from '../../../core/units/currency'
import { printNumber } from '../../../core/units/printNumber'
import type { UnitSystem } from '../../../shared/document/site'

/** Unit that is shown, and how many of it are one of the document's. */
export const shownUnit = (unit: string, units: UnitSystem): { readonly name: string; readonly by: number } =>
  unit === 'kg' && units === 'ftin' ? { name: 'lb', by: kgToPounds(1) } : { name: unit, by: 1 }

const figure = /^(\d+(?:\.\d+)?|\.\d+)\s*(.*)$/

/** A number that is zero or more, and the words behind it; null where there is none. `1,200 ft²` is taken. */
export function parseFigure(typed: string): { readonly value: number; readonly rest: string } | null {
  const found = figure.exec(typed.trim().replace(/,(?=\d{3}\b)/g, ''))
  return found ? { value: Number(found[1]), rest: found[2]!.trim() } : null
}

/** `60 lb` in the document's unit; null where an amount or its unit is missing. */
export function parseAmountOf(typed: string): { readonly value: number; readonly unit: string } | null {
  const read = parseFigure(typed)
  if (read === null || !/^\p{L}/u.test(read.rest)) return null
  if (/^(lb|lbs|pounds?)\.?$/i.test(read.rest)) return { value: poundsToKg(read.value), unit: 'kg' }
  return { value: read.value, unit: /^kg$/i.test(read.rest) ? 'kg' : read.rest }
}

const signs: Readonly<Record<string, string>> = { $: 'USD', '€': 'EUR', '£': 'GBP' }

/**
 * `42.50`, `42.50 EUR`, `EUR 42.50` or `$42.50`, and `/ft²` or `per ft²` behind it where that is what one costs; `$` is
 * the dollar of the United States. Null where it is no sum of money.
 */
export function parseMoney(
  typed: string,
  currency: string,
  per?: string,
): { readonly amount: number; readonly currency: string } | null {
  const { before = '', sum } = /^(?<before>[$€£]|[a-z]{3}(?![a-z]))?\s*(?<sum>.*)$/i.exec(typed.trim())!.groups!
  const read = parseFigure(sum!)
  if (read === null) return null
  const { behind = '', one } = /^(?<behind>[$€£]|[a-z]{3}(?![a-z]))?\s*(?:(?:\/|per\s)\s*(?<one>.+))?$/i.exec(read.rest)
    ?.groups ?? { behind: '?' }
  if ((before !== '' && behind !== '') || (one !== undefined && one !== per)) return null
  const told = before + behind
  if (told === '') return { amount: read.value, currency }
  const letters = signs[told] ?? told.toUpperCase()
  return isCurrency(letters) ? { amount: read.value, currency: letters } : null
}

/** Why a sum of money was not taken. */
export const moneyRefused = (typed: string, currency: string): string =>
  `“${typed}” is not taken: a price with a point before its cents, 18.50 or 18.50 ${currency}.`

/** Area that a rate is told for: 100 ft² or 1 m². */
export const rateArea: Readonly<Record<UnitSystem, { readonly name: string; readonly m2: number }>> = {
  ftin: { name: '100 ft²', m2: squareFeetToM2(100) },
  metric: { name: '1 m²', m2: 1 },
}

/** Three digits that count, never fewer than the whole number has. */
export const printAmount = (value: number): string =>
  printNumber(value, value === 0 ? 0 : Math.min(10, Math.max(0, 2 - Math.floor(Math.log10(value)))))
