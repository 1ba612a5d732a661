import { describe, expect, it } from 'vitest'
import { proposePours } from '../../core/pours/proposePours'
import { checkProposal } from '../pours/checkProposal'
import { checkWishes } from '../pours/checkWishes'
import { randomSlab } from '../pours/randomSlabs'
import { randomWishes } from '../pours/randomWishes'
import { ft2M2 } from '../pours/shapes'

describe('a long run of the splitter', () => {
  it('tiles 6,000 random slabs at the fewest pours', { timeout: 3_600_000 }, () => {
    for (let seed = 2_000_000; seed < 2_006_000; seed++) {
      const slab = randomSlab(seed)
      const cap = (400 + 200 * (seed % 4)) * ft2M2
      const proposal = proposePours({ slabId: 's1', part: 'whole', region: slab, capM2: cap, budget: 'small' })
      checkProposal(slab, cap, proposal, `slab ${seed}`)
      expect(proposal.pours.length, `slab ${seed}`).toBe(proposal.lowerBound)
    }
  })

  it('tiles 300 random slabs with the full budget', { timeout: 3_600_000 }, () => {
    for (let seed = 3_000_000; seed < 3_000_300; seed++) {
      const slab = randomSlab(seed)
      const cap = (900 + 300 * (seed % 2)) * ft2M2
      checkProposal(slab, cap, proposePours({ slabId: 's1', part: 'whole', region: slab, capM2: cap }), `slab ${seed}`)
    }
  })

  it('keeps to the wishes on 2,000 random slabs', { timeout: 3_600_000 }, () => {
    for (let seed = 4_000_000; seed < 4_002_000; seed++) {
      const slab = randomSlab(seed)
      const cap = (400 + 200 * (seed % 4)) * ft2M2
      const wishes = randomWishes(slab, seed, { required: 2, lines: 1, areas: 1, width: true })
      const input = { slabId: 's1', part: 'whole', region: slab, capM2: cap, budget: 'small', wishes } as const
      const proposal = proposePours(input)
      const isStopped = proposal.findings.some(({ severity }) => severity === 'stop')
      checkWishes(slab, wishes, proposal, `slab ${seed}`)
      checkProposal(slab, isStopped ? Number.POSITIVE_INFINITY : cap, { ...proposal, findings: [] }, `slab ${seed}`)
    }
  })
})
