import { describe, expect, it } from 'vitest'
import { addTape } from '../../core/document/commands/addShown'
import { addSlab } from '../../core/document/commands/addSlab'
import { addWish } from '../../core/document/commands/addWish'
import { jointEndAt } from '../../core/document/commands/jointEndAt'
import { addBorder, addOpening } from '../../core/document/commands/slabParts'
import { squarenessOf, squareUp } from '../../core/document/commands/squareUp'
import { isSquare } from '../../core/geometry/field/squareness'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { wordProblem } from '../../core/problems/wordProblem'
import { printMeasures } from '../../core/units/printMeasures'
import { emptySite } from '../../renderer/app/emptySite'
import type { Pt } from '../../shared/document/primitives'
import { chain, done, faultsOf, refusal } from './edit'

/** Ten meters by about six; corner C leans out by half a meter to the right and one up. */
const corners: readonly Pt[] = [
  [0, 0],
  [10, 0],
  [10.5, 7],
  [0, 6],
]
const crooked = chain(
  emptySite('s', 'S'),
  addSlab({ name: 'Patio', outline: { kind: 'corners', corners: corners.map(at => ({ at })) } }),
)
const slab = crooked.slabs[0]!
const [bottom] = slab.outline.edges
const border = {
  pathId: slab.outline.id,
  edges: 'all',
  widthM: 0.3,
  finishId: slab.finishId,
  placed: 'withField',
} as const

describe('a slab made square', () => {
  it('takes borders, joints and tape dimensions along, and leaves openings where they are', () => {
    const full = chain(
      crooked,
      addBorder(slab.id, border),
      addOpening(slab.id, { kind: 'planter', shape: { kind: 'rectangle', at: [3, 2], widthM: 1, depthM: 1 } }),
      addWish(slab.id, { kind: 'required', line: [jointEndAt(slab, [6, 0]), jointEndAt(slab, [6, 46 / 7])] }),
      addTape([0, 0], [10.5, 7]),
    )
    const squared = done(squareUp(slab.outline.id, bottom!.id)(full))
    expect(faultsOf(squared)).toEqual([])
    expect(isSquare(squarenessOf(squared, slab.outline.id)!)).toBe(true)
    const [a, b, c] = squared.slabs[0]!.outline.vertices.map(({ at }) => at)
    expect([a, b]).toEqual([corners[0], corners[1]])
    const resolved = resolveSlab(squared.slabs[0]!)
    // 0.3 m inside a rectangle of 10 m by h: 0.3 · 2(10 + h) less the four corners counted twice.
    expect(resolved.borders[0]!.areaM2).toBeCloseTo(0.6 * (10 + c![1]) - 4 * 0.09, 9)
    expect(squared.slabs[0]!.openings).toEqual(full.slabs[0]!.openings)
    const wish = squared.wishes[0]!
    if (wish.kind !== 'required') throw new Error('another wish')
    expect(wish.line[1].last[1]).toBeCloseTo(c![1], 9)
    expect(squared.tapes![0]!.ends[1].last).toEqual(c)
  })

  it('tells which arcs it kept, and that they kept their rise', () => {
    const bent = (...rises: readonly (number | undefined)[]) =>
      chain(
        emptySite('s', 'S'),
        addSlab({
          name: 'Patio',
          outline: {
            kind: 'corners',
            corners: corners.map((at, i) => ({ at, ...(rises[i] === undefined ? {} : { riseM: rises[i] }) })),
          },
        }),
      )
    const words = (site: ReturnType<typeof bent>) => {
      const { outline } = site.slabs[0]!
      const result = squareUp(outline.id, outline.edges[0]!.id)(site)
      if (!result.ok) throw new Error('refused')
      expect(result.value.slabs[0]!.outline.edges.map(({ riseM }) => riseM)).toEqual(
        outline.edges.map(({ riseM }) => riseM),
      )
      expect(isSquare(squarenessOf(result.value, outline.id)!)).toBe(true)
      return result.findings.map(found => wordProblem(found, printMeasures('ftin')).message)
    }
    expect(words(bent())).toEqual([])
    expect(words(bent(undefined, 1.2192))).toEqual(['The corners are square; the arc keeps its rise of 4′ 0″.'])
    expect(words(bent(undefined, 1.2192, undefined, -0.3048))).toEqual([
      'The corners are square; the 2 arcs keep their rises, 1′ 0″ to 4′ 0″.',
    ])
  })

  it('is not offered for three corners, and refused', () => {
    const three = chain(
      emptySite('s', 'S'),
      addSlab({ name: 'Patio', outline: { kind: 'corners', corners: corners.slice(0, 3).map(at => ({ at })) } }),
    )
    const { outline } = three.slabs[0]!
    expect(squarenessOf(three, outline.id)).toBeUndefined()
    expect(refusal(squareUp(outline.id, outline.edges[0]!.id)(three))).toBe('notFourCorners')
  })

  it('that no longer holds an opening says so, and which', () => {
    const near = chain(
      crooked,
      addOpening(slab.id, { kind: 'planter', shape: { kind: 'rectangle', at: [9.6, 6.2], widthM: 0.5, depthM: 0.2 } }),
    )
    expect(resolveSlab(near.slabs[0]!).findings).toEqual([])
    const squared = done(squareUp(slab.outline.id, bottom!.id)(near))
    expect(squared.slabs[0]!.openings).toEqual(near.slabs[0]!.openings)
    expect(resolveSlab(squared.slabs[0]!).findings).toMatchObject([
      { code: 'openingOutside', at: { entityId: near.slabs[0]!.openings[0]!.id } },
    ])
  })
})
