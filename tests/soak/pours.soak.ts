import { writeFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { proposePours } from '../../core/pours/proposePours'
import { checkProposal } from '../pours/checkProposal'
import { benchSlabs, randomSlab } from '../pours/randomSlabs'
import { ft2M2 } from '../pours/shapes'

const capM2 = 900 * ft2M2

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

  it('makes the table of optima for slabs of up to five pours, with 25 times the budget', {
    timeout: 3_600_000,
  }, () => {
    const optima: Record<string, number> = {}
    for (const { name, region } of benchSlabs()) {
      const quick = proposePours({ slabId: 's1', part: 'whole', region, capM2, budget: 'small' })
      if (quick.pours.length > 5 || quick.pours.length === 1) continue
      const long = proposePours({ slabId: 's1', part: 'whole', region, capM2, budget: 40_000_000 })
      const full = proposePours({ slabId: 's1', part: 'whole', region, capM2 })
      optima[name] = Math.min(long.totalCost, full.totalCost)
      expect(full.totalCost, name).toBeLessThanOrEqual(1.01 * long.totalCost)
    }
    writeFileSync('tests/pours/optima.json', `${JSON.stringify(optima, null, 2)}\n`)
  })
})
