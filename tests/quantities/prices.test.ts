/** A bid by the price list, against its own arithmetic: areas and lengths by hand, cents by whole numbers. */
import { describe, expect, it } from 'vitest'
import { addPrice, movePrice } from '../../core/document/commands/setPrices'
import { planTotals } from '../../core/plan/planTotals'
import { wordProblem } from '../../core/problems/wordProblem'
import { isBidFigure } from '../../core/quantities/priceFigures'
import { csvTables } from '../../core/reports/csvTables'
import { planSheetData } from '../../core/reports/planSheetData'
import { printAsPriced, shownUnits } from '../../core/reports/printAsPriced'
import { quantityPages } from '../../core/reports/quantityPages'
import { printMeasures } from '../../core/units/printMeasures'
import { litFigure } from '../../renderer/editor/layers/litFigure'
import { figureFrom } from '../../renderer/ledger/figureFrom'
import { ledgerGroups } from '../../renderer/ledger/ledgerGroups'
import type { Price } from '../../shared/document/materials'
import type { Site } from '../../shared/document/site'
import { chain } from '../commands/edit'
import { planOf, sampleSite } from '../plan/sampleSite'
import { evaluateFormula } from './evaluateFormula'

type Line = Omit<Price, 'id' | 'currency'> & { readonly currency?: string }

const patio = sampleSite('l-patio-accepted')
const patioPlan = planOf(patio)

const withPrices = (site: Site, lines: readonly Line[]): Site =>
  chain({ ...site, prices: [] }, ...lines.map(line => addPrice({ currency: 'USD', ...line })))

/** The bid of a site, on the figures of its slabs and pours as they were planned. */
function bidOf(site: Site, lines: readonly Line[], plan = planOf(site)) {
  const priced = withPrices(site, lines)
  const { quantities, findings } = planTotals(priced, plan.slabs, plan.pours, plan.quantities)
  const bid = quantities.filter(isBidFigure)
  const print = printMeasures(site.units)
  return {
    ...{ site: priced, plan, bid },
    words: findings.map(finding => wordProblem(finding, print).message),
    sumOf: (name: string) => bid.find(({ label, unit }) => label === name && unit === 'USD')?.value,
    total: bid.find(({ id }) => id === 'total-bid-USD'),
  }
}

