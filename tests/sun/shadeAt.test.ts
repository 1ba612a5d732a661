import { describe, expect, it } from 'vitest'
import { flatArea } from '../../core/geometry/flatArea'
import { type Shade, shadeAt } from '../../core/sun/shadeAt'
import type { Caster } from '../../shared/document/caster'
import { box, building, cast, cover, place, slabOf, tree, wall } from './fixtures'

const date = '2026-06-15'
/** Due south at 45°: a meter of height throws a meter of shadow to the north. */
const south = { altitudeDeg: 45, trueAltitudeDeg: 45, azimuthDeg: 180 }
const slab = slabOf(box(0, 0, 10, 8), [[...box(6, 1, 2, 2)].reverse()])

const shadeOf = (...casters: readonly Caster[]): Shade =>
  shadeAt(slab, casters.map(cast), south, place, date, undefined)!

const dappleAreas = ({ dapple }: Shade): Record<string, number> => {
  const areas: Record<string, number> = {}
  for (const { region, transmission } of dapple) {
    const key = transmission.toFixed(3)
    areas[key] = (areas[key] ?? 0) + flatArea([region])
  }
  return Object.fromEntries(Object.entries(areas).map(([key, areaM2]) => [key, Number(areaM2.toFixed(4))]))
}

describe('the shade on a slab', () => {
  it('is nothing to speak of below the threshold', () => {
    const low = { ...south, altitudeDeg: 1.99 }
    expect(shadeAt(slab, [], low, place, date, undefined)).toBeNull()
    expect(shadeAt(slab, [], low, place, date, { minSunAltitudeDeg: 1 })).toEqual({
      opaque: [],
      opaqueAreaM2: 0,
      dapple: [],
    })
  })

  it('stops at the edge and leaves the opening out', () => {
    // A wall along the south edge, 2 m high, shades 10 × 2 less the 2 × 1 of the opening that it reaches.
    expect(shadeOf(wall([[-5, 0], [15, 0]])).opaqueAreaM2).toBeCloseTo(20 - 2, 4) // biome-ignore format: one line
  })

  it('counts an overlap once', () => {
    const two = [wall([[-5, 0], [15, 0]]), building(box(0, -3, 5, 3), { eaveM: 4 })] // biome-ignore format: one line
    expect(shadeOf(...two).opaqueAreaM2).toBeCloseTo(18 + 5 * 2, 4)
  })

  it('weakens the sun twice where two screens stand in its way, and not at all behind a wall', () => {
    const first = cover(box(0, 2, 4, 2), { undersideM: 2, topM: 2, light: 0.5 })
    const second = cover(box(2, 1, 4, 2), { undersideM: 3, topM: 3, light: 0.6 })
    // Shadows: 0–4 × 4–6 and 2–6 × 4–6, so they overlap in 2 × 2.
    expect(dappleAreas(shadeOf(first, second))).toEqual({ '0.300': 4, '0.500': 4, '0.600': 4 })
    const behind = shadeOf(first, second, building(box(-1, 2, 4, 0.5), { baseM: 1.5, eaveM: 3 }))
    // The beam's shadow 3.5–5.5 over x ≤ 3 takes that part out of the dapple.
    expect(behind.opaqueAreaM2).toBeCloseTo(3 * 2, 4)
    expect(dappleAreas(behind)).toEqual({ '0.300': 4 - 1.5, '0.500': 4 - 2 * 1.5, '0.600': 4 })
  })

  it('never lets dapple overlap: pieces add up to the shade of all crowns as one', () => {
    const trees = [0, 1.5, 3, 4.5, 6].map((x, i) =>
      tree([x, -1], { id: `c${10 + i}`, crownRadiusM: 1.6, density: i % 2 === 0 ? 'open' : 'dense' }),
    )
    const pieces = shadeOf(...trees).dapple.reduce((sum, { region }) => sum + flatArea([region]), 0)
    const opaque = trees.map(each => ({ ...each, density: 'dense' as const }))
    const asOne = shadeAt(slab, opaque.map(cast), south, place, date, { treeLeafDense: 0 })!
    expect(pieces).toBeGreaterThan(20)
    expect(pieces).toBeCloseTo(asOne.opaqueAreaM2, 3)
  })

  it('depends on the level of the slab', () => {
    const raised = slabOf(box(0, 0, 10, 8), [], 1.5)
    const shade = shadeAt(raised, [cast(wall([[-5, 0], [15, 0]]))], south, place, date, undefined)! // biome-ignore format: one line
    expect(shade.opaqueAreaM2).toBeCloseTo(10 * 0.5, 4)
  })
})
