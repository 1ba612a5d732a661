import { describe, expect, it } from 'vitest'
import { toCutRegion } from '../../core/pours/region/cutRegion'
import { leastSeparation, separationOf } from '../../core/pours/search/separation'
import { polygon, rectangle, region } from './shapes'

const ftM = 0.3048
const free = () => 0

/** Least length of joint (ft) for k pours of a region, no pour larger than the k-th part by more than a tenth. */
const leastFt = (of: ReturnType<typeof region>, k: number): number => {
  const cut = toCutRegion(of)
  return leastSeparation(separationOf(cut), k, cut.areaM2, (1.1 * cut.areaM2) / k, 1 / ftM, free, 0)
}

describe('the joint that parts a region, by its boundary alone', () => {
  it('of a walk in two is most of its width, and never more', () => {
    const least = leastFt(region(rectangle(0, 0, 8, 60)), 2)
    expect(least).toBeLessThanOrEqual(8)
    expect(least).toBeGreaterThan(6)
  })

  it('promises nothing where a boundary is traced in more sides than are compared', () => {
    const traced = Array.from({ length: 4000 }, (_, i): [number, number] => {
      const turn = (i / 4000) * 2 * Math.PI
      return [30 * Math.cos(turn), 30 * Math.sin(turn)]
    })
    expect(leastFt(region(polygon(traced)), 2)).toBe(0)
  })
})
