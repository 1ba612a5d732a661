import { describe, expect, it } from 'vitest'
import { derivePlan } from '../../core/plan/derivePlan'
import { narrowPours } from '../../core/pours/narrowPours'
import type { Site } from '../../shared/document/site'
import { sampleSite } from '../plan/sampleSite'

const ftM = 0.3048
const rectangle = (x0: number, y0: number, x1: number, y1: number) => {
  const ring = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ].map(([x, y]) => [x! * ftM, y! * ftM] as const)
  return {
    outer: ring.map((from, i) => ({ edgeId: `e${i + 1}`, from, to: ring[(i + 1) % 4]! })),
    holes: [],
  }
}
const narrowestFt = (found: ReturnType<typeof narrowPours>) => Number(found[0]?.values.widthM) / ftM

describe('pours too narrow to work on', () => {
  it('are told of once, with the narrowest, where the slab is wider', () => {
    const pours = [
      { id: 'n1', region: rectangle(0, 0, 3, 20) },
      { id: 'n2', region: rectangle(3, 0, 5.5, 20) },
      { id: 'n3', region: rectangle(5.5, 0, 20, 20) },
    ]
    const found = narrowPours('Patio', rectangle(0, 0, 20, 20), pours, 4 * ftM)
    expect(found).toHaveLength(1)
    expect(found[0]).toMatchObject({ code: 'poursNarrow', values: { count: 2, slab: 'Patio' }, at: { entityId: 'n2' } })
    expect(narrowestFt(found)).toBeCloseTo(2.5, 9)
  })

  it('are nothing to tell of on a walk that is as narrow, or at the width itself', () => {
    const walk = rectangle(0, 0, 3, 40)
    expect(narrowPours('Walk', walk, [{ id: 'n1', region: rectangle(0, 0, 3, 20) }], 4 * ftM)).toEqual([])
    expect(
      narrowPours('Walk', rectangle(0, 0, 20, 20), [{ id: 'n1', region: rectangle(0, 0, 4, 20) }], 4 * ftM),
    ).toEqual([])
  })

  it('are told of where the largest pour is typed too small for any', () => {
    const site: Site = { ...sampleSite('l-patio'), capacity: { capM2: 20 * ftM * ftM } }
    const words = (of: Site) => {
      const plan = derivePlan(of, { date: '2026-07-21', budget: 'small' })
      if (!plan.ok) throw new Error('no plan')
      return plan.value.problems.filter(({ code }) => code === 'poursNarrow').map(({ message }) => message)
    }
    const told = words(site)
    expect(told).toHaveLength(site.slabs.length)
    expect(told[0]).toMatch(
      / pours are less than the 4′ 0″ wide that a mat and a kneeling finisher take; the narrowest is /,
    )
    expect(words(sampleSite('l-patio'))).toEqual([])
  })
})
