import { describe, expect, it } from 'vitest'
import { edgeLength } from '../../core/geometry/edgeLength'
import { curveArea, ringArea } from '../../core/geometry/ringArea'
import { derivePlan } from '../../core/plan/derivePlan'
import { createMemo } from '../../core/plan/memo'
import { entityNames, nameEntities } from '../../core/reports/nameEntities'
import { printMeasures } from '../../core/units/printMeasures'
import { figureGeometry } from '../../renderer/editor/layers/planGeometry'
import { figureWorking } from '../../renderer/ledger/figureTerms'
import { figurePhrase, printFigure } from '../../renderer/ledger/printFigure'
import { slabFigures } from '../../renderer/ledger/slabFigures'
import { clientSections, outlineSections } from '../../renderer/outline/outlineOf'
import { deriveLive } from '../../renderer/store/livePlan'
import { bentWalk } from '../../samples/sites/bentWalk'
import { driveway } from '../../samples/sites/driveway'
import { kidneyPoolDeck } from '../../samples/sites/kidneyPoolDeck'
import { lPatio } from '../../samples/sites/lPatio'
import { lPatioAccepted } from '../../samples/sites/lPatioAccepted'
import { roundCourt } from '../../samples/sites/roundCourt'

const site = lPatio()
const date = '2026-07-21'
const live = deriveLive(site, date, createMemo())
const derived = derivePlan(site, { date })
if (!derived.ok) throw new Error('no plan')
const plan = derived.value

describe('a figure of the ledger', () => {
  it('carries its unit in a column of its own, and feet and inches in none', () => {
    expect(printFigure(100, 'm²', 'ftin')).toEqual({ figure: '1,076', unit: 'ft²' })
    expect(printFigure(3.81, 'm', 'ftin')).toEqual({ figure: '12′ 6″', unit: '' })
    expect(printFigure(3.81, 'm', 'metric')).toEqual({ figure: '3.81', unit: 'm' })
    // 1 ton (short) = 2,000 lb = 907.18474 kg, NIST SP 811, appendix B.8.
    expect(figurePhrase(907.18474, 'kg', 'ftin')).toBe('2,000 lb')
    // 1 lb/ft³ = 16.01846 kg/m³, NIST SP 811, appendix B.8.
    expect(figurePhrase(125 * 16.01846, 'kg/m³', 'ftin')).toBe('125 lb/ft³')
  })

  it('opens to its formula with the numbers put in, in the site’s units', () => {
    const net = plan.quantities.find(q => q.id.endsWith('-net-area'))!
    const working = figureWorking(net, entityNames(site), 'ftin')
    expect(working.formula).toBe('gross area − opening area')
    expect(working.withNumbers).toBe('1,601 ft² − 12.6 ft²')
    expect(working.terms.map(t => t.name)).toEqual(['gross area', 'opening area'])
  })

  it('names parts of the site as people call them, never by id', () => {
    const names = entityNames(site)
    for (const quantity of plan.quantities) {
      const { formula, terms } = figureWorking(quantity, names, 'ftin')
      for (const text of [formula, ...terms.map(t => t.name)]) expect(text).not.toMatch(/\b[abofiresv]\d+\b|proposed-/)
    }
    expect(nameEntities('net area − border b36', names)).toBe('net area − 12 in border')
  })

  it('on the page equals the worker’s', () => {
    const { areas, claims, lengths } = slabFigures(live.slabs[0]!, site.slabs[0]!)
    for (const figure of [...areas, ...claims, ...lengths])
      expect(plan.quantities.find(q => q.id === figure.id)).toEqual(figure)
  })

  it('lights what it was measured on: what is lit measures what the figure says', () => {
    // What has no line or area of its own on the plan lights what it belongs to, for the reason given.
    const reasons: readonly (readonly [RegExp, string])[] = [
      [/-(inner|center)-length$/, 'the border itself: its inner edge and center line are not drawn'],
      [/^[a-z]+\d+-length$/, 'the band itself: its center line is not drawn'],
      [/-base-(depth|difference)$/, 'the slab: a depth below it'],
      [/-contraction-joint-spacing$/, 'the lines it sets apart'],
    ]
    const excused = new Set<string>()
    const wrong: string[] = []
    for (const sample of [lPatioAccepted(), kidneyPoolDeck(), driveway(), roundCourt(), bentWalk()]) {
      const own = derivePlan(sample, { date })
      if (!own.ok) throw new Error('no plan')
      const shown = deriveLive(sample, date, createMemo())
      expect(own.value.quantities.length).toBeGreaterThan(15)
      for (const quantity of own.value.quantities) {
        const { id, unit, value } = quantity
        const { edges, regions, points } = figureGeometry(shown, own.value, quantity)
        const isLit = edges.length + regions.length + points.length > 0
        // An area or a length of nothing has nothing to light.
        expect(`${sample.name}: ${id} ${isLit}`).toBe(`${sample.name}: ${id} ${value !== 0}`)
        const why = reasons.find(([ends]) => ends.test(id))
        if (why || value === 0) {
          if (why) excused.add(why[1])
          continue
        }
        const measured =
          unit === 'm'
            ? edges.reduce((sum, edge) => sum + edgeLength(edge), 0)
            : unit === 'm²'
              ? regions.length > 0
                ? curveArea(regions)
                : Math.abs(ringArea(edges))
              : null
        if (measured !== null && Math.abs(measured - value) > 1e-6 * value)
          wrong.push(`${sample.name}: ${id} is ${value}, lit ${measured}`)
      }
    }
    expect(wrong).toEqual([])
    expect(excused.size).toBe(reasons.length)
  })

  it('of a border’s outer edge lights the seven bordered edges and the roundings between them', () => {
    const outer = plan.quantities.find(q => q.id.endsWith('-outer-length'))!
    const lit = figureGeometry(live, plan, outer)
    expect(lit.edges).toHaveLength(5 + 2)
  })
})

