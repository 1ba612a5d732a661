/** Pours too narrow to work on, however they came about. */
import type { Finding } from '../../shared/problem'
import type { CurveRegion } from '../geometry/curve'
import { toCutRegion } from './region/cutRegion'
import { insidePoint } from './region/insidePoint'
import { minimumBox } from './region/minimumBox'

interface Shaped {
  readonly id: string
  readonly region: CurveRegion
}

/** Within this of the width of the slab it is the slab that is narrow (m). */
const roundOffM = 0.003

/**
 * One finding for all pours of a region whose least rectangle is narrower than `leastM`, where the region itself is wider
 * by 2 · area ÷ perimeter: a narrow walk is told nothing. `at` is the narrowest.
 */
export function narrowPours(
  slabName: string,
  region: CurveRegion,
  pours: readonly Shaped[],
  leastM: number,
): Finding[] {
  const { areaM2, perimeterM } = toCutRegion(region)
  const regionM = (2 * areaM2) / perimeterM
  const narrow = pours
    .map(({ id, region: own }) => ({ id, region: own, widthM: minimumBox(toCutRegion(own).rings[0]!).shortM }))
    .filter(({ widthM }) => widthM < Math.min(leastM, regionM) - roundOffM)
  if (narrow.length === 0) return []
  const least = narrow.reduce((a, b) => (b.widthM < a.widthM ? b : a))
  return [
    {
      ...{ code: 'poursNarrow', severity: 'check' },
      values: { slab: slabName, count: narrow.length, widthM: least.widthM, leastM },
      at: { entityId: least.id, point: insidePoint(toCutRegion(least.region)) },
    },
  ]
}
