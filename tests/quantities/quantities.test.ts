import { describe, expect, it } from 'vitest'
import { addSteps } from '../../core/document/commands/slabParts'
import { concreteOrder, roundUp, stepsOrder, stepsVolume } from '../../core/quantities/concrete'
import type { Site } from '../../shared/document/site'
import type { Quantity } from '../../shared/planJson'
import { chain } from '../commands/edit'
import { planOf, sampleSite } from '../plan/sampleSite'
import { evaluateFormula } from './evaluateFormula'

const ft = 0.3048
const ft2 = ft ** 2
const inch = 0.0254
const yd3 = 0.9144 ** 3

const figure = (quantities: readonly Quantity[], id: string): number => {
  const found = quantities.filter(q => q.id === id)
  expect(found.map(q => q.id)).toEqual([id])
  return found[0]!.value
}

const names = ['plain-rectangle', 'l-patio', 'l-patio-accepted', 'kidney-pool-deck', 'driveway', 'metric-terrace']

describe('every figure', () => {
  it.each(names)('%s: its formula, worked out from its inputs, gives its value', name => {
    const { quantities } = planOf(sampleSite(name))
    expect(quantities.length).toBeGreaterThan(10)
    for (const q of quantities) {
      const worked = evaluateFormula(q)
      expect(Math.abs(worked - q.value), `${q.id}: ${q.formula}`).toBeLessThanOrEqual(
        1e-9 * Math.max(1, Math.abs(q.value)),
      )
      expect(q.source).not.toBe('')
    }
  })

  it.each(names)('%s: no two figures share an id', name => {
    const ids = planOf(sampleSite(name)).quantities.map(q => q.id)
    expect(new Set(ids).size).toBe(ids.length)
  })
})