describe('the outline of the plan', () => {
  const sections = outlineSections(live, plan, printMeasures('ftin'))
  const ids = sections.flatMap(section => section.items.map(item => item.id))

  it('lists everything that can be chosen, once', () => {
    const slab = site.slabs[0]!
    expect(ids).toEqual([
      slab.id,
      ...slab.openings.map(o => o.id),
      ...slab.borders.map(b => b.id),
      ...slab.steps.map(s => s.id),
      ...slab.obstacles.map(o => o.id),
      ...site.casters.map(c => c.id),
      ...(['truckSpots', 'pumpSpots', 'washouts', 'noGo', 'ways'] as const).flatMap(
        list => site.access?.[list].map(each => each.id) ?? [],
      ),
      ...site.wishes.map(w => w.id),
      ...site.points.map(p => p.id),
      ...plan.pours.map(p => p.id),
      ...plan.joints.filter(j => j.kind === 'construction').map(j => j.id),
    ])
    expect(sections.at(-1)!.items[0]!.name).toMatch(/^Joint between pours \d(, \d)* and \d$/)
  })

  it('shows a client what will stand there, and areas only where they were asked for', () => {
    const shown = (showsAreas: boolean) => clientSections(live, showsAreas, printMeasures('ftin'))
    const details = (showsAreas: boolean) => shown(showsAreas).flatMap(({ items }) => items.map(({ detail }) => detail))
    expect(details(false).join('\n')).not.toMatch(/ft²|, ,|, $|^, /m)
    expect(details(false)).toContain('12″ wide, 128′ 10¼″ outside')
    expect(details(true)).toContain('12″ wide, 128′ 10¼″ outside, 127.3 ft²')
    expect(sections.map(({ id }) => id)).toContain('access')
    expect(shown(true).map(({ id }) => id)).toEqual([`in ${site.slabs[0]!.id}`, 'casters'])
  })

  it('tells each part’s measure', () => {
    const border = sections[0]!.items.find(item => item.id === site.slabs[0]!.borders[0]!.id)!
    expect(border.detail).toBe('12″ wide, 128′ 10¼″ outside, 127.3 ft²')
  })
})
