import type { Finding } from '../../shared/problem'
import { boxesMeet, ringBounds } from './bounds'
import { intersectCurves } from './curveBoolean'
import type { ResolvedSlab } from './resolvedSlab'
import { curveArea } from './ringArea'

/** Slabs may touch; from 1 cm² of common ground on it is a mistake. */
const smallAreaM2 = 1e-4

/** A `check` for every two slabs that claim the same ground. */
export function findSlabOverlaps(slabs: readonly ResolvedSlab[]): Finding[] {
  return slabs.flatMap((a, i) =>
    slabs.slice(0, i).flatMap((b): Finding[] => {
      if (a.net.length === 0 || b.net.length === 0) return []
      if (!boxesMeet(ringBounds(a.outline), ringBounds(b.outline))) return []
      const { regions } = intersectCurves(b.net, a.net)
      const commonM2 = curveArea(regions)
      if (commonM2 <= smallAreaM2) return []
      return [
        {
          code: 'slabsOverlap',
          severity: 'check',
          values: { otherId: b.id, name: a.name, otherName: b.name, commonM2 },
          at: { entityId: a.id, point: regions[0]!.outer[0]!.from },
        },
      ]
    }),
  )
}
