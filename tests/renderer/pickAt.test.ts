import { describe, expect, it } from 'vitest'
import { addSlab } from '../../core/document/commands/addSlab'
import type { Command } from '../../core/document/commands/editSite'
import { addSteps } from '../../core/document/commands/slabParts'
import { createMemo } from '../../core/plan/memo'
import { feetToMeters as ft } from '../../core/units/convert'
import { emptySite } from '../../renderer/app/emptySite'
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

  it('picks steps by their treads, along a straight edge and around an arc, and the slab beside them', () => {
    const steps = { risers: 3, riserM: 0.15, treadM: ft(1), widthM: ft(4), fromT: 0.25 }
    const corners = [
      { at: [0, 0] as const },
      { at: [ft(20), 0] as const, riseM: ft(3) },
      { at: [ft(20), ft(12)] as const },
      { at: [0, ft(12)] as const },
    ]
    let drawn = emptySite('stepped', 'Stepped')
    const run = (command: Command) => {
      const done = command(drawn)
      if (!done.ok) throw new Error(JSON.stringify(done.error))
      drawn = done.value
    }
    run(addSlab({ name: 'Patio', outline: { kind: 'corners', corners } }))
    const patio = drawn.slabs[0]!
    for (const edge of patio.outline.edges.slice(0, 2)) run(addSteps(patio.id, { ...steps, edgeId: edge.id }))
    const [straight, around] = drawn.slabs[0]!.steps.map(({ id }) => id)
    const stepped = deriveLive(drawn, '2026-07-21', createMemo())
    const pick = (xFt: number, yFt: number) => pickAt([ft(xFt), ft(yFt)], { live: stepped, nearM: 0.1 })
    // From 5 to 9 ft along the lower edge, two treads of a foot out.
    expect([pick(7, -1.9), pick(7, 0.5), pick(7, -2.2), pick(9.2, -1)]).toEqual([straight, patio.id, null, null])
    // The arc of 7.5 ft about (15.5, 6): a quarter along it stands lower right.
    const angle = -0.36
    const out = (r: number) => pick(15.5 + r * Math.cos(angle), 6 + r * Math.sin(angle))
    expect([out(8.5), out(7.3), out(9.8)]).toEqual([around, patio.id, null])
  })

  it('on open ground picks nothing', () => {
    expect(at(45, 35)).toBeNull()
  })
})
