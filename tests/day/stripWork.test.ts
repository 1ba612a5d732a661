import { describe, expect, it } from 'vitest'
import { outOfReach } from '../../core/pours/day/outOfReach'
import { placingMethod, placingZonesM } from '../../core/pours/day/placingMethod'
import { stripBorder } from '../../core/pours/day/stripBorder'
import { cutStrips } from '../../core/pours/day/strips'
import { borderMin, placingTasks, stampingTasks, sumMin } from '../../core/pours/day/stripWork'
import { handRates } from '../../core/pours/day/taskTable'
import { rectangle, washer } from './curveShapes'

const rates = handRates('steady', 'ashlar', true)
const strip = { areaM2: 20, edgeM: 8, borderM: 0, frontM: 4 }

describe('placing', () => {
  const minutes = (hands: number, methodM2H: number) => sumMin(placingTasks(strip, hands, rates, methodM2H))

  it('goes at the least of hands, method and strike-off', () => {
    const unbounded = Number.POSITIVE_INFINITY
    // Three hands are slower than a screed.
    expect(minutes(3, unbounded)).toBeGreaterThan((60 * 20) / 84)
    // Any number of them is not faster: 900 ft²/h.
    expect(minutes(60, unbounded)).toBeCloseTo((60 * 20) / 84, 9)
    // A hand cart of 3 yd³/h spreads 22.6 m²/h at 4 in.
    const cartM2H = (3 * 0.764554857984) / 0.1016
    expect(minutes(60, cartM2H)).toBeCloseTo((60 * 20) / cartM2H, 9)
    expect(minutes(1, cartM2H)).toBeGreaterThanOrEqual(minutes(60, cartM2H))
  })

  it('goes by chute where it reaches, by buggy beyond, by pump where one is ordered', () => {
    const access = { truckSpots: [{ id: 't', at: [0, 0] as const }], chuteReachM: 4, pumpSpots: [], noGo: [], ways: [] }
    const at = (x: number, more = {}) => placingMethod([[x, 0]], { ...access, ...more } as never)
    expect(at(5)).toMatchObject({ method: 'chute', haulM: 5, rateM3H: Number.POSITIVE_INFINITY })
    expect(at(30)).toMatchObject({ method: 'powerBuggy', haulM: 30, rateM3H: 15 * 0.764554857984 })
    expect(at(30, { carts: 'handCart' })).toMatchObject({ method: 'handCart', rateM3H: 3 * 0.764554857984 })
    expect(at(30, { pumpSpots: [[1, 1]] })).toMatchObject({ method: 'pump', rateM3H: 12 * 0.764554857984 })
  })
})

describe('the ways of placing around a truck', () => {
  const access = { truckSpots: [{ id: 't', at: [0, 0] as const }], pumpSpots: [], washouts: [], noGo: [], ways: [] }
  const zonesFt = (more = {}) => placingZonesM({ ...access, chuteReachM: 4, ...more }).map(m => m / 0.3048)

  it('change at the end of the chute and where carts no longer pay; a pump is one way everywhere', () => {
    expect(zonesFt()).toEqual([expect.closeTo(12 / 0.3048, 9), expect.closeTo(600, 9)])
    // Hand carts to 200 ft, power buggies to 600 ft: trade article, Buggy power.
    expect(zonesFt({ carts: 'handCart' })).toEqual([expect.closeTo(12 / 0.3048, 9), expect.closeTo(200, 9)])
    expect(zonesFt({ pumpSpots: [{ id: 'u', at: [0, 0] }] })).toEqual([])
    expect(zonesFt({ truckSpots: [] })).toEqual([])
    expect(placingZonesM(undefined)).toEqual([])
  })
})

describe('a border', () => {
  it('is timed by length, 60 ft/h a hand (tuned)', () => {
    expect(borderMin({ ...strip, borderM: 18.288 }, 1, rates)).toBeCloseTo(60, 9)
    expect(borderMin({ ...strip, borderM: 18.288 }, 2, rates)).toBeCloseTo(30, 9)
  })

  it('goes slower along an arc and at miters', () => {
    const straight = borderMin({ ...strip, borderM: 10 }, 1, rates)
    expect(borderMin({ ...strip, borderM: 10, borderArcM: 10 }, 1, rates)).toBeCloseTo(straight / 0.7, 9)
    expect(borderMin({ ...strip, borderM: 10, miters: 2 }, 1, rates)).toBeCloseTo(straight + 6, 9)
    const together = sumMin(stampingTasks({ ...strip, borderM: 10, miters: 2 }, 4, rates, true))
    expect(together - sumMin(stampingTasks({ ...strip, borderM: 10 }, 4, rates, true))).toBeCloseTo(6 / 4, 9)
  })

  it('of a rectangle has four miters in all, two in the first strip; a round one none, and is all arc', () => {
    const region = rectangle(8, 6)
    const all = [{ edges: new Set(region.outer.map(edge => edge.edgeId)), widthM: 0.3 }]
    const strips = cutStrips(region, [1, 0], [1, 1, 1])
    const own = strips.map(shape => stripBorder(shape, all))
    expect(own.map(({ miters }) => miters)).toEqual([2, 0, 2])
    expect(own.reduce((sum, { lengthM }) => sum + lengthM, 0)).toBeCloseTo(28, 9)
    const ring = washer(4, 1)
    const outer = [{ edges: new Set(ring.outer.map(edge => edge.edgeId)), widthM: 0.3 }]
    const [round] = cutStrips(ring, [1, 0], [1]).map(shape => stripBorder(shape, outer))
    expect(round).toMatchObject({
      miters: 0,
      lengthM: expect.closeTo(8 * Math.PI, 9),
      arcM: expect.closeTo(8 * Math.PI, 9),
    })
  })
})

describe('reach', () => {
  it('12 ft from every edge leaves the middle of a wide pour, and nothing of a narrow one', () => {
    const wide = rectangle(12, 12)
    // What is left of 12 m less 3.6576 m on each side, squared; told to a tenth of a square meter and the grid's edge.
    expect(Math.abs(outOfReach([wide], wide.outer, 3.6576) - (12 - 2 * 3.6576) ** 2)).toBeLessThan(1.5)
    const narrow = rectangle(7, 20)
    expect(outOfReach([narrow], narrow.outer, 3.6576)).toBe(0)
  })

  it('against a wall reach counts from the other sides only', () => {
    const lane = rectangle(5, 20)
    const open = lane.outer.filter((_, i) => i === 1)
    // Only one long side to stand on: 5 m less 12 ft of the width is out of reach.
    expect(outOfReach([lane], open, 3.6576)).toBeCloseTo(20 * (5 - 3.6576), -1)
  })
})
