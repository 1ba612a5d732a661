import { parse } from 'csv-parse/sync'
import { describe, expect, it } from 'vitest'
import { derivePlan } from '../../core/plan/derivePlan'
import { createMemo } from '../../core/plan/memo'
import { planAlternatives } from '../../core/plan/planAlternatives'
import { shiftJoint } from '../../core/pours/editing/moveJoint'
import { csvTables } from '../../core/reports/csvTables'
import { entityNames } from '../../core/reports/nameEntities'
import { planSheetData } from '../../core/reports/planSheetData'
import { shownUnits } from '../../core/reports/printAsPriced'
import { printMeasures } from '../../core/units/printMeasures'
import { figureFrom } from '../../renderer/ledger/figureFrom'
import { ledgerGroups } from '../../renderer/ledger/ledgerGroups'
import { ledgerText } from '../../renderer/ledger/ledgerText'
import { figurePhrase } from '../../renderer/ledger/printFigure'
import { costTerms, termsWithWords } from '../../renderer/pours/costTerms'
import { livePours } from '../../renderer/pours/livePours'
import { deedWords } from '../../renderer/pours/RepairCard'
import { recommendedOf } from '../../renderer/pours/recommendedOf'
import { sheetList } from '../../renderer/sheets/sheetList'
import { deriveLive } from '../../renderer/store/livePlan'
import { bandInk, chooseBands, noSun } from '../../renderer/sun/sunBands'
import { kidneyPoolDeck } from '../../samples/sites/kidneyPoolDeck'
import { lPatioAccepted } from '../../samples/sites/lPatioAccepted'

const date = '2026-07-21'
const site = lPatioAccepted()
const memo = createMemo()
const derived = derivePlan(site, { date }, memo)
if (!derived.ok) throw new Error('no plan')
const plan = derived.value
const print = printMeasures(site.units)

describe('ways to split on their cards', () => {
  const deck = kidneyPoolDeck()
  const ownMemo = createMemo()
  const ofDeck = derivePlan(deck, { date }, ownMemo)
  if (!ofDeck.ok) throw new Error('no plan')
  const ways = planAlternatives(ofDeck.value, ownMemo)

  it('name every term that weighs anything, with its weight and where that is from', () => {
    expect(ways.length).toBeGreaterThan(1)
    for (const { proposal } of ways) {
      for (const { term } of proposal.cost) expect(termsWithWords, term).toContain(term)
      const terms = costTerms(proposal)
      expect(terms.reduce((sum, { ft }) => sum + ft, 0)).toBeCloseTo(proposal.totalCost, 1)
      for (const { term, name, weights } of terms) {
        expect(name, term).not.toBe(term)
        expect(weights.length, term).toBeGreaterThan(0)
        for (const { source } of weights) expect(source).not.toBe('')
      }
    }
  })

  it('recommend the one of the least price', () => {
    const best = recommendedOf(ways)!
    for (const { price } of ways) expect(best.price.total).toBeLessThanOrEqual(price.total)
  })
})

describe('accepted pours on the page', () => {
  const live = deriveLive(site, date, createMemo())

  it('are the worker’s while nothing moves', () => {
    const { pours, joints } = livePours(live, plan.pours, plan.joints)
    expect(pours).toEqual(plan.pours)
    const order = <T extends { readonly id: string }>(list: readonly T[]) =>
      list.toSorted((a, b) => (a.id < b.id ? -1 : 1))
    expect(order(joints)).toEqual(order(plan.joints))
  })

  it('follow a joint before the worker has answered: what one gains the other loses', () => {
    const joint = site.accepted[0]!.joints.find(({ locked }) => !locked)!
    const freed = {
      ...site,
      accepted: site.accepted.map(part => ({
        ...part,
        pours: part.pours.map(pour => ({ ...pour, lock: { shape: false, time: false } })),
      })),
    }
    const moved = shiftJoint(freed, joint.id, 0.3048)
    if (!moved.ok) throw new Error(JSON.stringify(moved.error))
    const { pours } = livePours(deriveLive(moved.value, date, createMemo()), plan.pours, plan.joints)
    const changes = pours.map((pour, i) => pour.areaM2 - plan.pours[i]!.areaM2)
    // 20 ft of joint moved by 1 ft.
    expect(changes.map(Math.abs).toSorted((a, b) => b - a)[0]).toBeCloseTo(20 * 0.3048 ** 2, 9)
    expect(changes.reduce((sum, each) => sum + each, 0)).toBeCloseTo(0, 9)
  })
})

