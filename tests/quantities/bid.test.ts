/**
 * Tax, payments and the pages of a bid, by hand to the cent. Rounding of a tax: Streamlined Sales and Use Tax Agreement,
 * section 324, to the third decimal and up from five (from memory).
 */
import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
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
    const told = (command: ReturnType<typeof setBid>): string => {
      const made = command(priced)
      if (made.ok) throw new Error('it was taken')
      return wordProblem(made.error[0]!, printMeasures('ftin')).message
    }
    expect(told(setBid({ taxPercent: 101 }))).toBe('Bid: the tax is 101; it must be 100 or less.')
    expect(told(setBid({ holdsDays: 0 }))).toBe('Bid: the days that the price holds is 0; it must be 1 or more.')
    expect(told(setBid({ payments: [{ name: '', percent: 10 }] }))).toContain('has no name')
    expect(told(setBid({ notes: ['x'.repeat(4001)] }))).toBe('Bid: note 1 is 4,001 letters long; 4,000 is the most.')
    const own = { name: 'Stone', by: 'own', per: 'load', currency: 'USD' } as const
    expect(told(addPrice({ ...own, amount: 10_000_001 }))).toMatch(/10,000,001; it must be 10,000,000 or less/)
    expect(refusal(addPrice({ ...own, quantity: 1_000_001 })(priced))).toBe('outOfRange')
  })
})

describe('the same bid everywhere', () => {
  /** Half a cent up, in whole numbers: `cents` × `percent` with six places. */
  const shareOf = (cents: bigint, percent: number): bigint => {
    const ppm = BigInt(Math.round(percent * 1e6))
    return (cents * ppm * 2n + 100_000_000n) / 200_000_000n
  }
  const inCents = (value: number | string): bigint => BigInt(Math.round(Number(value) * 100))
  const money = (cents: bigint): string => {
    const digits = cents.toString().padStart(3, '0')
    return `$${digits.slice(0, -2).replace(/\B(?=(\d{3})+$)/g, ',')}.${digits.slice(-2)}`
  }
  const line = fc.record({
    amount: fc.integer({ min: 0, max: 900_000 }).map(cents => cents / 100),
    quantity: fc.integer({ min: 1, max: 400 }),
    taxFree: fc.boolean(),
  })
  const lists = fc.record({
    lines: fc.array(line, { minLength: 1, maxLength: 12 }),
    rate: fc.integer({ min: 0, max: 2_000 }).map(n => n / 80),
    /** Whole shares that come to 100 %. */
    cuts: fc.uniqueArray(fc.integer({ min: 1, max: 99 }), { maxLength: 4 }),
  })

  it('on the screen, in both files and before the client, to the cent', () => {
    fc.assert(
      fc.property(lists, ({ lines, rate, cuts }) => {
        const edges = [0, ...cuts.toSorted((a, b) => a - b), 100]
        const site = chain(
          { ...patio, prices: [] },
          ...lines.map(({ amount, quantity, taxFree }, i) =>
            addPrice({
              ...{ name: `Line ${i + 1}`, by: 'own', per: 'load', amount, quantity, currency: 'USD' },
              ...(taxFree ? { taxFree } : {}),
            }),
          ),
          setBid({
            taxPercent: rate,
            payments: edges.slice(1).map((to, i) => ({ name: `Step ${i + 1}`, percent: to - edges[i]! })),
            notes: ['One, two', 'A "quoted" one\nof two lines'],
            holdsDays: 45,
          }),
        )
        const sums = lines.map(({ amount, quantity }) => inCents(amount) * BigInt(quantity))
        const sum = sums.reduce((total, own) => total + own, 0n)
        const taxed = sums.reduce((total, own, i) => (lines[i]!.taxFree ? total : total + own), 0n)
        const tax = shareOf(taxed, rate)
        const whole = sum + tax

        const own = { ...plan, site, quantities: [...totalsOf(site).quantities] }
        const printed = PlanJson.parse(JSON.parse(JSON.stringify(printPlanJson(own)))).quantities
        const figure = (id: string) => inCents(printed.find(each => each.id === `total-bid-${id}USD`)!.value)
        expect([figure(''), figure('tax-'), figure('with-tax-')]).toEqual([sum, tax, whole])
        const paid = edges.slice(1).map((_, i) => figure(`payment-${i + 1}-`))
        expect(paid.reduce((total, each) => total + each, 0n)).toBe(whole)
        for (const [i, each] of paid.slice(0, -1).entries())
          expect(each).toBe(shareOf(whole, edges[i + 1]! - edges[i]!))

        const csv = csvTables(planSheetData(own)).find(({ name }) => name === 'bid')!.text
        const rows: Record<string, string>[] = parse(csv, { columns: true })
        const sumsOf = (row: string) => rows.filter(each => each.row === row).map(each => inCents(each.sum!))
        expect(sumsOf('line')).toEqual(sums)
        expect([sumsOf('sum'), sumsOf('tax'), sumsOf('total')]).toEqual([[sum], [tax], [whole]])
        expect(sumsOf('payment')).toEqual(paid)
        expect(rows.filter(each => each.row === 'note').map(({ name }) => name)).toEqual(site.bid!.notes)
        expect(rows.find(each => each.row === 'holds')).toMatchObject({ quantity: '45', unit: 'days' })

        const client = clientPrice(site, plan.slabs, { figures: plan.quantities, pourCount: plan.pours.length })!
        expect(client.lines.map(({ value }) => value)).toEqual(sums.map(money))
        expect(client.tax.map(({ value }) => value)).toEqual([money(sum), money(tax)])
        expect(client.total).toBe(money(whole))
        expect(client.payments.map(({ value }) => value)).toEqual(paid.map(money))
      }),
      { numRuns: 25 },
    )
  })

  it('says in the table why a line is not in it, and is no table where nothing is entered', () => {
    const site = chain(whole, addPrice({ name: 'Pump', by: 'own', per: 'job', currency: 'USD' }))
    const own = { ...plan, site, quantities: [...totalsOf(site).quantities] }
    const rows: Record<string, string>[] = parse(csvTables(planSheetData(own)).at(-1)!.text, { columns: true })
    expect(rows.find(({ name }) => name === 'Pump')).toMatchObject({ sum: '', remark: 'not in the bid: no price yet' })
    expect(rows.find(({ name }) => name === 'Permit')).toMatchObject({ sum: '240', remark: 'free of tax' })
    expect(rows.find(({ name }) => name === 'Stamped')).toMatchObject({ quantity: '1588', unit: 'ft²', price: '18.55' })
    expect(csvTables(planSheetData({ ...plan, site: { ...patio, prices: [] } })).map(({ name }) => name)).not.toContain(
      'bid',
    )
  })
})

