import type { CurveRegion } from '../../core/geometry/curve'
import { flattenRing } from '../../core/geometry/flattenRing'
import { toCutRegion } from '../../core/pours/region/cutRegion'
import { minimumBox } from '../../core/pours/region/minimumBox'
import type { Pt } from '../../shared/document/primitives'

/** A line through the middle of a pour's least rectangle: across its long side, or along it. */
export function middleCut(region: CurveRegion, way: 'across' | 'along'): readonly [Pt, Pt] {
  const { ux, uy } = minimumBox(toCutRegion(region).rings[0]!)
  const points = flattenRing(region.outer)
  const spread = (x: number, y: number) => {
    const along = points.map(p => p[0] * x + p[1] * y)
    return { from: Math.min(...along), to: Math.max(...along) }
  }
  const [u, v] = [spread(ux, uy), spread(-uy, ux)]
  const isLongAlongU = u.to - u.from >= v.to - v.from
  const cutsAlongV = isLongAlongU === (way === 'across')
  const [mu, mv] = [(u.from + u.to) / 2, (v.from + v.to) / 2]
  const at = (a: number, b: number): Pt => [ux * a - uy * b, uy * a + ux * b]
  return cutsAlongV ? [at(mu, v.from), at(mu, v.to)] : [at(u.from, mv), at(u.to, mv)]
}