describe('concrete to order', () => {
  const order = (areaFt2: number, thicknessIn: number) => {
    const figures = concreteOrder({
      idPrefix: 'x',
      slabId: 's1',
      areaM2: areaFt2 * ft2,
      thicknessM: thicknessIn * inch,
      thickened: [],
      stepsM3: 0,
      pumped: false,
      units: 'ftin',
      settings: undefined,
    })
    return { placed: figure(figures, 'x-concrete-volume') / yd3, ordered: figure(figures, 'x-concrete-order') / yd3 }
  }

  // Arithmetic: 1 yd³ = 27 ft³, so 27 ÷ (t ÷ 12) ft² at t inches: the yield table of ready-mix handbooks.
  it.each([
    [4, 81],
    [5, 64.8],
    [6, 54],
  ])('one cubic yard covers at %i in: %d ft²', (thicknessIn, coversFt2) => {
    expect(order(coversFt2, thicknessIn).placed).toBeCloseTo(1, 12)
  })

  // Worked example of a trade page, "How to figure concrete": 10 × 12 ft at 4 in (0.33 ft) is 1.46 yd³; with 10 % more and up to the next quarter: 1.75.
  it('a 10 × 12 ft slab at 4 in: 1.75 yd³', () => {
    expect(order(120, 0.33 * 12).placed).toBeCloseTo(1.4667, 4)
    expect(order(120, 0.33 * 12).ordered).toBeCloseTo(1.75, 12)
    expect(order(120, 4).ordered).toBeCloseTo(1.75, 12)
  })

  // Worked example of a trade page, same title: a 60 × 4 ft walk at 0.33 ft is 79.2 ft³, 2.93 yd³.
  it('a 60 × 4 ft walk: 2.93 yd³', () => expect(order(240, 0.33 * 12).placed).toBeCloseTo(2.933, 3))

  // Common practice, no source: 900 ft² at 4 in is more than a 10 yd³ truck: 11.1 yd³, 11.7 with 5 %.
  it('900 ft² at 4 in: 11.75 yd³ ordered, a truck and a short load', () => {
    expect(order(900, 4).placed * 1.05).toBeCloseTo(11.67, 2)
    expect(order(900, 4).ordered).toBeCloseTo(11.75, 12)
  })

  it('10 % more under 5 yd³, 5 % from there', () => {
    expect(order(404.9, 4).ordered).toBeCloseTo(roundUp((404.9 / 81) * 1.1, 0.25), 12)
    expect(order(405.1, 4).ordered).toBeCloseTo(roundUp((405.1 / 81) * 1.05, 0.25), 12)
  })

  it('half a yard more for a pump, and metric sites in quarters of a cubic meter', () => {
    const pumped = concreteOrder({
      idPrefix: 'x',
      slabId: 's1',
      areaM2: 100,
      thicknessM: 0.1,
      thickened: [{ areaM2: 4, depthM: 0.3 }],
      stepsM3: 0.2,
      pumped: true,
      units: 'metric',
      settings: { overRunLargeShare: 0.06 },
    })
    expect(figure(pumped, 'x-concrete-volume')).toBeCloseTo(10 + 4 * 0.2 + 0.2, 12)
    expect(figure(pumped, 'x-concrete-order')).toBeCloseTo(12.25, 12) // 11 × 1.06 + 0.382 = 12.04
  })

  it('a volume on a step stays there', () => {
    expect(roundUp(1.75, 0.25)).toBe(1.75)
    expect(roundUp(0.3 + 0.45, 0.25)).toBe(0.75)
    expect(roundUp(1.7501, 0.25)).toBe(2)
  })

  it('a flight of four 7 in risers, 12 in treads, 5 ft wide: six blocks of 7 in × 12 in', () => {
    const flight = { id: 'x1', edgeId: 'e1', fromT: 0, widthM: 5 * ft, risers: 4, riserM: 7 * inch, treadM: 12 * inch }
    expect(stepsVolume(flight)).toBeCloseTo(6 * (7 * inch) * (12 * inch) * (5 * ft), 12)
  })

  it('steps are ordered beside the pours: two 7 in risers, 24 ft wide, on a 12 in tread are 14 ft³', () => {
    const flight = { id: 'x1', edgeId: 'e1', fromT: 0, widthM: 24 * ft, risers: 2, riserM: 7 * inch, treadM: 12 * inch }
    const of = { pumped: true, units: 'ftin', settings: undefined } as const
    const [order] = stepsOrder('s1', [stepsVolume(flight)], of)
    // 14 ÷ 27 = 0.5185 yd³, 10 % more 0.5704, in quarters 0.75; two flights 1.1407, so 1.25.
    expect(order!.value / yd3).toBeCloseTo(0.75, 12)
    expect(evaluateFormula(order!)).toBeCloseTo(order!.value, 12)
    const [both] = stepsOrder('s1', [stepsVolume(flight), stepsVolume(flight)], of)
    expect(both!.value / yd3).toBeCloseTo(1.25, 12)
    expect(evaluateFormula(both!)).toBeCloseTo(both!.value, 12)
    // One riser stands on the ground below: no tread, no concrete.
    expect(stepsOrder('s1', [stepsVolume({ ...flight, risers: 1 })], of)).toEqual([])
  })

  it('concrete of the whole site is that of its pours and of its steps', () => {
    const pad = sampleSite('plain-rectangle')
    const [slab] = pad.slabs
    const edgeId = slab!.outline.edges[0]!.id
    const { quantities } = planOf(
      chain(
        pad,
        addSteps(slab!.id, { edgeId, fromT: 0, widthM: 24 * ft, risers: 2, riserM: 7 * inch, treadM: 12 * inch }),
      ),
    )
    const poured = quantities.filter(({ id, pourId }) => pourId !== undefined && id.endsWith('-concrete-volume'))
    const placed = poured.reduce((sum, { value }) => sum + value, 14 * ft ** 3)
    expect(figure(quantities, 'total-placed')).toBeCloseTo(placed, 9)
    expect(figure(quantities, 'total-steps') / yd3).toBeCloseTo(0.75, 12)
    // 24 × 14 ft of 4 in: 112 ft³, of it 10 % more is 4.563 yd³, in quarters 4.75.
    expect(figure(quantities, 'total-ordered') / yd3).toBeCloseTo(4.75, 12)
  })
})

describe('the L patio, by hand', () => {
  const { quantities, slabs } = planOf(sampleSite('l-patio'))
  const id = slabs[0]!.id
  const corner = 36 - 9 * Math.PI // ft² cut off by a 6 ft radius: R²(1 − π/4)

  it('areas', () => {
    const gross = 28 * 42 + 22 * 20 - 2 * corner
    expect(figure(quantities, `${id}-gross-area`) / ft2).toBeCloseTo(gross, 9)
    expect(figure(quantities, `${id}-net-area`) / ft2).toBeCloseTo(gross - 4 * Math.PI, 9)
    expect(Math.round(figure(quantities, `${id}-net-area`) / ft2)).toBe(1588)
  })

  it('forms: the outline but for the house side, and the planter', () => {
    const outline = 50 + 20 + 22 + 22 + 28 + 42 - 2 * (12 - 3 * Math.PI)
    expect(figure(quantities, `${id}-perimeter`) / ft).toBeCloseTo(outline, 9)
    expect(figure(quantities, `${id}-form-length`) / ft).toBeCloseTo(outline - 50 + 4 * Math.PI, 9)
    expect(figure(quantities, `${id}-isolation-length`) / ft).toBeCloseTo(50 + 4 * Math.PI, 9)
  })
})

