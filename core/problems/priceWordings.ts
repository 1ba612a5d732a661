import type { priceCodes } from '../../shared/problem'
import type { OpenReason } from '../quantities/priceFigures'
import { printNumber } from '../units/printNumber'
import type { Wording } from './wording'

const lacking: Readonly<Record<OpenReason, (name: string, per: string) => string>> = {
  price: name => `${name} has no price yet: it is not in the bid.`,
  quantity: name => `${name} has no quantity yet: it is not in the bid.`,
  unit: (name, per) => `${name} cannot be measured by the ${per}: it is not in the bid.`,
  drawing: name => `${name} stands in the price list, but nothing of it is drawn.`,
}

const hints: Readonly<Record<OpenReason, string>> = {
  price: 'Type its price in the price list, or remove the line.',
  quantity: 'Type how many in the price list.',
  unit: 'Choose what it goes by in the price list.',
  drawing: 'Draw it, or remove the line from the price list.',
}

const reasonOf = (lacks: unknown): OpenReason => lacks as OpenReason

export const priceWordings: Record<(typeof priceCodes)[number], Wording> = {
  priceOpen: ({ values }) => ({
    message: lacking[reasonOf(values.lacks)](String(values.name), String(values.per)),
    hint: hints[reasonOf(values.lacks)],
  }),
  priceCurrencies: ({ values }) => ({
    message: `The price list is in ${values.currencies}: each currency has a sum of its own.`,
    hint: 'Type all prices in one currency.',
  }),
  partUnpriced: ({ values, print }) => ({
    message: `${values.slab}: no line of the price list takes in ${values.what}, ${print.area(Number(values.areaM2))}.`,
    hint: 'Add a line for it, or price the slab as a whole.',
  }),
  materialUnpriced: ({ values }) => ({
    message: `${values.name} has no price of a package: it is not in the priced materials together.`,
    hint: 'Type what a package costs under Materials.',
  }),
  paymentsUneven: ({ values }) => ({
    message: `The payments of the bid come to ${printNumber(Number(values.percent), 4)} %, not to 100 %.`,
    hint: 'Change the share of a payment under Bid.',
  }),
  stepsUnpriced: ({ values }) => ({
    message: `${values.slab}: no line of the price list takes in the steps, ${values.risers} ${values.risers === 1 ? 'riser' : 'risers'}.`,
    hint: 'Add a line for steps by the riser.',
  }),
}