describe('a bid by the price list', () => {
  it('stands in the order its lines are moved to, the ends where they are, and its sum the same', () => {
    const lines = ['Stamped', 'Permit', 'Haul-off'].map((name, i) => ({
      ...{ name, by: 'own' as const, per: 'job' },
      amount: 100.05 * (i + 1),
    }))
    const { site, total } = bidOf(patio, lines, patioPlan)
    const [first, , third] = site.prices!
    const namesAfter = (...moves: Parameters<typeof chain>[1][]) =>
      chain(site, ...moves).prices!.map(({ name }) => name)
    expect(namesAfter(movePrice(third!.id, -1))).toEqual(['Stamped', 'Haul-off', 'Permit'])
    expect(namesAfter(movePrice(third!.id, -1), movePrice(third!.id, -1))).toEqual(['Haul-off', 'Stamped', 'Permit'])
    expect(namesAfter(movePrice(first!.id, 1), movePrice(first!.id, -1))).toEqual(['Stamped', 'Permit', 'Haul-off'])
    expect(namesAfter(movePrice(first!.id, -1), movePrice(third!.id, 1))).toEqual(['Stamped', 'Permit', 'Haul-off'])
    expect(movePrice('none', 1)(site).ok).toBe(false)
    const moved = chain(site, movePrice(third!.id, -1))
    const { quantities } = planTotals(moved, patioPlan.slabs, patioPlan.pours, patioPlan.quantities)
    expect(quantities.find(({ id }) => id === 'total-bid-USD')?.value).toBe(total?.value)
    expect(total?.value).toBe(600.3)
  })

  it('takes an L by its area, its border by the foot, its steps by the riser and the job as a whole', () => {
    // 28 × 42 + 22 × 20 ft less two corners, (2 − π/2) × 36, less a planter of 4π: 1,588.0 ft².
    const { sumOf, total, words } = bidOf(
      patio,
      [
        { name: 'Stamped', by: 'slab', per: 'ft²', amount: 18.55 },
        { name: 'Permit', by: 'own', per: 'job', amount: 240 },
        { name: 'Haul-off', by: 'own', per: 'load', quantity: 3, amount: 185.5 },
      ],
      patioPlan,
    )
    expect(sumOf('Stamped')).toBe(29457.4)
    expect(sumOf('Haul-off')).toBe(556.5)
    expect(total?.value).toBe(30253.9)
    expect(total?.label).toBe('Bid by the price list')
    expect(words).toEqual([])
  })

  it('adds up by hand as it is printed, and by its own formulas', () => {
    const finishId = patio.slabs[0]!.finishId
    for (const [site, area, length] of [
      [patio, 'ft²', 'ft'],
      [sampleSite('kidney-pool-deck'), 'ft²', 'ft'],
      [sampleSite('metric-terrace'), 'm²', 'm'],
    ] as const) {
      const { bid } = bidOf(site, [
        { name: 'Field', by: 'field', per: area, amount: 17.37 },
        ...(site === patio ? [{ name: 'One finish', by: 'slab', per: area, finishId, amount: 3.333 } as const] : []),
        { name: 'Border', by: 'border', per: length, amount: 12.49 },
        { name: 'Border by area', by: 'border', per: area, amount: 9.99 },
        { name: 'Band', by: 'band', per: length, amount: 8.01 },
        { name: 'Forms', by: 'form', per: length, amount: 4.15 },
        { name: 'Joints', by: 'constructionJoint', per: length, amount: 6.75 },
        { name: 'Saw cuts', by: 'contractionJoint', per: length, amount: 2.35 },
        { name: 'Openings', by: 'opening', per: 'each', amount: 310 },
        { name: 'Coping edge', by: 'opening', per: length, amount: 21.05 },
        { name: 'Pours', by: 'pour', per: 'each', amount: 425.25 },
      ])
      expect(bid.length).toBeGreaterThan(8)
      for (const own of bid) {
        expect(evaluateFormula(own)).toBeCloseTo(own.value, 6)
        const printed = Object.fromEntries(
          Object.entries(own.inputs).map(([name, { value, unit }]) => [
            name,
            { value: Number(printAsPriced(value, unit).replaceAll(',', '')), unit },
          ]),
        )
        expect(evaluateFormula({ ...own, inputs: printed })).toBeCloseTo(own.value, 6)
        expect(shownUnits(own, 'ftin')).toBe('asPriced')
      }
    }
  })

  it('rounds half a cent up, line by line, before it adds', () => {
    // 0.3 × 0.05 = 0.015 each, to 0.02.
    const { bid, total } = bidOf(
      patio,
      [1, 2, 3].map(n => ({ name: `Line ${n}`, by: 'own', per: 'h', quantity: 0.3, amount: 0.05 })),
      patioPlan,
    )
    expect(bid[0]).toMatchObject({ value: 0.02, formula: 'round(quantity × price, nearest cent)' })
    expect(total?.value).toBe(0.06)
  })

  it('tells what has no price, no quantity, no measure or is not drawn, and counts it as nothing', () => {
    const { words, total, sumOf } = bidOf(
      patio,
      [
        { name: 'Stamped', per: 'ft²', amount: 10 },
        { name: 'Sealing visit', by: 'own', per: 'job' },
        { name: 'Base', by: 'own', per: 'ton', amount: 40 },
        { name: 'Coping', by: 'opening', per: 'ft²', amount: 5 },
        { name: 'Inlay', by: 'inset', per: 'each', amount: 5 },
      ],
      patioPlan,
    )
    expect(words).toEqual([
      'Sealing visit has no price yet: it is not in the bid.',
      'Base has no quantity yet: it is not in the bid.',
      'Coping cannot be measured by the ft²: it is not in the bid.',
      'Inlay stands in the price list, but nothing of it is drawn.',
    ])
    expect(total).toMatchObject({ value: 15880, label: 'Bid so far, by the price list' })
    expect(sumOf('Sealing visit')).toBeUndefined()
  })

  it('tells what is drawn and has no price, but not of a lump sum', () => {
    const deck = sampleSite('kidney-pool-deck')
    const plan = planOf(deck)
    const { slabs } = plan
    const borders = slabs.flatMap(slab => slab.borders).length
    const { words } = bidOf(deck, [{ name: 'Field', by: 'field', per: 'ft²', amount: 20 }], plan)
    expect(words.filter(each => /no line of the price list takes in/.test(each)).length).toBeGreaterThanOrEqual(borders)
    expect(bidOf(deck, [{ name: 'All in', by: 'own', per: 'job', amount: 40000 }], plan).words).toEqual([])
    expect(bidOf(deck, [{ name: 'All of it', by: 'slab', per: 'ft²', amount: 20 }], plan).words).not.toContain('field')
  })

  it('adds no two currencies, and takes the sign of an older file for dollars', () => {
    const { bid, words } = bidOf(
      patio,
      [
        { name: 'Stamped', per: 'ft²', amount: 10, currency: '$' },
        { name: 'Border', by: 'own', per: 'job', amount: 100, currency: 'CAD' },
      ],
      patioPlan,
    )
    expect(bid.filter(({ id }) => id.startsWith('total-')).map(({ unit }) => unit)).toEqual(['USD', 'CAD'])
    expect(words).toEqual(['The price list is in USD, CAD: each currency has a sum of its own.'])
  })

  it('lights what it goes by, and stands in ledger, CSV and sheet', () => {
    const { site, plan, bid } = bidOf(
      patio,
      [
        { name: 'Stamped', by: 'field', per: 'ft²', amount: 18.5 },
        { name: 'Forms', by: 'form', per: 'ft', amount: 4 },
        { name: 'Joints', by: 'constructionJoint', per: 'ft', amount: 6 },
      ],
      patioPlan,
    )
    const whole = { ...plan, site, quantities: [...plan.quantities.filter(q => !isBidFigure(q)), ...bid] }
    const live = { ...whole, site } as unknown as Parameters<typeof litFigure>[0]
    for (const own of bid) {
      const { edges, regions } = litFigure(live, plan, own)
      expect(edges.length + regions.length).toBeGreaterThan(0)
    }
    const joints = bid.find(({ label }) => label === 'Joints')!
    expect(litFigure(live, plan, joints).edges).toHaveLength(
      plan.joints.filter(({ kind }) => kind === 'construction').length,
    )
    expect(figureFrom(joints, site, new Map(), () => undefined)).toBe('construction joints')
    const groups = ledgerGroups(site, plan.pours, whole.quantities)
    expect(groups.find(({ title }) => title === 'Price list')?.rows).toEqual(bid)
    const data = planSheetData(whole)
    const csv = csvTables(data).find(({ name }) => name === 'quantities')!.text
    expect(csv).toContain('18.5 USD/ft²')
    expect(JSON.stringify(quantityPages(data))).toContain('18.50 USD/ft²')
  })
})
