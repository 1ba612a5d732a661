import fc from 'fast-check'
import polygonClipping from 'polygon-clipping'
import { describe, expect, it } from 'vitest'
import type { CurveRegion } from '../../core/geometry/curve'
import { pourFaces } from '../../core/pours/pourFaces'
import type { Proposal } from '../../core/pours/proposal'
import { proposePours } from '../../core/pours/proposePours'
import { acceptProposal } from './acceptProposal'
import { flatRing, regionArea } from './curveMeasures'
import { mirrored, moved, randomSlab, startedLater } from './randomSlabs'
import { ft2M2 } from './shapes'

const capFt2 = fc.constantFrom(400, 600, 800, 1000)
const wideCapFt2 = fc.constantFrom(900, 1200)
const slabSeed = fc.integer({ min: 1, max: 1_000_000 })

const split = (region: CurveRegion, capM2: number, budget: 'small' | 'full' | number): Proposal =>
  proposePours({ slabId: 's1', part: 'whole', region, capM2, budget })

type Poly = [number, number][][]
/** To the nanometer: the library does not close rings whose points differ in the last bits. */
const flat = (region: CurveRegion): Poly =>
  [region.outer, ...region.holes].map(ring =>
    flatRing(ring, 6).map(([x, y]): [number, number] => [Math.round(x * 1e9) / 1e9, Math.round(y * 1e9) / 1e9]),
  )
const multiArea = (shapes: readonly Poly[]): number => {
  let sum = 0
  for (const shape of shapes)
    shape.forEach((ring, i) => {
      let twice = 0
      ring.forEach(([x, y], k) => {
        const [nx, ny] = ring[(k + 1) % ring.length]!
        twice += (x - ring[0]![0]) * (ny - ring[0]![1]) - (y - ring[0]![1]) * (nx - ring[0]![0])
      })
      sum += (i === 0 ? 1 : -1) * Math.abs(twice / 2)
    })
  return sum
}

describe('on random slabs the pours', () => {
  it('do not overlap, by a boolean library apart from ours (120 slabs)', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(slabSeed, capFt2, (seed, cap) => {
        const slab = randomSlab(seed)
        const pours = split(slab, cap * ft2M2, 'small').pours.map(p => flat(p.region))
        const area = regionArea(slab)
        for (let i = 0; i < pours.length; i++)
          for (let j = 0; j < i; j++)
            expect(multiArea(polygonClipping.intersection([pours[i]!], [pours[j]!])), `slab ${seed}`).toBeLessThan(
              1e-9 * area + 1e-7,
            )
      }),
      { seed: 13, numRuns: 120 },
    )
  })

  it('cost the same when the slab is turned, moved, mirrored or begun elsewhere (12 slabs)', {
    timeout: 60_000,
  }, () => {
    const turn = fc.double({ min: 0, max: 6.28, noNaN: true })
    const agreements: boolean[] = []
    const step = fc.double({ min: -500, max: 500, noNaN: true })
    fc.assert(
      fc.property(
        slabSeed,
        wideCapFt2,
        turn,
        step,
        step,
        fc.integer({ min: 1, max: 7 }),
        (seed, cap, rad, dx, dy, by) => {
          const slab = randomSlab(seed)
          const plain = split(slab, cap * ft2M2, 'full')
          for (const [what, other] of [
            ['turned', moved(slab, rad, 0, 0)],
            ['moved', moved(slab, 0, dx, dy)],
            ['mirrored', mirrored(slab)],
            ['begun later', startedLater(slab, by)],
          ] as const) {
            const again = split(other, cap * ft2M2, 'full')
            expect(again.pours.length, `slab ${seed} ${what}`).toBe(plain.pours.length)
            const off = Math.abs(again.totalCost - plain.totalCost) / Math.max(plain.totalCost, 1)
            // Sliding the joints of a proven plan may end in one of two minima close by.
            if (plain.proven && again.proven) agreements.push(off <= 1e-6)
            expect(off, `slab ${seed} ${what}: ${plain.totalCost} against ${again.totalCost}`).toBeLessThanOrEqual(0.01)
          }
        },
      ),
      { seed: 14, numRuns: 12 },
    )
    expect(agreements.length).toBeGreaterThan(20)
    expect(agreements.filter(Boolean).length / agreements.length).toBeGreaterThanOrEqual(0.9)
  })

  it('come back from their joints and seeds alone (120 slabs)', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(slabSeed, capFt2, (seed, cap) => {
        const slab = randomSlab(seed)
        const proposal = split(slab, cap * ft2M2, 'small')
        const { faces, findings } = pourFaces(slab, acceptProposal(proposal))
        expect(findings, `slab ${seed}`).toEqual([])
        expect(faces.length, `slab ${seed}`).toBe(proposal.pours.length)
        for (const face of faces)
          expect(
            Math.abs(face.areaM2 - proposal.pours[Number(face.pourId!.slice(1)) - 1]!.areaM2),
            `slab ${seed}`,
          ).toBeLessThan(1e-9 * regionArea(slab))
      }),
      { seed: 15, numRuns: 120 },
    )
  })
})
