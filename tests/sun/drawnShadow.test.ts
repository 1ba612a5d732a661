import { describe, expect, it } from 'vitest'
import { casterShadow } from '../../core/sun/casterShadow'
import { drawnShadow } from '../../core/sun/drawnShadow'
import type { Caster } from '../../shared/document/caster'
import type { Pt } from '../../shared/document/primitives'
import { box, building, cast, tree, wall } from './fixtures'

const date = '2026-07-01'
const drawn = (caster: Caster, levelM: number, perMeter: Pt) =>
  drawnShadow(cast(caster), levelM, perMeter, date, undefined)
const traced = (caster: Caster, levelM: number, perMeter: Pt) =>
  casterShadow(cast(caster), levelM, perMeter, date, undefined)

describe('a shadow as it is drawn', () => {
  it.each([
    [0, 0],
    [0, 1],
    [1.2, -1.6],
    [-4, 0.3],
  ])('is the ellipse through every corner of the traced crown, %s m and %s m a meter', (kx, ky) => {
    const [part, ...others] = drawn(tree([1, 2]), 0, [kx, ky])
    const [ring] = traced(tree([1, 2]), 0, [kx, ky])[0]!.cycles
    expect(others).toEqual([])
    expect(part!.rings).toEqual([])
    expect(part!.ellipses).toHaveLength(1)
    const { cx, cy, ux, uy, alongM, acrossM } = part!.ellipses[0]!
    expect(ring!.length).toBeGreaterThan(100)
    for (let i = 0; i < ring!.length; i += 2) {
      const [dx, dy] = [ring![i]! - cx, ring![i + 1]! - cy]
      expect(Math.hypot((dx * ux + dy * uy) / alongM, (dy * ux - dx * uy) / acrossM)).toBeCloseTo(1, 9)
    }
  })

  it('is traced where a crown is cut by the plane or the caster is no tree', () => {
    for (const [caster, levelM] of [
      [tree([1, 2]), 4],
      [tree([1, 2]), 8],
      [building(box(0, 0, 6, 4)), 0],
      [
        wall(
          [
            [0, 0],
            [5, 1],
          ],
          { solidity: 0.5 },
        ),
        0,
      ],
    ] as const)
      expect(drawn(caster, levelM, [0.8, -1.1])).toEqual(
        traced(caster, levelM, [0.8, -1.1]).map(({ transmission, cycles }) => ({
          transmission,
          rings: cycles,
          ellipses: [],
        })),
      )
  })

  it('lets as much sun through as the traced one', () => {
    expect(drawn(tree([0, 0]), 0, [1, 0])[0]!.transmission).toBe(traced(tree([0, 0]), 0, [1, 0])[0]!.transmission)
  })
})
