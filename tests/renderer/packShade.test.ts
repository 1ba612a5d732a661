import { describe, expect, it } from 'vitest'
import { derivePlan } from '../../core/plan/derivePlan'
import { type PackedShade, packShade, unpackShade } from '../../renderer/worker/packShade'
import { lPatio } from '../../samples/sites/lPatio'
import { schoolCourt } from '../../samples/sites/schoolCourt'

const shadeOf = (site: ReturnType<typeof schoolCourt>) => {
  const plan = derivePlan(site, { date: '2026-07-21', budget: 'small', stepMin: 30 })
  if (!plan.ok) throw new Error(JSON.stringify(plan.error))
  return plan.value.shade
}

const court = shadeOf(schoolCourt())

describe('the shade of a day crosses from the worker', () => {
  it.each([
    ['a court', court],
    ['a patio', shadeOf(lPatio())],
  ])('with every outline and dapple of %s as it was', (_, shade) => {
    expect(shade.shadows.some(({ polygons }) => polygons.length > 0)).toBe(true)
    const sent = structuredClone(packShade(shade)) as PackedShade
    expect(unpackShade(sent)).toEqual(shade)
  })

  it('with its points in one block, which holds nearly all of it', () => {
    const packed = packShade(court)
    const { points, shadows } = packed
    expect(points.byteLength).toBeGreaterThan(4 * JSON.stringify(shadows).length)
  })

  it('and is made into rings once, when it is asked for', () => {
    const { shadows, ...rest } = unpackShade(packShade(court))
    const again = unpackShade(packShade({ ...rest, shadows }))
    expect(again.shadows).toBe(again.shadows)
  })
})
