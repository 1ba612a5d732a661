import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { addSlab } from '../../core/document/commands/addSlab'
import type { Command } from '../../core/document/commands/editSite'
import { setArc } from '../../core/document/commands/setArc'
import { setCircleRadius } from '../../core/document/commands/setCircleRadius'
import { splitEdge } from '../../core/document/commands/splitEdge'
import { edgeFromRise } from '../../core/geometry/resolvePath'
import { outlineDimensions } from '../../core/reports/dimensions'
import { emptySite } from '../../renderer/app/emptySite'
import type { Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import { chain, done, faultsOf, outlineArea, refusal } from './edit'

const blank = emptySite('test', 'Test')
const drawn = (command: Command): Site => done(command(blank))
/** 8 × 6 m with an arc over its top, its edge cut in two places so that three edges make one arc. */
const arched = (riseM: number): Site => {
  const plain = drawn(
    addSlab({
      name: 'Patio',
      outline: { kind: 'corners', corners: [{ at: [0, 0] }, { at: [8, 0] }, { at: [8, 6], riseM }, { at: [0, 6] }] },
    }),
  )
  const top = plain.slabs[0]!.outline.edges[2]!.id
  return chain(plain, splitEdge(top, 0.3), splitEdge(top, 0.5))
}
const run = (site: Site) => site.slabs[0]!.outline.edges.slice(2, 5).map(({ id }) => id)
/** The arc as its dimension reads it: one, or the edges would not lie on one circle. */
const arcOf = (site: Site) => {
  const { vertices, edges } = site.slabs[0]!.outline
  const ring = edges.map(({ id, riseM }, i) =>
    edgeFromRise(id, vertices[i]!.at, vertices[(i + 1) % vertices.length]!.at, riseM),
  )
  const arcs = outlineDimensions(ring).filter(each => each.kind === 'arc')
  expect(arcs).toHaveLength(1)
  return arcs[0]!
}
const ends = (site: Site): readonly Pt[] => [2, 5].map(i => site.slabs[0]!.outline.vertices[i]!.at)

describe('an arc that several edges make together', () => {
  it('takes a radius or a rise with both ends kept, on its own side of the chord', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 9, noNaN: true }),
        fc.boolean(),
        fc.double({ min: 4.01, max: 60, noNaN: true }),
        (wish, bulgesIn, radiusM) => {
          // An arc that bends in past the other side would turn the outline around.
          const rise = bulgesIn ? Math.min(wish, 3.9) : wish
          const before = arched(bulgesIn ? -rise : rise)
          const after = done(setArc(run(before), { radiusM })(before))
          const arc = arcOf(after)
          expect(arc.radiusM).toBeCloseTo(radiusM, 6)
          expect(Math.sign(arc.sweepRad)).toBe(bulgesIn ? -1 : 1)
          // More than a half circle stays more than one: |rise| > half the chord of 8 m.
          expect(Math.abs(arc.sweepRad) > Math.PI).toBe(rise > 4)
          // Chord of a circle: c = 2R sin(θ/2), CRC Standard Mathematical Tables, "Plane figures".
          expect(2 * radiusM * Math.sin(Math.abs(arc.sweepRad) / 2)).toBeCloseTo(8, 6)
          expect(ends(after)).toEqual(ends(before))
          const back = done(setArc(run(after), { riseM: rise })(after))
          expect(outlineArea(back)).toBeCloseTo(outlineArea(before), 6)
        },
      ),
      { seed: 11, numRuns: 60 },
    )
  })

  it('takes a length and keeps its shape, the end that stays at its place', () => {
    const before = arched(2)
    for (const [moves, kept] of [
      ['end', 0],
      ['start', 1],
    ] as const) {
      const after = done(setArc(run(before), { lengthM: 12, moves })(before))
      expect(arcOf(after).lengthM).toBeCloseTo(12, 9)
      expect(arcOf(after).sweepRad).toBeCloseTo(arcOf(before).sweepRad, 9)
      expect(ends(after)[kept]).toEqual(ends(before)[kept])
      expect(faultsOf(after)).toEqual([])
    }
  })

  it('takes its chord as well, and carries the straight sides along, so that they stay square', () => {
    const before = arched(2)
    for (const [moves, xs] of [
      ['end', [-2, 8]],
      ['start', [0, 10]],
      ['both', [-1, 9]],
    ] as const) {
      const after = done(setArc(run(before), { chordM: 10, moves })(before))
      const { vertices } = after.slabs[0]!.outline
      expect(arcOf(after).sweepRad).toBeCloseTo(arcOf(before).sweepRad, 9)
      // The side of the rectangle below each end went with it.
      for (const [i, x] of [
        [0, xs[0]],
        [1, xs[1]],
        [2, xs[1]],
        [5, xs[0]],
      ] as const)
        expect(vertices[i]!.at).toEqual([expect.closeTo(x, 9), expect.closeTo(i < 2 ? 0 : 6, 9)])
      expect(faultsOf(after)).toEqual([])
    }
    // A rise of 2 m over a chord of 8 m is a radius of 5 m (c²/8s + s/2); the same shape over 10 m one of 6.25 m.
    expect(arcOf(done(setArc(run(before), { chordM: 10, moves: 'end' })(before))).radiusM).toBeCloseTo(6.25, 9)
  })

  it('is refused what it cannot span, what closes on itself, and nothing at all', () => {
    const site = arched(2)
    expect(refusal(setArc(run(site), { radiusM: 3.9 })(site))).toBe('radiusTooSmall')
    expect(refusal(setArc(run(site), { riseM: 90 })(site))).toBe('riseTooLarge')
    for (const lengthM of [0, Number.NaN]) {
      expect(refusal(setArc(run(site), { lengthM, moves: 'end' })(site))).toBe('badMeasure')
      expect(refusal(setArc(run(site), { chordM: lengthM, moves: 'end' })(site))).toBe('badMeasure')
      expect(refusal(setArc(run(site), { riseM: lengthM })(site))).toBe('badMeasure')
    }
  })
})

it('one edge without a rise is straight', () => {
  const site = drawn(
    addSlab({
      name: 'Patio',
      outline: { kind: 'corners', corners: [{ at: [0, 0] }, { at: [4, 0], riseM: 1 }, { at: [0, 4] }] },
    }),
  )
  const after = done(setArc([site.slabs[0]!.outline.edges[1]!.id], { riseM: 0 })(site))
  expect(outlineArea(after)).toBeCloseTo(8, 12)
})

it('a circle grows about its center', () => {
  const site = drawn(addSlab({ name: 'Court', outline: { kind: 'circle', center: [3, -2], radiusM: 2 } }))
  const { edges } = site.slabs[0]!.outline
  const after = done(setCircleRadius(edges[1]!.id, 5)(site))
  expect(outlineArea(after)).toBeCloseTo(25 * Math.PI, 9)
  expect(arcOf(after).center[0]).toBeCloseTo(3, 9)
  expect(arcOf(after).center[1]).toBeCloseTo(-2, 9)
  expect(refusal(setCircleRadius(edges[0]!.id, 0)(site))).toBe('badMeasure')
})
