import { freeze } from 'immer'
import { describe, expect, it } from 'vitest'
import { findExcess } from '../../core/document/findExcess'
import { invariants } from '../../core/document/invariants'
import { serializeSite } from '../../core/document/serializeSite'
import { schoolCourt } from '../../samples/sites/schoolCourt'
import type { Site } from '../../shared/document/site'
import type { Slab } from '../../shared/document/slab'
import { limits } from '../../shared/limits'

const court = freeze(schoolCourt(), true)

/** What breaks, the same whether the entities are known from an earlier edit or all read anew. */
const broken = (site: Site, before?: Site) => {
  const anew = invariants(structuredClone(site))
  expect(invariants(site, before)).toEqual(anew)
  return anew.map(({ code, field }) => `${code} ${field}`)
}

const edited = (change: Partial<Site>): Site => freeze({ ...court, ...change }, true)
const [slab] = court.slabs as [Slab]

describe('an edit of a site that cannot change', () => {
  it('that is sound stays so', () => {
    expect(broken(court)).toEqual([])
    const tree = { ...court.casters[3]!, id: `c${court.nextId}` }
    expect(broken(edited({ casters: [...court.casters, tree], nextId: court.nextId + 1 }), court)).toEqual([])
  })

  it('is refused for the row it brought, not for those that stayed', () => {
    const placeless = { id: 'p1', name: 'Gate', slabId: slab.id } as Site['points'][number]
    expect(broken(edited({ points: [...court.points, placeless] }), court)[0]).toContain('/points/2/at')
    expect(broken(edited({ slabs: {} as Site['slabs'] }), court)[0]).toContain('/slabs')
  })

  it('is measured with what stayed: extent, rows and corners of all entities together', () => {
    expect(findExcess(court)).toBeUndefined()
    const far = { ...court.points[0]!, at: [limits.extentM + 1000, 0] as const }
    const vertices = Array.from({ length: limits.verticesPerRing + 1 }, (_, i) => ({
      id: `v${i}`,
      at: [0, i / 1000] as const,
    }))
    const points = Array.from({ length: limits.listRows + 1 }, () => court.points[0]!)
    for (const [site, limit] of [
      [edited({ points: [far] }), 'extentM'],
      [edited({ slabs: [{ ...slab, outline: { ...slab.outline, vertices } }] }), 'verticesPerRing'],
      [edited({ points }), 'listRows'],
    ] as const) {
      const told = findExcess(site)
      expect(told?.values.limit).toBe(limit)
      expect(told).toEqual(findExcess(structuredClone(site)))
    }
  })
})

describe('the file of a site that cannot change', () => {
  it('is the same bytes whether its rows were written before or not', () => {
    const fresh = () => serializeSite(structuredClone(court))
    expect(serializeSite(court)).toBe(fresh())
    expect(serializeSite(court)).toBe(fresh())
    const [opening, ...others] = slab.openings
    const moved = edited({ slabs: [{ ...slab, openings: [{ ...opening!, name: 'Planter bed' }, ...others] }] })
    expect(serializeSite(moved)).toBe(serializeSite(structuredClone(moved)))
    // The same row further in: it is indented as it stands there.
    const turned = edited({ points: [slab.openings[0] as unknown as Site['points'][number]] })
    expect(serializeSite(turned)).toBe(serializeSite(structuredClone(turned)))
  })
})
