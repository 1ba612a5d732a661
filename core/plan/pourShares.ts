import type { CurveRegion } from '../geometry/curve'
import type { Exposure } from '../sun/exposure'
import { areaMask, sunShares } from '../sun/sunShares'
import type { Memo } from './memo'

/** Share of the sun on a pour at every instant. Where it lies on the slab is kept while only casters change. */
export function pourShares(memo: Memo, id: string, exposed: Exposure, region: CurveRegion): readonly (number | null)[] {
  const mask = memo.part('pourMask', id, [exposed.grid, region], () => areaMask(exposed, region))
  return memo.part('pourShares', id, [exposed, mask], () => sunShares(exposed, mask))
}
