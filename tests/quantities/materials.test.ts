import { describe, expect, it } from 'vitest'
import { printQuantity } from '../../core/reports/printQuantity'
import { planOf, sampleSite } from '../plan/sampleSite'
import { evaluateFormula } from './evaluateFormula'

const site = sampleSite('l-patio-accepted')
const { quantities, pours, dayPlans } = planOf(site)
const figure = (id: string) => quantities.find(own => own.id === id)!

describe('materials of a pour', () => {
  it('go by the area, in whole packages', () => {
    // 60 lb of color hardener for 100 ft² in pails of 60 lb (common practice, no source): 595.7 ft² take 357 lb, 6 pails.
    const [pour] = pours
    const hardener = figure(`${pour!.id}-material-m48`)
    expect(printQuantity(hardener.value, hardener.unit, 'ftin')).toBe('357 lb')
    expect(figure(`${pour!.id}-material-m48-packages`).value).toBe(6)
    expect(figure('total-material-m48').value).toBe(17)
  })

  it('count the retarder dose by dose, where a day has any', () => {
    const dosed = dayPlans.filter(({ doseMarks }) => doseMarks.length > 0)
    expect(dosed.length).toBeGreaterThan(0)
    for (const { pourId, doseMarks } of dosed)
      expect(Object.keys(figure(`${pourId}-retarder-packages`).inputs)).toEqual(
        doseMarks.map(({ beforeStripId }) => `dose before ${beforeStripId}`),
      )
    expect(quantities.filter(({ id }) => id.endsWith('-retarder-packages'))).toHaveLength(dosed.length)
  })

  it('are what their formulas say', () => {
    const own = quantities.filter(({ id }) => /-material-|-retarder-packages$/.test(id))
    expect(own.length).toBeGreaterThan(2 * pours.length)
    for (const each of own) expect(evaluateFormula(each)).toBeCloseTo(each.value, 6)
  })
})
