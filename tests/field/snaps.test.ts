import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { editablePaths } from '../../core/document/commands/findPath'
import { siteEntities } from '../../core/document/commands/siteEntities'
import { findSnaps } from '../../core/geometry/field/findSnaps'
import { snapIndex } from '../../core/geometry/field/snapIndex'
import { feetToMeters as ft } from '../../core/units/convert'
import { kidneyPoolDeck } from '../../samples/sites/kidneyPoolDeck'
import { lPatio } from '../../samples/sites/lPatio'
import type { Path } from '../../shared/document/path'
import type { Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'

const site = lPatio()
const index = snapIndex(site)
const none: ReadonlySet<string> = new Set()
const radiusM = 0.15
const first = (cursor: Pt, options = {}, exclude = none) => findSnaps(cursor, index, radiusM, exclude, options)[0]

describe('the pointer', () => {
  it('catches a corner before the edges that meet there', () => {
    const snap = first([0.05, 0.04])
    expect(snap).toMatchObject({ kind: 'corner', words: 'corner', at: [0, 0] })
  })

  it('catches the middle of an edge, corner to corner, and any place on it', () => {
    expect(first([ft(28) + 0.05, ft(31) + 0.02])).toMatchObject({ kind: 'middle', at: [ft(28), ft(31)] })
    const on = first([ft(28) + 0.05, ft(35)])!
    expect(on.kind).toBe('onEdge')
    expect(on.at[0]).toBeCloseTo(ft(28), 12)
  })

  it('catches places on arcs', () => {
    const on = first([ft(16) + 0.03, ft(29) + 0.3])!
    expect(on.kind).toBe('onEdge')
    expect(Math.hypot(on.at[0] - ft(14), on.at[1] - ft(29))).toBeCloseTo(ft(2), 9)
  })

  it('catches the prolongation of an edge, and where two of them meet', () => {
    const line = first([ft(28) + 0.04, ft(12)])!
    expect(line).toMatchObject({ kind: 'inLine', words: 'in line' })
    expect(line.at[0]).toBeCloseTo(ft(28), 12)
    // The patio's rounded corner, prolonged top edge and left edge of the upper wing meet inside the slab's outline.
    const both = first([ft(50) + 0.05, ft(42) - 0.04])!
    expect(both).toMatchObject({ words: 'in line', holds: [{ words: 'in line' }, { words: 'in line' }] })
    expect(both.at[0]).toBeCloseTo(ft(50), 9)
    expect(both.at[1]).toBeCloseTo(ft(42), 9)
  })

  it('holds a line square to and alongside what is there', () => {
    const from: Pt = [ft(70), ft(60)]
    const snaps = findSnaps([ft(70) + 0.05, ft(80)], index, radiusM, none, { from })
    expect(
      snaps.some(({ kind, at }) => (kind === 'squareTo' || kind === 'alongside') && Math.abs(at[0] - ft(70)) < 1e-9),
    ).toBe(true)
    const foot = findSnaps([ft(40), 0.05], index, radiusM, none, { from: [ft(40), ft(8)] })[0]!
    expect(foot.words).toBe('on edge, square to')
    expect(foot.at[1]).toBeCloseTo(0, 12)
  })

  it('catches trunks, spots, what stands in a slab and the centers of circles, each at its very point', () => {
    const site = lPatio()
    const own = snapIndex(site)
    const of = (words: string) => own.centers.filter(center => center.words === words).map(({ at }) => at)
    expect(of('trunk')).toEqual(site.casters.flatMap(caster => (caster.kind === 'tree' ? [caster.at] : [])))
    const { truckSpots, pumpSpots, washouts, ways } = site.access!
    expect(of('spot')).toEqual([...truckSpots, ...pumpSpots, ...washouts].map(({ at }) => at))
    expect(of('middle')).toEqual(ways.map(({ at }) => at))
    expect(of('trunk').length * of('spot').length).toBeGreaterThan(0)
    fc.assert(
      fc.property(
        fc.constantFrom(...own.centers),
        fc.double({ min: 0.001, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 0.999, noNaN: true }),
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        (center, reachM, share, angle) => {
          const far = reachM * share
          const cursor: Pt = [center.at[0] + far * Math.cos(angle), center.at[1] + far * Math.sin(angle)]
          const caught = findSnaps(cursor, own, reachM, none)
          const nearer = [...own.corners, ...own.centers].some(
            ({ at }) => at !== center.at && Math.hypot(at[0] - cursor[0], at[1] - cursor[1]) <= reachM,
          )
          expect(caught.some(({ at }) => at[0] === center.at[0] && at[1] === center.at[1])).toBe(true)
          if (!nearer) expect(caught[0]).toMatchObject({ kind: 'center', words: center.words, at: center.at })
          const moved = findSnaps(cursor, own, reachM, new Set(center.owners))
          expect(moved.some(({ kind, at }) => kind === 'center' && at === center.at)).toBe(false)
        },
      ),
      { seed: 29, numRuns: 200 },
    )
  })

  it('catches the center of a circle, and none of a shape with other arcs', () => {
    const drain = lPatio()
    const circle = (id: string, riseM: number): Path => ({
      id,
      vertices: [
        { id: `${id}1`, at: [3, 3] },
        { id: `${id}2`, at: [4, 3] },
      ],
      edges: [
        { id: `${id}3`, riseM },
        { id: `${id}4`, riseM: 0.5 },
      ],
    })
    const withOpening = (riseM: number): Site => ({
      ...drain,
      slabs: drain.slabs.map(slab => ({ ...slab, openings: [{ id: 'o', kind: 'drain', path: circle('c', riseM) }] })),
    })
    const caught = findSnaps([3.52, 3.01], snapIndex(withOpening(0.5)), radiusM, none)[0]!
    expect(caught).toMatchObject({ kind: 'center', words: 'center' })
    expect(caught.at[0]).toBeCloseTo(3.5, 12)
    expect(caught.at[1]).toBeCloseTo(3, 12)
    expect(snapIndex(withOpening(0.4)).centers.some(({ owners }) => owners.includes('o'))).toBe(false)
  })

  it('falls back to the grid', () => {
    expect(first([90.02, 90.97], { gridM: 0.5 })).toMatchObject({ kind: 'grid', at: [90, 91] })
    expect(first([90.2, 90.2], { gridM: 1 })).toBeUndefined()
  })

  it('is never held by what is being moved, and never beyond its reach', () => {
    for (const each of [site, kidneyPoolDeck()]) {
      const own = snapIndex(each)
      const ids = [
        ...siteEntities(each).map(({ row }) => row.id),
        ...editablePaths(each).flatMap(({ vertices, edges }) => [...vertices, ...edges].map(({ id }) => id)),
      ]
      const places = [...own.corners, ...own.centers].map(({ at }) => at)
      fc.assert(
        fc.property(
          fc.nat(places.length - 1),
          fc.double({ min: -0.2, max: 0.2, noNaN: true }),
          fc.subarray(ids, { minLength: 1, maxLength: 6 }),
          fc.boolean(),
          (at, off, chosen, drawing) => {
            const cursor: Pt = [places[at]![0] + off, places[at]![1] - off / 2]
            const exclude = new Set(chosen)
            const snaps = findSnaps(cursor, own, radiusM, exclude, drawing ? { from: [1, 1] } : {})
            for (const snap of snaps) {
              expect(snap.holds.some(({ ids }) => ids.some(id => exclude.has(id)))).toBe(false)
              expect(snap.distanceM).toBeLessThanOrEqual(radiusM)
              expect(Math.hypot(snap.at[0] - cursor[0], snap.at[1] - cursor[1])).toBeCloseTo(snap.distanceM, 12)
            }
          },
        ),
        { seed: 17, numRuns: 150 },
      )
    }
  })

  it('is not held by the edges of a corner that is being moved', () => {
    const vertex = site.slabs[0]!.outline.vertices[0]!
    const around = findSnaps([0.02, ft(10)], index, radiusM, new Set([vertex.id]))
    expect(around.filter(({ kind }) => kind === 'onEdge')).toEqual([])
  })
})
