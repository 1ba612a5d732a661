/**
 * Tax, payments and the pages of a bid, by hand to the cent. Rounding of a tax: Streamlined Sales and Use Tax Agreement,
 * section 324, to the third decimal and up from five (from memory).
 */
import { describe, expect, it } from 'vitest'
import { setBid } from '../../core/document/commands/setBid'
import { addPrice, changePrice } from '../../core/document/commands/setPrices'
import { readSite } from '../../core/document/readSite'
import { serializeSite } from '../../core/document/serializeSite'
import { planTotals } from '../../core/plan/planTotals'
import { printPlanJson } from '../../core/plan/printPlanJson'
import { wordProblem } from '../../core/problems/wordProblem'
import { isBidFigure } from '../../core/quantities/priceFigures'
import { clientBid, holdsUntil } from '../../core/reports/client/clientBid'
import { clientPrice } from '../../core/reports/client/clientPrice'
import { csvTables } from '../../core/reports/csvTables'
import { papers } from '../../core/reports/paper'
import { planSheetData } from '../../core/reports/planSheetData'
import { printMeasures } from '../../core/units/printMeasures'
import type { Site } from '../../shared/document/site'
import { PlanJson } from '../../shared/planJson'
import { chain, refusal } from '../commands/edit'
import { planOf, sampleSite } from '../plan/sampleSite'
import { evaluateFormula } from './evaluateFormula'

const patio = sampleSite('l-patio-accepted')
const plan = planOf(patio)

/** 1,588.0 ft² at 18.55 = 29,457.40; 240.00 free of tax; 3 × 185.50 = 556.50. */
const priced = chain(
  { ...patio, prices: [] },
  addPrice({ name: 'Stamped', by: 'slab', per: 'ft²', amount: 18.55, currency: 'USD' }),
  addPrice({ name: 'Permit', by: 'own', per: 'job', amount: 240, currency: 'USD', taxFree: true }),
  addPrice({ name: 'Haul-off', by: 'own', per: 'load', quantity: 3, amount: 185.5, currency: 'USD' }),
)
const payments = [
  { name: 'Deposit', percent: 30 },
  { name: 'Pour day', percent: 40 },
  { name: 'When done', percent: 30 },
]
const whole = chain(
  priced,
  setBid({
    taxPercent: 8.25,
    taxName: 'Sales tax',
    holdsDays: 30,
    payments,
    notes: ['Hauling of soil is not included.'],
  }),
)

const totalsOf = (site: Site) => planTotals(site, plan.slabs, plan.pours, plan.quantities)
const bidOf = (site: Site) => totalsOf(site).quantities.filter(isBidFigure)
const moneyOf = (site: Site, id: string) => bidOf(site).find(own => own.id === `total-bid-${id}USD`)?.value

