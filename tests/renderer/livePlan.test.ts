import { describe, expect, it } from 'vitest'
import { moveSelection } from '../../core/document/commands/moveSelection'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { createMemo } from '../../core/plan/memo'
import { deriveHour, deriveLive } from '../../renderer/store/livePlan'
import { schoolCourt } from '../../samples/sites/schoolCourt'
import type { Site } from '../../shared/document/site'

const date = '2026-07-21'
const edited = (site: Site, id: string): Site => {
  const result = moveSelection([id], [0.0254, 0])(site)
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return result.value
}

describe('what the page works out itself', () => {
  const site = schoolCourt()
  const memo = createMemo()
  const live = deriveLive(site, date, memo)
  const noonMs = live.day!.startMs + 12 * 3_600_000
  const { shade } = deriveHour(live, noonMs, memo)
  const counts = () => Object.fromEntries(memo.computed)

  it('keeps the very shade it has while a corner of a slab moves', () => {
    const before = counts()
    const moved = deriveLive(edited(site, site.slabs[0]!.outline.vertices[0]!.id), date, memo)
    expect(deriveHour(moved, noonMs, memo).shade).toBe(shade)
    expect(moved.slabs[0]).not.toBe(live.slabs[0])
    expect(counts()).toEqual({ ...before, slab: before.slab! + 1, live: before.live! + 1 })
  })

  it('throws anew only the shade of the caster that moves', () => {
    const moved = deriveLive(edited(site, site.casters[0]!.id), date, memo)
    const after = deriveHour(moved, noonMs, memo).shade
    expect(moved.casters.map((caster, i) => caster === live.casters[i])).toEqual(site.casters.map((_, i) => i > 0))
    const partsOf = (levels: typeof shade) => levels.flatMap(({ parts }) => parts)
    const kept = new Set(partsOf(shade))
    const [anew, others] = [
      partsOf(after).filter(part => !kept.has(part)),
      partsOf(after).filter(part => kept.has(part)),
    ]
    expect(anew).toEqual(
      partsOf(deriveHour(deriveLive(moved.site, date, createMemo()), noonMs, createMemo()).shade).slice(0, anew.length),
    )
    expect([anew.length > 0, others.length > 0, anew.length + others.length]).toEqual([true, true, kept.size])
  })

  it('throws all shade anew at another hour, and the very same at the same again', () => {
    const later = deriveHour(live, noonMs + 3_600_000, memo).shade
    expect(later.flatMap(({ parts }) => parts).some(part => shade.some(({ parts }) => parts.includes(part)))).toBe(
      false,
    )
    expect(later).toEqual(deriveHour(live, noonMs + 3_600_000, createMemo()).shade)
  })

  it('has one shade for the whole night, which is none', () => {
    const night = [1, 2].map(hour => deriveHour(live, live.day!.startMs + hour * 3_600_000, memo).shade)
    expect(night[0]).toEqual([])
    expect(night[1]).toBe(night[0])
  })

  it('works out a slab that cannot change once, and comes to what a copy of it comes to', () => {
    const frozen = edited(site, site.slabs[0]!.outline.vertices[0]!.id).slabs[0]!
    expect(resolveSlab(frozen)).toBe(resolveSlab(frozen))
    expect(resolveSlab(structuredClone(frozen))).toEqual(resolveSlab(frozen))
  })

  it('leaves the rings alone that an edit leaves alone', () => {
    const [first, second] = site.slabs[0]!.outline.vertices
    const once = edited(site, first!.id)
    const [before, after] = [once, edited(once, second!.id)].map(each => resolveSlab(each.slabs[0]!))
    expect(before!.openings).toHaveLength(5)
    before!.openings.forEach(({ ring }, i) => {
      expect(after!.openings[i]!.ring).toBe(ring)
    })
    expect(after!.outline).not.toEqual(before!.outline)
  })
})
