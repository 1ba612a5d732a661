import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { casterShadow } from '../../core/sun/casterShadow'
import { exposure } from '../../core/sun/exposure'
import { pointShare } from '../../core/sun/pointSun'
import { shadeAt } from '../../core/sun/shadeAt'
import { shadowPerMeter } from '../../core/sun/sunPosition'
import { sunShares } from '../../core/sun/sunShares'
import type { Caster } from '../../shared/document/caster'
import type { Pt } from '../../shared/document/primitives'
import { box, building, cast, cover, dayOf, place, slabOf, tree, wall } from './fixtures'

const date = '2026-07-01'

interface Scene {
  readonly sun: { readonly altitudeDeg: number; readonly azimuthDeg: number }
  readonly ring: readonly Pt[]
  readonly line: readonly Pt[]
  readonly at: Pt
  readonly points: readonly Pt[]
}

const point = (reach: number) =>
  fc.tuple(
    fc.double({ min: -reach, max: reach, noNaN: true }),
    fc.double({ min: -reach, max: reach, noNaN: true }),
  ) as fc.Arbitrary<Pt>

/** A star-shaped footprint, counter-clockwise, concave as a rule. */
const footprint = fc
  .array(fc.tuple(fc.double({ min: 0, max: 0.6, noNaN: true }), fc.double({ min: 2, max: 9, noNaN: true })), {
    minLength: 4,
    maxLength: 9,
  })
  .map(corners =>
    corners.map(([shift, radius], i): Pt => {
      const angle = (2 * Math.PI * (i + shift)) / corners.length
      return [radius * Math.cos(angle), radius * Math.sin(angle)]
    }),
  )

const scene: fc.Arbitrary<Scene> = fc.record({
  sun: fc.record({
    altitudeDeg: fc.double({ min: 3, max: 85, noNaN: true }),
    azimuthDeg: fc.double({ min: 0, max: 360, noNaN: true }),
  }),
  ring: footprint,
  line: fc.tuple(point(10), point(10), point(10)),
  at: point(10),
  points: fc.array(point(15), { minLength: 8, maxLength: 8 }),
})

type Move = (at: Pt) => Pt

const castersOf = ({ ring, line, at }: Scene, move: Move, start: number): Caster[] => {
  const corners = [...ring.slice(start), ...ring.slice(0, start)].map(move)
  return [
    building(corners, { eaveM: 4, overhangM: 0.4 }),
    building(corners, { eaveM: 4, roof: { form: 'hip', risePer12: 7 } }),
    wall(line.map(move), { solidity: 0.7 }),
    tree(move(at)),
    cover(corners, { light: 'half' }),
  ]
}

/** Sum of the signed areas of all cycles, each weighed by what it holds back: exact, without a clipping grid. */
const heldBack = (casters: readonly Caster[], perMeter: Pt): number[] =>
  casters.map(caster =>
    casterShadow(cast(caster), 0.3, perMeter, date, undefined).reduce(
      (sum, { transmission, cycles }) =>
        cycles.reduce((own, cycle) => {
          let doubleArea = 0
          for (let i = 0, j = cycle.length - 2; i < cycle.length; j = i, i += 2)
            doubleArea += cycle[j]! * cycle[i + 1]! - cycle[i]! * cycle[j + 1]!
          return own + (doubleArea / 2) * (1 - transmission)
        }, sum),
      0,
    ),
  )

const radians = (deg: number): number => (deg * Math.PI) / 180

const turned =
  (deg: number): Move =>
  ([x, y]) => [
    x * Math.cos(radians(deg)) - y * Math.sin(radians(deg)),
    x * Math.sin(radians(deg)) + y * Math.cos(radians(deg)),
  ]

const expectSame = (of: Scene, move: Move, perMeter: Pt, start: number): void => {
  const stay: Move = at => at
  const straight = shadowPerMeter(of.sun, 0)
  const before = castersOf(of, stay, 0)
  const after = castersOf(of, move, start)
  const areas = heldBack(before, straight)
  heldBack(after, perMeter).forEach((areaM2, i) => {
    expect(Math.abs(areaM2 - areas[i]!)).toBeLessThan(1e-6 * Math.max(1, areas[i]!))
  })
  const share = (casters: readonly Caster[], at: Pt, k: Pt): number =>
    pointShare(at, 0.3, casters.map(cast), k, date, undefined)
  for (const at of of.points) {
    const near = [[1e-5, 0], [-1e-5, 0], [0, 1e-5], [0, -1e-5]].map(([dx, dy]): Pt => [at[0] + dx!, at[1] + dy!]) // biome-ignore format: one line
    const own = share(before, at, straight)
    // On the very edge of a shadow rounding may decide.
    if (near.some(each => share(before, each, straight) !== own)) continue
    expect(share(after, move(at), perMeter)).toBeCloseTo(own, 12)
  }
}

const runs = { seed: 20260701, numRuns: 60 }

describe('shade does not care how the site is drawn', () => {
  it('turned together with its north', () => {
    fc.assert(
      fc.property(scene, fc.double({ min: -180, max: 180, noNaN: true }), (of, deg) => {
        expectSame(of, turned(deg), shadowPerMeter(of.sun, -deg), 0)
      }),
      runs,
    )
  })

  it('moved', () => {
    fc.assert(
      fc.property(scene, point(500), (of, [dx, dy]) => {
        expectSame(of, ([x, y]) => [x + dx, y + dy], shadowPerMeter(of.sun, 0), 0)
      }),
      runs,
    )
  })

  it('seen in a mirror, the sun too', () => {
    fc.assert(
      fc.property(scene, of => {
        const [kx, ky] = shadowPerMeter(of.sun, 0)
        expectSame(of, ([x, y]) => [-x, y], [-kx, ky], 0)
      }),
      runs,
    )
  })

  it('started at another corner', () => {
    fc.assert(
      fc.property(scene, fc.nat(8), (of, start) => {
        expectSame(of, at => at, shadowPerMeter(of.sun, 0), start % of.ring.length)
      }),
      runs,
    )
  })
})

describe('shade is read, never written', () => {
  it('leaves slab and casters as they were', () => {
    fc.assert(
      fc.property(scene, of => {
        const casters = castersOf(of, at => at, 0).map(cast)
        const slab = slabOf(box(-5, -5, 10, 10))
        const kept = structuredClone({ casters, slab })
        const day = dayOf(date)
        sunShares(exposure(slab, casters, place, day, 120, undefined))
        shadeAt(slab, casters, { ...of.sun, trueAltitudeDeg: of.sun.altitudeDeg }, place, date, undefined)
        expect({ casters, slab }).toEqual(kept)
      }),
      { ...runs, numRuns: 20 },
    )
  })
})
