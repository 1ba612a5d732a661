import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CurveRegion } from '../../core/geometry/curve'
import type { Proposal } from '../../core/pours/proposal'
import { proposePours } from '../../core/pours/proposePours'
import { checkProposal } from './checkProposal'
import { randomSlab } from './randomSlabs'
import { ft2M2 } from './shapes'

const capFt2 = fc.constantFrom(400, 600, 800, 1000)
const wideCapFt2 = fc.constantFrom(900, 1200)
const slabSeed = fc.integer({ min: 1, max: 1_000_000 })

const split = (region: CurveRegion, capM2: number, budget: 'small' | 'full' | number): Proposal =>
  proposePours({ slabId: 's1', part: 'whole', region, capM2, budget })

const deepFreeze = <T>(value: T): T => {
  if (value && typeof value === 'object' && !Object.isFrozen(value)) {
    Object.freeze(value)
    for (const inner of Object.values(value)) deepFreeze(inner)
  }
  return value
}

describe('on random slabs the pours', () => {
  it('tile the slab, keep under the cap and its edge ids, at the fewest possible (1,000 slabs, small budget)', {
    timeout: 240_000,
  }, () => {
    fc.assert(
      fc.property(slabSeed, capFt2, (seed, cap) => {
        const slab = deepFreeze(randomSlab(seed))
        const proposal = split(slab, cap * ft2M2, 'small')
        checkProposal(slab, cap * ft2M2, proposal, `slab ${seed}`)
        expect(proposal.pours.length, `slab ${seed}`).toBe(proposal.lowerBound)
      }),
      { seed: 11, numRuns: 1000 },
    )
  })

  it('tile the slab with the full budget too (60 slabs)', { timeout: 240_000 }, () => {
    fc.assert(
      fc.property(slabSeed, wideCapFt2, (seed, cap) => {
        const slab = randomSlab(seed)
        checkProposal(slab, cap * ft2M2, split(slab, cap * ft2M2, 'full'), `slab ${seed}`)
      }),
      { seed: 12, numRuns: 60 },
    )
  })
})