describe('the bid for the client', () => {
  const pagesOf = (site: Site) =>
    clientBid(site, '2026-07-14', {
      ...{ paper: papers.letter, title: '', client: 'the owners', signed: true },
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
    // Signed under all that is agreed, the notes as well.
    expect(wordsOf(whole).slice(-6)).toEqual([
      'Hauling of soil is not included.',
      'Approved',
      'Date',
      'Contractor',
      'Date',
      'Bid, page 1 of 1',
    ])
    expect(holdsUntil('2026-12-31', 60)).toBe('2027-03-01')
  })

  it('is not made where no price is shown, or nothing of it is entered', () => {
    expect(pagesOf(priced)).toEqual([])
    expect(
      clientBid(whole, '2026-07-14', { paper: papers.letter, title: '', client: '', price: null, signed: true }),
    ).toEqual([])
  })

  it('goes on over the page, and loses nothing', () => {
    const notes = Array.from({ length: 70 }, (_, i) => `Note number ${i + 1}.`)
    const long = chain(whole, setBid({ notes }))
    expect(pagesOf(long).length).toBeGreaterThan(1)
    expect(wordsOf(long)).toEqual(expect.arrayContaining(notes))
    expect(wordsOf(long)).toContain(`Bid, page 1 of ${pagesOf(long).length}`)
    // A note of a whole page begins where the last one ended, and goes on over the page.
    const words = Array.from({ length: 600 }, (_, i) => `word${i}`).join(' ')
    const one = chain(
      whole,
      setBid({ notes: [`${words.slice(0, 3990)}`, `Below.\nOn a line of its own. ${'x'.repeat(300)}`] }),
    )
    expect(pagesOf(one).length).toBe(2)
    expect(wordsOf(one).flatMap(text => text.split(' '))).toEqual(
      expect.arrayContaining(words.slice(0, 3990).trim().split(' ')),
    )
    expect(wordsOf(one)).toContain('Below.')
    expect(wordsOf(one).join('')).toContain('x'.repeat(300))
    for (const { svg, heightPt } of [...pagesOf(long), ...pagesOf(one)])
      for (const [, y] of svg.matchAll(/<text x="[^"]*" y="([\d.]+)"/g)) expect(Number(y)).toBeLessThan(heightPt - 30)
  })

  it('never parts the total from the rule under it, nor leaves one line of a note alone', () => {
    const more = Array.from({ length: 60 }, (_, i) =>
      addPrice({ name: `Line ${i}`, by: 'own', per: 'job', amount: 10, currency: 'USD' }),
    )
    const note = Array.from({ length: 300 }, (_, i) => `word${i}`).join(' ')
    for (let count = 20; count < 60; count++) {
      const pages = pagesOf(chain(whole, ...more.slice(0, count), setBid({ notes: [note] })))
      for (const { svg } of pages) {
        const ofNote = [...svg.matchAll(/>word\d+[^<]*</g)].length
        expect(ofNote, `${count} lines`).not.toBe(1)
        expect(svg.includes('Price, with tax')).toBe(svg.includes('stroke-width="1.2"'))
        expect([0, 2]).toContain(svg.split('stroke-width="1.2"').length - 1)
      }
    }
  })

  it('names no tax on a line where none is added', () => {
    const bare = chain(whole, setBid({ taxPercent: undefined }), changePrice(whole.prices![0]!.id, { name: 'Patio' }))
    expect(wordsOf(bare)).toEqual(expect.arrayContaining(['Permit', 'Price', '$30,253.90', '$9,076.17']))
    expect(wordsOf(bare).join(' ')).not.toMatch(/tax/i)
  })
})
