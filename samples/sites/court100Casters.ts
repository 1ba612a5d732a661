import { feetToMeters as ft, inchesToMeters as inch, squareFeetToM2 } from '../../core/units/convert'
import type { Caster } from '../../shared/document/caster'
import type { Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import { courtFt, drawCourt, drawTree } from '../court'
import { noRows, rectangle, startDraft } from '../draft'
import { seeded } from '../seeded'

/** The same court of 12,000 ft² with 100 casters strewn about it from a fixed seed: a load for measuring. */
export const court100Casters = (): Site => {
  const draft = startDraft()
  const random = seeded(100)
  const { slab, finishes } = drawCourt(draft)
  const between = (low: number, high: number) => low + Math.round((high - low) * random() * 8) / 8
  const reachFt = 90
  /** The lower left corner of a `w` × `d` ft box beside the court, never on it. */
  const beside = (w: number, d: number): readonly [number, number] => {
    const side = Math.floor(random() * 4)
    const along = (length: number, own: number) => between(-reachFt, length + reachFt - own)
    if (side === 0) return [along(courtFt.width, w), between(-reachFt, -d - 2)]
    if (side === 1) return [along(courtFt.width, w), between(courtFt.depth + 2, courtFt.depth + reachFt - d)]
    if (side === 2) return [between(-reachFt, -w - 2), along(courtFt.depth, d)]
    return [between(courtFt.width + 2, courtFt.width + reachFt - w), along(courtFt.depth, d)]
  }
  const box = (w: number, d: number) => {
    const [x, y] = beside(w, d)
    return draft.path(rectangle([ft(x), ft(y)], ft(w), ft(d)))
  }
  const building = (i: number): Caster => {
    const footprint = box(between(16, 48), between(16, 36))
    const pitched = i % 2 === 0
    return {
      id: draft.id('c'),
      name: `Building ${i + 1}`,
      kind: 'building',
      footprint,
      baseM: 0,
      eaveM: ft(between(10, 32)),
      overhangM: pitched ? inch(18) : 0,
      roof: pitched
        ? { form: 'gable', risePer12: between(3, 9), ridgeAlongEdge: footprint.edges[i % 4]?.id ?? '' }
        : { form: 'flat' },
    }
  }
  const wall = (i: number): Caster => {
    const [x, y] = beside(20, 20)
    const line: Pt[] = [
      [ft(x), ft(y)],
      [ft(x + 20), ft(y + between(0, 20))],
    ]
    return { id: draft.id('c'), name: `Fence ${i + 1}`, kind: 'wall', line, baseM: 0, topM: ft(6), solidity: 1 }
  }
  const cover = (i: number): Caster => ({
    id: draft.id('c'),
    name: `Cover ${i + 1}`,
    kind: 'cover',
    outline: box(between(10, 24), between(8, 16)),
    undersideM: ft(9),
    topM: ft(9.5),
    light: i % 2 === 0 ? 'half' : 'none',
  })
  const tree = (i: number): Caster => {
    const [x, y] = beside(4, 4)
    return drawTree(draft, `Tree ${i + 1}`, [x + 2, y + 2], between(18, 50), between(6, 16))
  }
  const many = (count: number, draw: (i: number) => Caster) => Array.from({ length: count }, (_, i) => draw(i))
  return {
    ...noRows,
    format: 'slabwright-site',
    version: 1,
    id: 'sample-court-100-casters',
    name: 'Court among a hundred casters',
    units: 'ftin',
    place: {
      name: 'Test yard',
      latDeg: 41.5887,
      lonDeg: -93.6211,
      elevationM: 259,
      zone: 'America/Chicago',
      northDeg: 17,
    },
    finishes,
    slabs: [slab],
    casters: [...many(24, building), ...many(12, wall), ...many(8, cover), ...many(56, tree)],
    points: [{ id: draft.id('p'), name: 'Middle', at: [ft(50), ft(50)], slabId: slab.id }],
    capacity: { capM2: squareFeetToM2(800) },
    nextId: draft.nextId(),
  }
}
