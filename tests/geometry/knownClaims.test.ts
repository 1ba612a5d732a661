import fc from 'fast-check'
import { freeze } from 'immer'
import { describe, expect, it } from 'vitest'
import { moveSelection } from '../../core/document/commands/moveSelection'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { plaza } from '../../samples/sites/plaza'
import { schoolCourt } from '../../samples/sites/schoolCourt'
import type { Site } from '../../shared/document/site'

const sites = [schoolCourt, plaza].map(make => freeze(make(), true))

/** Corners of the outline, of openings and of bands: whatever can be dragged while claims depend on it. */
const corners = ({ slabs: [slab] }: Site): readonly string[] =>
  slab
    ? [slab.outline, ...slab.openings.map(({ path }) => path), ...slab.bands.map(({ line }) => line)].flatMap(
        ({ vertices }) => vertices.map(({ id }) => id),
      )
    : []

const step = fc.record({
  site: fc.nat(sites.length - 1),
  corner: fc.nat(),
  by: fc.tuple(fc.integer({ min: -20, max: 20 }), fc.integer({ min: -20, max: 20 })),
})

describe('a slab whose corners are moved one after the other', () => {
  it('comes out as if it were worked out for the first time', () => {
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 8 }), steps => {
        const now = [...sites]
        for (const { site, corner, by } of steps) {
          const ids = corners(now[site]!)
          const moved = moveSelection([ids[corner % ids.length]!], [by[0] * 0.0254, by[1] * 0.0254])(now[site]!)
          if (!moved.ok) continue
          now[site] = moved.value
          const [slab] = moved.value.slabs
          const known = resolveSlab(slab!)
          const anew = resolveSlab(structuredClone(slab!))
          expect(known).toEqual(anew)
          expect(known.field).toEqual(anew.field)
        }
      }),
      { seed: 7, numRuns: 12 },
    )
  })

  it('keeps the ground of what the move did not reach as the same object', () => {
    const [court] = sites as [Site]
    const [was] = court.slabs
    const moved = moveSelection([was!.outline.vertices[0]!.id], [-0.0254, 0])(court)
    if (!moved.ok) throw new Error('refused')
    const [before, after] = [resolveSlab(was!), resolveSlab(moved.value.slabs[0]!)]
    const kept = after.borders.filter(({ shape }, i) => shape === before.borders[i]!.shape)
    expect(kept.length).toBe(before.borders.filter(({ pathId }) => pathId !== was!.outline.id).length)
  })
})
