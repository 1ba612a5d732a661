import { describe, expect, it } from 'vitest'
import { resolveSlab } from '../../core/geometry/resolveSlab'
import { leastLoadCost, loadGround, loadRules, loadsOfArea } from '../../core/pours/loadGround'
import type { SplitInput } from '../../core/pours/proposal'
import { proposePours, searchSplit } from '../../core/pours/proposePours'
import { openHours, provisionalDay } from '../../core/pours/provisionalDay'
import { toCutRegion } from '../../core/pours/region/cutRegion'
import { type SiteGround, siteGround } from '../../core/pours/siteGround'
import { exposure } from '../../core/sun/exposure'
import { resolveCaster } from '../../core/sun/resolveCaster'
import { isoWithOffset, siteDay } from '../../core/sun/siteDay'
import { sunShares } from '../../core/sun/sunShares'
import type { Site } from '../../shared/document/site'
import { defaults } from '../../shared/settings'
import { sampleSite } from '../plan/sampleSite'
import { checkProposal } from './checkProposal'
import { ft2M2, rectangle, region } from './shapes'

const ftM = 0.3048
const yd3M3 = 0.9144 ** 3

/** A patio of 60 ft × 40 ft at 42° N, its long side facing south; a wall of `wallFt` along and beyond that side. */
function patio(wallFt: number): Site {
  const base = sampleSite('plain-rectangle')
  const slab = base.slabs[0]!
  const corners = [
    [0, 0],
    [60, 0],
    [60, 40],
    [0, 40],
  ] as const
  return {
    ...base,
    place: { ...base.place, latDeg: 42, northDeg: 0 },
    slabs: [
      {
        ...slab,
        borders: [],
        bands: [],
        insets: [],
        openings: [],
        outline: {
          ...slab.outline,
          vertices: corners.map(([x, y], i) => ({ id: `v90${i}`, at: [x * ftM, y * ftM] as const })),
          edges: corners.map((_, i) => ({ id: `e90${i}` })),
        },
      },
    ],
    casters:
      wallFt === 0
        ? []
        : [
            {
              id: 'w900',
              name: 'wall',
              kind: 'wall',
              line: [
                [-400 * ftM, 0],
                [460 * ftM, 0],
              ],
              baseM: slab.levelM,
              topM: slab.levelM + wallFt * ftM,
              solidity: 1,
            },
          ],
  }
}

const capM2 = 1300 * ft2M2
/** At the equinox a shade line from east to west stays where it is all day: h × tan(latitude) from the wall. */
const date = '2026-09-22'

function groundOf(
  site: Site,
  truckSpots: readonly (readonly [number, number])[] = [],
  largestM2 = capM2,
  zonesM: readonly number[] = [5],
) {
  const day = siteDay(date, site.place.zone)
  if (!day.ok) throw new Error('no day')
  const slab = resolveSlab(site.slabs[0]!)
  const casters = site.casters.map(caster => resolveCaster(caster).value)
  const exposed = exposure(slab, casters, site.place, day.value, 15, site.settings)
  const clock = provisionalDay(day.value, site.calendar, site.settings)
  const ground = siteGround({
    exposed,
    clock,
    capM2: largestM2,
    truckSpots,
    zonesM,
  })
  const input: SplitInput = { slabId: slab.id, part: 'whole', region: slab.net[0]!, capM2 }
  return { exposed, clock, ground, input, day: day.value }
}

const termOf = (proposal: ReturnType<typeof proposePours>, term: string): number =>
  proposal.cost.find(each => each.term === term)?.value ?? 0

describe('a day not planned yet', () => {
  it('starts with the first truck, stamps 3 to 4½ h after placing', () => {
    const { clock, day } = groundOf(patio(0))
    expect(isoWithOffset(clock.startMs, day.zone)).toContain('T07:00:00')
    // 900 ft² at 900 ft²/h: the last spot gets its first mat 4 h after the start, the first its last after 4½ h.
    expect(openHours(900 * ft2M2, clock)).toBeCloseTo(4.5, 6)
    expect(openHours(3600 * ft2M2, { ...clock, placeM2H: 900 * ft2M2 })).toBeCloseTo(7, 9)
  })

  it('starts when the plant opens on that weekday', () => {
    const { day } = groundOf(patio(0))
    // 22 September 2026 is a Tuesday.
    const calendar = { plantHours: [{ weekdays: [2], from: '09:30', to: '16:00' }], noiseHours: [], weatherDays: 0 }
    expect(isoWithOffset(provisionalDay(day, calendar, undefined).startMs, day.zone)).toContain('T09:30:00')
  })
})