describe('edges and base', () => {
  const rectangle = sampleSite('plain-rectangle')
  const slab = rectangle.slabs[0]!
  const withSlab = (change: Partial<typeof slab>): Site => ({ ...rectangle, slabs: [{ ...slab, ...change }] })

  it('string-line readings replace the planned base depth and show the difference', () => {
    const depths = [0.1, 0.12, 0.11]
    const { quantities } = planOf(
      withSlab({ baseDepthM: 0.1, baseDepths: { points: depths.map(depthM => ({ at: [1, 1], depthM })) } }),
    )
    const area = 24 * 14 * ft2
    expect(figure(quantities, `${slab.id}-base-depth`)).toBeCloseTo(0.11, 12)
    expect(figure(quantities, `${slab.id}-base-volume`)).toBeCloseTo(area * 0.11, 12)
    expect(figure(quantities, `${slab.id}-base-difference`)).toBeCloseTo(area * 0.01, 12)
  })

  it('a thickened edge counts its corner once', () => {
    const [bottom, right] = slab.outline.edges
    const { quantities } = planOf(
      withSlab({
        thicknessM: 4 * inch,
        thickened: [{ edges: [bottom!.id, right!.id], depthM: 12 * inch, widthM: ft }],
      }),
    )
    const strip = 24 + 14 - 1 // ft² of a 1 ft strip along two sides
    const volume = 24 * 14 * (4 / 12) + strip * (8 / 12)
    expect(figure(quantities, `${slab.id}-concrete-volume`) / ft ** 3).toBeCloseTo(volume, 6)
  })

  it('a drain is neither formed nor isolated; a pool with set coping is isolated only', () => {
    const opening = (kind: 'drain' | 'pool', idNo: number) => ({
      id: `o${idNo}`,
      kind,
      ...(kind === 'pool' ? { pool: 'setCoping' as const } : {}),
      path: {
        id: `r${idNo}`,
        vertices: [
          [idNo - 900, 1],
          [idNo - 900, 2],
          [idNo - 899, 2],
          [idNo - 899, 1],
        ].map(([x, y], i) => ({ id: `v${idNo}${i + 1}`, at: [x!, y!] as const })),
        edges: [1, 2, 3, 4].map(i => ({ id: `e${idNo}${i}` })),
      },
    })
    const { quantities } = planOf(withSlab({ openings: [opening('drain', 901), opening('pool', 903)] }))
    expect(figure(quantities, `${slab.id}-form-length`) / ft).toBeCloseTo(2 * (24 + 14), 9)
    expect(figure(quantities, `${slab.id}-isolation-length`)).toBeCloseTo(4, 9)
  })
})

describe('pours', () => {
  it('share out the concrete and the borders of the slab', () => {
    const { quantities, pours, slabs } = planOf(sampleSite('l-patio'))
    const slab = slabs[0]!
    const sum = (suffix: string) =>
      pours.reduce((total, p) => total + (quantities.find(q => q.id === `${p.id}-${suffix}`)?.value ?? 0), 0)
    expect(sum('concrete-volume')).toBeCloseTo(figure(quantities, `${slab.id}-concrete-volume`), 9)
    for (const border of slab.borders) {
      expect(sum(`${border.id}-area`)).toBeCloseTo(border.areaM2, 6)
      expect(sum(`${border.id}-length`)).toBeCloseTo(border.outerLengthM, 6)
    }
  })

  it('share out a border inside another by its own outer edge', () => {
    const site = sampleSite('l-patio')
    const [slab] = site.slabs
    const first = slab!.borders[0]!
    const second = { ...first, id: 'b990' }
    const { quantities, pours, slabs } = planOf({ ...site, slabs: [{ ...slab!, borders: [first, second] }] })
    const outerM = figure(quantities, 'b990-outer-length')
    expect(outerM).toBeCloseTo(slabs[0]!.borders[0]!.innerLengthM, 6)
    const shares = pours.map(p => quantities.find(q => q.id === `${p.id}-b990-length`)?.value ?? 0)
    expect(shares.filter(share => share > 0).length).toBeGreaterThan(1)
    expect(shares.reduce((a, b) => a + b)).toBeCloseTo(outerM, 6)
  })
})
