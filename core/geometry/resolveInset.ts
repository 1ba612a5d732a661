import type { Inset } from '../../shared/document/slab'
import type { Finding } from '../../shared/problem'
import { checkedRing } from './checkedRing'
import type { CurveRegion } from './curve'
import { clipCurveRings, subtractCurves } from './curveBoolean'
import { curveArea } from './ringArea'

/** Overhangs below 1 cm² are drawing inaccuracy, not a mistake. */
const smallAreaM2 = 1e-4

/** An inset before the claims of earlier ones are taken off it. */
export interface InsetShape {
  readonly regions: readonly CurveRegion[]
  readonly chordsKept: boolean
}

/** The part of the inset on the slab; what hangs over the outline is told. */
export function resolveInset(
  { id, path }: Inset,
  gross: CurveRegion,
  net: readonly CurveRegion[],
): { shape: InsetShape; findings: readonly Finding[] } {
  const { ring, findings, bad } = checkedRing(path, id, false)
  if (bad) return { shape: { regions: [], chordsKept: false }, findings }
  const { regions, chordsKept } = clipCurveRings([ring], net)
  const outsideM2 = curveArea(subtractCurves([{ outer: ring, holes: [] }], [gross]).regions)
  const out: Finding[] = [...findings]
  if (outsideM2 > smallAreaM2 || regions.length === 0)
    out.push({
      code: 'insetOutside',
      severity: regions.length === 0 ? 'stop' : 'check',
      values: { outsideM2 },
      at: { entityId: id, point: ring[0]!.from },
    })
  return { shape: { regions, chordsKept }, findings: out }
}