describe('the shade line', () => {
  it('costs nothing where there is no shade and no truck spot', () => expect(groundOf(patio(0)).ground).toBeNull())

  it('across a pour costs its minutes times the smaller share, as the raster tells them', () => {
    const { exposed, clock, ground, input } = groundOf(patio(10), [], 3000 * ft2M2)
    const weights = { shadeLineMost: 1e6 }
    const whole = searchSplit({ ...input, weights, capM2: 3000 * ft2M2 })(ground)
    expect(whole.pours).toHaveLength(1)
    const endMs = clock.startMs + openHours(2400 * ft2M2, clock) * 3_600_000
    const shares = sunShares(exposed)
    const minutes = exposed.lit.reduce((sum, index, step) => {
      const ms = exposed.instants[index]!
      const share = shares[index]!
      return ms < clock.startMs || ms > endMs ? sum : sum + exposed.litMin[step]! * Math.min(share, 1 - share)
    }, 0)
    // 10 ft × tan 42° of 40 ft lie in shade from 7 o'clock on.
    expect(minutes).toBeGreaterThan(60 * openHours(2400 * ft2M2, clock) * 0.2)
    // 0.05 ft a minute and 10 %; the samples are good to 2 % of the area.
    expect(termOf(whole, 'shadeLine') / (0.5 * minutes)).toBeGreaterThan(0.9)
    expect(termOf(whole, 'shadeLine') / (0.5 * minutes)).toBeLessThan(1.1)
  })

  it('counts the minutes in which it lies across a pour, a tenth or more on each side', () => {
    const { ground, clock } = groundOf(patio(10))
    const mixedMin = (yFt: number, heightFt: number) =>
      ground!.mixedSunMin(toCutRegion(region(rectangle(0, yFt, 30, heightFt))))
    // The shade ends 10 ft × tan 42° = 9 ft from the wall, all day long.
    const openMin = (areaFt2: number) => 60 * openHours(areaFt2 * ft2M2, clock)
    expect(mixedMin(0, 40) / openMin(1200)).toBeGreaterThan(0.9)
    expect(mixedMin(0, 40) / openMin(1200)).toBeLessThan(1.1)
    expect(mixedMin(5, 20)).toBeGreaterThan(0)
    expect(mixedMin(0, 8)).toBe(0)
    expect(mixedMin(12, 28)).toBe(0)
    // 1 ft of 30 ft in shade.
    expect(mixedMin(8, 30)).toBe(0)
  })

  it('draws a joint to itself where that costs less than the joint', () => {
    const { ground, input } = groundOf(patio(22.2))
    // Reach apart, which speaks for narrow pours.
    const found = searchSplit({ ...input, weights: { reach: 0 } })
    const [base, settled] = [found(null), found(ground)]
    checkProposal(input.region, capM2, settled, 'settled')
    // Without sun the joint is the short one, across the patio.
    expect(base.joints[0]!.lengthM).toBeCloseTo(40 * ftM, 9)
    // The shade ends 22.2 ft × tan 42° = 20 ft from the wall: one pour in sun, one in shade.
    expect(settled.joints[0]!.lengthM).toBeCloseTo(60 * ftM, 9)
    expect(Math.abs(settled.joints[0]!.from[1] - 20 * ftM)).toBeLessThan(0.7)
    expect(settled.pours).toHaveLength(base.pours.length)
    expect(termOf(settled, 'shadeLine')).toBeLessThan(40)
  })

  it('leaves a plan alone, and its pours the same objects, where nothing is gained', () => {
    const { ground, input } = groundOf(patio(2))
    const found = searchSplit(input)
    for (const [i, { region: shape }] of found(ground).pours.entries()) expect(shape).toBe(found(null).pours[i]!.region)
    expect(found(ground).totalCost).toBeGreaterThan(found(null).totalCost)
    expect(found(null)).toEqual(proposePours(input))
  })

  it('gives the same answer twice', () => {
    const { ground, input } = groundOf(patio(22.2))
    const weights = { shadeLine: 0.2 }
    expect(searchSplit({ ...input, weights })(ground)).toEqual(searchSplit({ ...input, weights })(ground))
  })

  it('is found with its direction when it is straight', () => {
    const { ground } = groundOf(patio(22.2))
    expect(Math.abs((ground as SiteGround).shadeLine!.ux)).toBeGreaterThan(0.99)
  })
})