describe('the ledger of numbers', () => {
  const names = entityNames(site)
  const groups = ledgerGroups(site, plan.pours, plan.quantities)

  it('holds every figure once', () => {
    const ids = groups.flatMap(({ rows }) => rows.map(({ id }) => id))
    expect(ids.toSorted()).toEqual(plan.quantities.map(({ id }) => id).toSorted())
  })

  it('says of each what it was measured on, in words', () => {
    for (const q of plan.quantities) {
      const from = figureFrom(q, site, names, id => plan.pours.find(pour => pour.id === id)?.number)
      expect(from, q.id).toMatch(/^[a-z0-9A-Z]/)
      expect(from).not.toMatch(/\b[abofiresvn]\d+\b/)
    }
    const gross = plan.quantities.find(({ id }) => id.endsWith('-gross-area'))!
    expect(figureFrom(gross, site, names, () => undefined)).toBe('outline, Patio')
    const ofSlab = (end: string) =>
      figureFrom({ id: `${site.slabs[0]!.id}-${end}`, slabId: site.slabs[0]!.id }, site, names, () => undefined)
    expect(ofSlab('opening-perimeter')).toBe('openings, Patio')
    expect(ofSlab('contraction-joint-length')).toBe('contraction joints, Patio')
  })

  it('as text carries every figure with its numbers put in', () => {
    const text = ledgerText(site.name, groups, names, site.units)
    for (const q of plan.quantities)
      expect(text).toContain(`${q.label}: ${figurePhrase(q.value, q.unit, shownUnits(q, site.units))}`)
    expect(text).toContain('Net area: 1,588 ft² = gross area − opening area = 1,601 ft² − 12.6 ft²')
  })

  it('as CSV reads back with the values of the plan', () => {
    const table = csvTables(planSheetData(plan)).find(({ name }) => name === 'quantities')!
    const rows = parse<Record<string, string>>(table.text, { columns: true, bom: true })
    for (const { id, value, unit } of plan.quantities.filter(q => q.unit === 'm²')) {
      const row = rows.find(each => each.id === id)!
      // 1 ft² = 0.09290304 m², exact: NIST SP 811, appendix B.8.
      expect(Number(row.value) * 0.09290304, `${id} ${unit}`).toBeCloseTo(value, 5)
    }
  })

  it('counts whole loads, and orders by pour what the site orders', () => {
    const figureOf = (id: string) => plan.quantities.find(q => q.id === id)!.value
    const orders = plan.pours.map(({ id }) => figureOf(`${id}-concrete-order`))
    expect(figureOf('total-ordered')).toBeCloseTo(
      orders.reduce((sum, each) => sum + each, 0),
      9,
    )
    // A truck brings 10 yd³; each of these pours takes less.
    expect(figureOf('total-loads')).toBe(3)
  })
})

describe('a repair', () => {
  it('is told in sentences', () => {
    expect(deedWords({ does: 'restSplit', pours: 2, over: ['1'], wishes: 0, kept: ['2', '3'] }, print)).toBe(
      'Too large: pour 1. The rest is split into 2; pours 2 and 3 stay.',
    )
    expect(deedWords({ does: 'poursMerged', number: '1', gone: ['2'], areaM2: 92.90304 }, print)).toBe(
      'Pour 1 takes in pour 2: 1,000 ft².',
    )
  })
})

describe('sheets', () => {
  it('are pages on the screen and pictures for a phone, every one', () => {
    const { sheets } = sheetList(plan)
    expect(sheets.filter(({ id }) => id.startsWith('day-'))).toHaveLength(3)
    for (const { pages, phonePages, sections } of sheets) {
      expect(pages).toHaveLength(sections.length)
      expect(phonePages).toHaveLength(sections.length)
      for (const { svg } of [...pages, ...phonePages]) expect(svg).toMatch(/^<svg /)
    }
  })
})

describe('the sun map of a day without sun', () => {
  it('takes the darkest ink, and of a day all alike the palest', () => {
    const map = (minutes: number) => ({
      slabId: 's',
      grid: { minX: 0, minY: 0, cellM: 1, columns: 1, rows: 1 },
      minutes: new Float64Array([minutes]),
      weights: new Float64Array([1]),
    })
    const [dark, bright] = [chooseBands([map(0)]), chooseBands([map(600)])]
    expect([dark.names, bandInk(dark, 0)]).toEqual([[noSun], 1])
    expect([bright.names, bandInk(bright, 0)]).toEqual([['about 10'], 7])
  })
})