describe('a bid with tax and payments', () => {
  it('taxes what is taxed, once, and pays to the last cent', () => {
    // 29,457.40 + 556.50 = 30,013.90; of it 8.25 % = 2,476.14675.
    expect(moneyOf(whole, '')).toBe(30253.9)
    expect(moneyOf(whole, 'tax-')).toBe(2476.15)
    expect(moneyOf(whole, 'with-tax-')).toBe(32730.05)
    // 30 % = 9,819.015, half a cent up; 40 % = 13,092.02; the rest.
    expect([1, 2, 3].map(n => moneyOf(whole, `payment-${n}-`))).toEqual([9819.02, 13092.02, 9819.01])
    for (const own of bidOf(whole)) expect(evaluateFormula(own)).toBeCloseTo(own.value, 6)
  })

  it('rounds the tax of the sum, not of each line', () => {
    // 3 × 1.05 at 5 %: 0.1575, to 0.16; line by line 0.0525 would come to 0.15.
    const lines = ['One', 'Two', 'Three'].map(name =>
      addPrice({ name, by: 'own', per: 'job', amount: 1.05, currency: 'USD' }),
    )
    expect(moneyOf(chain({ ...patio, prices: [] }, ...lines, setBid({ taxPercent: 5 })), 'tax-')).toBe(0.16)
  })

  it('pays the last cent for any split that comes to 100 %', () => {
    for (const percents of [[100], [33.3, 33.3, 33.4], [12.5, 12.5, 25, 50], [0.1, 99.9], [30, 40, 30, 0]]) {
      const site = chain(whole, setBid({ payments: percents.map((percent, i) => ({ name: `Step ${i}`, percent })) }))
      const cents = percents.map((_, i) => Math.round(moneyOf(site, `payment-${i + 1}-`)! * 100))
      expect(cents.reduce((sum, own) => sum + own, 0)).toBe(3273005)
      expect(Math.min(...cents)).toBeGreaterThanOrEqual(0)
    }
  })

  it('tells payments that do not come to 100 %, and keeps them from the client', () => {
    const short = chain(whole, setBid({ payments: payments.slice(0, 2) }))
    const words = totalsOf(short).findings.map(finding => wordProblem(finding, printMeasures('ftin')).message)
    expect(words).toEqual(['The payments of the bid come to 70 %, not to 100 %.'])
    expect(clientPrice(short, plan.slabs, { figures: [], pourCount: 0 })?.payments).toEqual([])
    expect(totalsOf(whole).findings).toEqual([])
  })

  it('leaves figures and file as they were where nothing of it is entered', () => {
    expect(bidOf(priced).map(({ id }) => id)).toEqual(
      bidOf(whole)
        .map(({ id }) => id)
        .slice(0, bidOf(priced).length),
    )
    expect(chain(priced, setBid({ taxPercent: undefined, notes: [], payments: [] }))).not.toHaveProperty('bid')
    expect(
      chain(
        whole,
        setBid({ taxPercent: undefined, taxName: undefined, holdsDays: undefined, notes: [], payments: [] }),
      ),
    ).not.toHaveProperty('bid')
    expect(serializeSite(patio)).not.toContain('"bid"')
  })

  it('is read again as it was saved, and stands in CSV and JSON', () => {
    expect(readSite(serializeSite(whole))).toEqual({ ok: true, value: whole })
    const own = { ...plan, site: whole, quantities: [...totalsOf(whole).quantities] }
    const csv = csvTables(planSheetData(own)).find(({ name }) => name === 'quantities')!.text
    for (const words of ['Sales tax', 'Payment: Deposit', '9819.02', '32730.05']) expect(csv).toContain(words)
    const printed = PlanJson.parse(JSON.parse(JSON.stringify(printPlanJson(own))))
    expect(printed.bid).toEqual(whole.bid)
  })

  it('is refused, in words, where its entries cannot be', () => {
    expect(refusal(setBid({ taxPercent: 101 })(priced))).toBe('outOfRange')
    expect(refusal(setBid({ holdsDays: 0 })(priced))).not.toBe('')
    expect(refusal(setBid({ payments: [{ name: '', percent: 10 }] })(priced))).not.toBe('')
  })
})

describe('the bid for the client', () => {
  const pagesOf = (site: Site) =>
    clientBid(site, '2026-07-14', {
      ...{ paper: papers.letter, title: '', client: 'the owners' },
      price: clientPrice(site, plan.slabs, { figures: [], pourCount: 0 }),
    })
  const wordsOf = (site: Site) =>
    pagesOf(site).flatMap(({ svg }) => [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text]) => text!))

  it('tells lines, tax, total, how long it holds, payments and notes', () => {
    expect(wordsOf(whole)).toEqual(
      expect.arrayContaining([
        ...['Stamped', '$29,457.40', 'Permit, free of tax', '$240.00', 'Before tax', '$30,253.90'],
        ...['Sales tax, 8.25 %', '$2,476.15', 'Price, with tax', '$32,730.05'],
        ...['This price holds until Thursday, August 13, 2026.', 'Deposit, 30 %', '$9,819.02', '$9,819.01'],
        'Hauling of soil is not included.',
      ]),
    )
    expect(wordsOf(whole).join(' ')).toContain('Tax by local rules')
    expect(holdsUntil('2026-12-31', 60)).toBe('2027-03-01')
  })

  it('is not made where no price is shown, or nothing of it is entered', () => {
    expect(pagesOf(priced)).toEqual([])
    expect(clientBid(whole, '2026-07-14', { paper: papers.letter, title: '', client: '', price: null })).toEqual([])
  })

  it('goes on over the page, and loses nothing', () => {
    const notes = Array.from({ length: 70 }, (_, i) => `Note number ${i + 1}.`)
    const long = chain(whole, setBid({ notes }))
    expect(pagesOf(long).length).toBeGreaterThan(1)
    expect(wordsOf(long)).toEqual(expect.arrayContaining(notes))
    expect(wordsOf(long)).toContain(`Bid, page 1 of ${pagesOf(long).length}`)
    for (const { svg, heightPt } of pagesOf(long))
      for (const [, y] of svg.matchAll(/<text x="[^"]*" y="([\d.]+)"/g)) expect(Number(y)).toBeLessThan(heightPt - 30)
  })

  it('names no tax on a line where none is added', () => {
    const bare = chain(whole, setBid({ taxPercent: undefined }), changePrice(whole.prices![0]!.id, { name: 'Patio' }))
    expect(wordsOf(bare)).toEqual(expect.arrayContaining(['Permit', 'Price', '$30,253.90', '$9,076.17']))
    expect(wordsOf(bare).join(' ')).not.toMatch(/tax/i)
  })
})