describe('placing two ways', () => {
  it('costs the smaller part of a pour within or beyond the chute', () => {
    // A truck at the middle of the south edge, chute 5 m: half a disc of 39.27 m² within reach.
    const { ground, input } = groundOf(patio(0), [[30 * ftM, 0]])
    const whole = searchSplit({ ...input, capM2: 3000 * ft2M2 })(ground)
    const within = (Math.PI * 5 * 5) / 2
    expect(termOf(whole, 'mixedPlacing')).toBeCloseTo((0.02 * within) / ft2M2, 0)
  })

  it('with carts that end on the slab costs by the worse of the two lines', () => {
    const largest = 3000 * ft2M2
    const mixedOf = (zonesM: readonly number[]) =>
      termOf(
        searchSplit({ ...input, capM2: largest })(groundOf(patio(0), [[30 * ftM, 0]], largest, zonesM).ground),
        'mixedPlacing',
      )
    const { input } = groundOf(patio(0))
    // Half disks of 5 and 8 m on 223 m² of slab: the larger is the smaller part still.
    expect(mixedOf([5, 8])).toBeCloseTo(mixedOf([8]), 9)
    expect(mixedOf([8]) / mixedOf([5])).toBeCloseTo(64 / 25, 1)
    expect(mixedOf([5, 100])).toBeCloseTo(mixedOf([5]), 9)
  })
})

describe('loads', () => {
  const of = { thicknessM: 4 * 0.0254, pumped: false, units: 'ftin', settings: undefined } as const

  it('of 900 ft² at 4 in: 11.7 yd³ to order, a truck and a short load', () => {
    const { orderM3, trucks, isShort } = loadsOfArea(900 * ft2M2, loadRules(of))
    // 11.11 yd³ in place and 5 % over, up to the next ¼ yd³.
    expect(orderM3 / yd3M3).toBeCloseTo(11.75, 9)
    expect([trucks, isShort]).toEqual([2, true])
  })

  it('a full truck of 10 yd³ covers 771 ft² at 4 in with 5 % over', () => {
    const [full] = loadGround(of, capM2).fullTruckM2
    expect(full! / ft2M2).toBeCloseTo((10 * 27 * 3) / 1.05, 3)
    expect(loadsOfArea(full!, loadRules(of)).trucks).toBe(1)
    expect(loadsOfArea(full! * 1.0001, loadRules(of)).trucks).toBe(2)
  })

  it('no mix of pours is cheaper than the bound that the search trusts', () => {
    const ground = loadGround(of, capM2)
    const costOf = (areaM2: number): number => {
      const { orderM3, trucks, isShort } = loadsOfArea(areaM2, loadRules(of))
      return 15 * (trucks - orderM3 / defaults.loadM3.value) + (isShort ? 37.5 : 0)
    }
    for (let a = 20; a <= 1300; a += 7)
      for (let b = 13; b <= 1300; b += 11) {
        const bound = leastLoadCost((a + b) * ft2M2, 2, ground)
        expect(costOf(a * ft2M2) + costOf(b * ft2M2)).toBeGreaterThanOrEqual(bound - 1e-6)
      }
  })

  it('move a joint to a whole truckload where the cap leaves room', () => {
    const trucksOf = (proposal: ReturnType<typeof proposePours>) =>
      proposal.pours.reduce((sum, { areaM2 }) => sum + loadsOfArea(areaM2, loadRules(of)).trucks, 0)
    const strip = region(rectangle(0, 0, 24, 66))
    const largest = 900 * ft2M2
    const input: SplitInput = { slabId: 'slab-1', part: 'whole', region: strip, capM2: largest }
    const plain = proposePours(input)
    const loaded = proposePours({ ...input, loads: loadGround(of, largest) })
    // 1,584 ft²: halves of 792 ft² need a second truck each; 771 and 813 ft² need three in all.
    expect(trucksOf(plain)).toBe(4)
    expect(trucksOf(loaded)).toBe(3)
    expect(loaded.proven).toBe(true)
    checkProposal(strip, largest, loaded, 'whole truckloads')
  })
})
