import fc from 'fast-check'
import { applyPatches, enablePatches } from 'immer'
import { describe, expect, it } from 'vitest'
import { patchesBetween } from '../../renderer/worker/patchesBetween'
import { lPatio } from '../../samples/sites/lPatio'

enablePatches()

type Entity = { id: string; value: unknown }

const entity: fc.Arbitrary<Entity> = fc.record({
  id: fc.constantFrom('a1', 'b2', 'c3', 'd4', 'e5'),
  value: fc.oneof(fc.integer(), fc.string(), fc.array(fc.integer(), { maxLength: 4 })),
})
const document = fc.record(
  {
    list: fc.array(entity, { maxLength: 6 }),
    name: fc.string(),
    place: fc.record({ x: fc.integer(), y: fc.integer() }),
  },
  { requiredKeys: ['list', 'name'] },
)

describe('patches between two documents', () => {
  it('turn the one into the other', () => {
    fc.assert(
      fc.property(document, document, (from, to) => {
        expect(applyPatches(from, patchesBetween(from, to))).toEqual(to)
      }),
      { seed: 11, numRuns: 500 },
    )
  })

  it('are none where nothing changed', () => {
    const site = lPatio()
    expect(patchesBetween(site, site)).toEqual([])
  })

  it('keep the reference of every entity that did not change, wherever it moved', () => {
    const site = lPatio()
    const [house, ...others] = site.casters
    const copy = structuredClone(site)
    const changed = { ...site, casters: others }
    expect(house).toBeDefined()
    const after = applyPatches(copy, patchesBetween(site, changed))
    expect(after.casters).toEqual(others)
    expect(after.casters[0]).toBe(copy.casters[1])
    expect(after.casters[1]).toBe(copy.casters[2])
    expect(after.slabs).toBe(copy.slabs)
  })

  it('of one moved corner are one patch', () => {
    const site = lPatio()
    const slab = site.slabs[0]!
    const vertices = slab.outline.vertices.map((v, i) => (i === 2 ? { ...v, at: [15, 6] as const } : v))
    const moved = { ...site, slabs: [{ ...slab, outline: { ...slab.outline, vertices } }] }
    const patches = patchesBetween(site, moved)
    expect(patches.every(patch => patch.path.slice(0, 5).join('/') === 'slabs/0/outline/vertices/2')).toBe(true)
    expect(applyPatches(site, patches)).toEqual(moved)
  })
})
