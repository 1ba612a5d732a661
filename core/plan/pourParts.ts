/** What is poured together: the whole slab, or the field and each border, band or inset that is poured on its own. */
import type { PourPart } from '../../shared/document/pours'
import type { CurveRegion } from '../geometry/curve'
import { subtractCurves } from '../geometry/curveBoolean'
import type { Claim, ResolvedSlab } from '../geometry/resolvedSlab'

export interface SlabPart {
  readonly part: PourPart
  readonly regions: readonly CurveRegion[]
}

const pouredAlone = (claim: Claim): boolean => claim.placed === 'before' || claim.placed === 'after'

export function pourParts(slab: ResolvedSlab): readonly SlabPart[] {
  const alone = [...slab.borders, ...slab.bands, ...slab.insets].filter(pouredAlone)
  if (alone.length === 0) return [{ part: 'whole', regions: slab.net }]
  const shapes = alone.flatMap(claim => claim.shape)
  return [
    { part: 'field', regions: subtractCurves(slab.net, shapes).regions },
    { part: 'border', regions: shapes },
  ]
}
