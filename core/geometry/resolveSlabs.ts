import type { Slab } from '../../shared/document/slab'
import type { Finding } from '../../shared/problem'
import { boxesMeet, ringBounds } from './bounds'
import { intersectCurves } from './curveBoolean'
import type { ResolvedSlab } from './resolvedSlab'
import { resolveSlab } from './resolveSlab'
import { curveArea } from './ringArea'

/** Slabs may touch; from 1 cm² of common ground on it is a mistake. */
const smallAreaM2 = 1e-4

export interface ResolvedSlabs {
  readonly slabs: readonly ResolvedSlab[]
  /** Findings of every slab, then those between slabs. */
  readonly findings: readonly Finding[]
}

/** All slabs of a site, and a `check` for every two that claim the same ground. */
export function resolveSlabs(slabs: readonly Slab[]): ResolvedSlabs {
  const resolved = slabs.map(resolveSlab)
  const findings = resolved.flatMap(s => s.findings)
  resolved.forEach((a, i) => {
    for (const b of resolved.slice(0, i)) {
      if (a.net.length === 0 || b.net.length === 0) continue
      if (!boxesMeet(ringBounds(a.outline), ringBounds(b.outline))) continue
      const { regions } = intersectCurves(b.net, a.net)
      const commonM2 = curveArea(regions)
      if (commonM2 > smallAreaM2)
        findings.push({
          code: 'slabsOverlap',
          severity: 'check',
          values: { otherId: b.id, commonM2 },
          at: { entityId: a.id, point: regions[0]!.outer[0]!.from },
        })
    }
  })
  return { slabs: resolved, findings }
}
