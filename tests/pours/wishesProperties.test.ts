import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Proposal } from '../../core/pours/proposal'
import { proposePours } from '../../core/pours/proposePours'
import type { JointWishes } from '../../core/pours/wishes/jointWishes'
import { checkProposal } from './checkProposal'
import { checkWishes } from './checkWishes'
import { moved, randomSlab } from './randomSlabs'
import { randomWishes } from './randomWishes'
import { ft2M2 } from './shapes'

const slabSeed = fc.integer({ min: 1, max: 1_000_000 })
const capFt2 = fc.constantFrom(400, 600, 800, 1000)

const isStopped = ({ findings }: Proposal): boolean => findings.some(({ severity }) => severity === 'stop')

/** Everything but the cap where a part could not be split. */
function check(seed: number, cap: number, wishes: JointWishes, slab = randomSlab(seed)): Proposal {
  const capM2 = cap * ft2M2
  const input = { slabId: 's1', part: 'whole', region: slab, capM2, budget: 'small', wishes } as const
  const proposal = proposePours(input)
  checkWishes(slab, wishes, proposal, `slab ${seed}`)
  checkProposal(
    slab,
    isStopped(proposal) ? Number.POSITIVE_INFINITY : capM2,
    { ...proposal, findings: [] },
    `slab ${seed}`,
  )
  return proposal
}

describe('on random slabs with wishes, arcs and turned frames included, the pours', () => {
  it('have every required joint exactly, tile the slab and keep under the cap (60 slabs)', { timeout: 60_000 }, () => {
    let lines = 0
    let divided = 0
    fc.assert(
      fc.property(slabSeed, capFt2, (seed, cap) => {
        const wishes = randomWishes(randomSlab(seed), seed, { required: 3, lines: 0, areas: 0 })
        const proposal = check(seed, cap, wishes)
        expect(isStopped(proposal), `slab ${seed}`).toBe(false)
        lines += wishes.required!.length
        divided += new Set(proposal.joints.flatMap(({ wishId }) => wishId ?? [])).size
      }),
      { seed: 21, numRuns: 60 },
    )
    expect(lines).toBeGreaterThan(60)
    expect(divided).toBeGreaterThan(0.9 * lines)
  })

  it('keep off every forbidden line and area, and nearly always find a way (60 slabs)', { timeout: 60_000 }, () => {
    let stopped = 0
    let forbidden = 0
    fc.assert(
      fc.property(slabSeed, capFt2, (seed, cap) => {
        const wishes = randomWishes(randomSlab(seed), seed, { required: 0, lines: 2, areas: 2 })
        const proposal = check(seed, cap, wishes)
        forbidden += wishes.forbiddenAreas!.length + wishes.forbiddenLines!.length
        if (isStopped(proposal)) {
          stopped++
          expect(
            proposal.findings.map(({ code }) => code),
            `slab ${seed}`,
          ).toContain('noJointAllowed')
        }
      }),
      { seed: 22, numRuns: 60 },
    )
    expect(forbidden).toBeGreaterThan(70)
    expect(stopped).toBeLessThanOrEqual(3)
  })

  it('hold with all kinds of wishes at once, and come out the same twice (25 slabs)', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(slabSeed, capFt2, (seed, cap) => {
        const slab = randomSlab(seed)
        const wishes = randomWishes(slab, seed, { required: 2, lines: 1, areas: 1, width: true })
        expect(check(seed, cap, wishes, slab)).toEqual(check(seed, cap, wishes, slab))
      }),
      { seed: 23, numRuns: 25 },
    )
  })

  it('are as many and cost the same when slab and wishes are turned and moved (15 slabs)', { timeout: 60_000 }, () => {
    const turn = fc.double({ min: 0, max: 6.28, noNaN: true })
    const step = fc.double({ min: -300, max: 300, noNaN: true })
    fc.assert(
      fc.property(slabSeed, turn, step, step, (seed, rad, dx, dy) => {
        const slab = randomSlab(seed)
        const { required = [] } = randomWishes(slab, seed, { required: 2, lines: 0, areas: 0 })
        const frame = (p: readonly [number, number]) => {
          const edge = { edgeId: '', from: p, to: p }
          return moved({ outer: [edge], holes: [] }, rad, dx, dy).outer[0]!.from
        }
        const split = (region: typeof slab, lines: typeof required) =>
          proposePours({
            ...{ slabId: 's1', part: 'whole', region, capM2: 900 * ft2M2, budget: 'small' },
            wishes: { required: lines },
          })
        const plain = split(slab, required)
        const turned = split(
          moved(slab, rad, dx, dy),
          required.map(({ id, from, to }) => ({ id, from: frame(from), to: frame(to) })),
        )
        expect(turned.pours.length, `slab ${seed}`).toBe(plain.pours.length)
        expect(Math.abs(turned.totalCost - plain.totalCost), `slab ${seed}`).toBeLessThanOrEqual(
          0.01 * Math.max(1, plain.totalCost),
        )
      }),
      { seed: 24, numRuns: 15 },
    )
  })
})
