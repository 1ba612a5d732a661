/** Proof that areas without joints leave no split: what of them hangs together lies in one pour, whatever is tried. */
import { intersectRegions, offsetRegions, unionRegions } from '../../geometry/clip'
import { flatArea } from '../../geometry/flatArea'
import { flattenRegion } from '../../geometry/flattenRing'
import { type CutRegion, toCurveRegion } from '../region/cutRegion'
import type { ForbiddenArea } from './jointWishes'

/** Between areas that only touch a joint may run: they are looked at this much smaller (m). */
const rimM = 2e-3
/** Share by which the piece must be over the cap: arcs are flattened. */
const roundOff = 1e-3
/** Share that the grid of the clipping may have taken. */
const gridShare = 2e-6

/** Area of the largest connected piece that the areas keep in one pour of the face, m²; 0 where a pour can hold it. */
export function keptWhole(face: CutRegion, areas: readonly ForbiddenArea[], capM2: number): number {
  const shapes = areas.flatMap(({ ring }) => (ring.length === 0 ? [] : [flattenRegion({ outer: ring, holes: [] })]))
  if (shapes.length === 0) return 0
  const smaller = unionRegions(shapes.flatMap(shape => offsetRegions([shape], -rimM)))
  const own = flattenRegion(toCurveRegion(face, () => ''))
  let mostM2 = 0
  for (const piece of smaller)
    for (const kept of intersectRegions(offsetRegions([piece], rimM), [own]))
      mostM2 = Math.max(mostM2, flatArea([kept]))
  return mostM2 > capM2 * (1 + roundOff) ? mostM2 * (1 + gridShare) : 0
}
