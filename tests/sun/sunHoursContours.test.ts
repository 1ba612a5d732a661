import { describe, expect, it } from 'vitest'
import { flatRegionContains } from '../../core/geometry/contains'
import { exposure } from '../../core/sun/exposure'
import { pointSun } from '../../core/sun/pointSun'
import { siteDay } from '../../core/sun/siteDay'
import { sunHoursContours } from '../../core/sun/sunHoursContours'
import { box, building, cast, place, seeded, slabOf, tree } from './fixtures'

const day = siteDay('2026-07-21', place.zone)
if (!day.ok) throw new Error('no day')
const slab = slabOf(box(0, 0, 12, 9), [
  [
    [4, 3],
    [4, 5],
    [6, 5],
    [6, 3],
  ],
])
const casters = [cast(building(box(2, -7, 6, 6), { eaveM: 5 })), cast(tree([14, 5]))]
const exposed = exposure(slab, casters, place, day.value, 5, undefined)
const concreteM2 = 12 * 9 - 4

describe('contours of sun hours', () => {
  it('hold the places that have so much sun, and no others', () => {
    const random = seeded(9)
    const hours = [7, 9, 11]
    const contours = sunHoursContours(exposed, slab, hours)
    let told = 0
    for (let i = 0; i < 60; i++) {
      const at = [random() * 12, random() * 9] as const
      if (at[0] > 3.8 && at[0] < 6.2 && at[1] > 2.8 && at[1] < 5.2) continue
      const { directSunMin } = pointSun(at, 0, casters, place, day.value, undefined)
      for (const { hours: level, regions } of contours) {
        // Cells of 6 in and steps of 5 minutes: too near a line nothing can be said.
        if (Math.abs(directSunMin - level * 60) < 25) continue
        told += 1
        expect(
          regions.some(region => flatRegionContains(region, at)),
          `${at} ${directSunMin} ${level}`,
        ).toBe(directSunMin > level * 60)
      }
    }
    expect(told).toBeGreaterThan(80)
  })

  it('lie within each other and within the concrete', () => {
    const areas = sunHoursContours(exposed, slab, [0, 1, 4, 8, 10, 12, 20]).map(({ areaM2 }) => areaM2)
    expect(areas[0]).toBeCloseTo(concreteM2, 3)
    expect(areas[1]).toBeCloseTo(concreteM2, 3)
    areas.forEach((area, i) => {
      if (i > 0) expect(area).toBeLessThanOrEqual(areas[i - 1]! + 1e-6)
    })
    expect(areas.at(-1)).toBe(0)
    expect(areas[4]).toBeGreaterThan(0)
  })

  it('match the share of cells with so much sun', () => {
    // A slab with no shade at all: one contour, the whole slab, up to the length of the sunlit day.
    const open = exposure(slab, [], place, day.value, 5, undefined)
    const sunlitH = pointSun([1, 1], 0, [], place, day.value, undefined).directSunMin / 60
    const [all, none] = sunHoursContours(open, slab, [sunlitH - 0.01, sunlitH + 0.01])
    expect(all!.areaM2).toBeCloseTo(concreteM2, 3)
    expect(none!.areaM2).toBe(0)
  })
})
