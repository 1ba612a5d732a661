import { describe, expect, it } from 'vitest'
import { createMemo } from '../../core/plan/memo'
import { feetToMeters as ft } from '../../core/units/convert'
import { pickAt } from '../../renderer/editor/pickAt'
import { deriveLive } from '../../renderer/store/livePlan'
import { lPatio } from '../../samples/sites/lPatio'

const site = lPatio()
const live = deriveLive(site, '2026-07-21', createMemo())
const slab = site.slabs[0]!
const [house, maple, fence] = site.casters
const at = (xFt: number, yFt: number) => pickAt([ft(xFt), ft(yFt)], { live, nearM: 0.1 })

describe('a click on the plan', () => {
  it('picks the smallest thing under it', () => {
    expect(at(14, 29)).toBe(slab.openings[0]!.id)
    expect(at(0.5, 20)).toBe(slab.borders[0]!.id)
    expect(at(10, 10)).toBe(slab.id)
    expect(at(20, 3)).toBe(site.points[0]!.id)
  })

  it('picks casters by their shape, a wall by nearness', () => {
    expect(at(20, -10)).toBe(house!.id)
    expect(at(-18, 27)).toBe(maple!.id)
    expect(at(58.2, 30)).toBe(fence!.id)
    expect(at(59, 30)).toBeNull()
  })

  it('on open ground picks nothing', () => {
    expect(at(45, 35)).toBeNull()
  })
})
