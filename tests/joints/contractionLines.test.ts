import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { contractionLines } from '../../core/joints/contractionLines'
import { contractionSpacing } from '../../core/joints/contractionSpacing'
import { proposePours } from '../../core/pours/proposePours'
import { randomSlab } from '../pours/randomSlabs'
import { ft2M2, namedSlabs, rectangle, region } from '../pours/shapes'

const ftM = 0.3048
const inM = 0.0254

describe('the most distance between contraction joints', () => {
  // C. Beall, Masonry and Concrete, McGraw-Hill, 2001, fig. 2-15, after PCA: aggregate ¾ in and larger.
  it.each([
    [4, 10],
    [5, 13],
    [6, 15],
  ])('%d in: %d ft', (thicknessIn, spacingFt) =>
    expect(contractionSpacing(thicknessIn * inM) / ftM).toBeCloseTo(spacingFt, 9),
  )

  // ACI 302.1R-96: 24 to 36 times the thickness, at most 18 ft.
  it.each([3, 3.5, 4, 4.5, 5, 5.5, 6, 7, 8, 10])('%d in: 24 to 36 times the thickness, at most 18 ft', thicknessIn => {
    const spacingFt = contractionSpacing(thicknessIn * inM) / ftM
    expect(spacingFt).toBeLessThanOrEqual(18)
    expect(spacingFt).toBeLessThanOrEqual((36 * thicknessIn) / 12)
    expect(spacingFt).toBeGreaterThanOrEqual(Math.min(18, (24 * thicknessIn) / 12))
  })
})

describe('contraction joints', () => {
  it('of a pour of 30 ft × 20 ft at 10 ft: two across, one along', () => {
    const lines = contractionLines([{ id: 'a', region: region(rectangle(0, 0, 30, 20)) }], 10 * ftM)
    expect(lines.map(({ lengthM }) => Math.round((lengthM / ftM) * 1e6) / 1e6).sort()).toEqual([20, 20, 30])
  })

  it('none where a pour is smaller than a panel', () =>
    expect(contractionLines([{ id: 'a', region: region(rectangle(0, 0, 9, 9)) }], 10 * ftM)).toEqual([]))

  it('two pours side by side share their lines', () => {
    const pours = [
      { id: 'a', region: region(rectangle(0, 0, 30, 20)) },
      { id: 'b', region: region(rectangle(30, 0, 58, 20)) },
    ]
    const along = contractionLines(pours, 10 * ftM).filter(({ from, to }) => Math.abs(from[1] - to[1]) < 1e-9)
    expect(along).toHaveLength(2)
    expect(along[0]!.from[1]).toBeCloseTo(along[1]!.from[1], 9)
  })

  it('start at a re-entrant corner', () => {
    const shape = namedSlabs().find(({ name }) => name === 'plus')!.region
    const lines = contractionLines([{ id: 'a', region: shape }], 30 * ftM)
    // Four re-entrant corners, each on a line, although no panel is too wide.
    expect(lines.length).toBeGreaterThanOrEqual(4)
  })

  it('leave no panel wider than the spacing, run inside their pour and end on its edges', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), seed => {
        const slab = randomSlab(seed)
        const capM2 = 900 * ft2M2
        const { pours } = proposePours({ slabId: 's', part: 'whole', region: slab, capM2, budget: 'small' })
        const lines = contractionLines(
          pours.map(({ region: shape }, i) => ({ id: `${i}`, region: shape })),
          10 * ftM,
        )
        for (const { lengthM, from, to } of lines) {
          expect(lengthM).toBeGreaterThan(0.6)
          expect(Math.hypot(to[0] - from[0], to[1] - from[1])).toBeCloseTo(lengthM, 9)
        }
        // A pour wider than a panel each way has lines both ways.
        for (const [i, { areaM2, aspect }] of pours.entries())
          if (areaM2 > 4 * (10 * ftM) ** 2 && aspect < 2)
            expect(lines.filter(({ pourId }) => pourId === `${i}`).length).toBeGreaterThan(1)
      }),
      { seed: 5, numRuns: 12 },
    )
  })
})
