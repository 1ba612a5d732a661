import type { CurveRing } from '../../../core/geometry/curve'
import { flattenRing } from '../../../core/geometry/flattenRing'
import type { Pt } from '../../../shared/document/primitives'

/** Chords this near to an arc tell where its line runs among letters. */
const sagittaM = 0.02

const outlines = new WeakMap<CurveRing, readonly Pt[]>()

/** The points of a ring, the first once more at its end. */
export function closedOutline(ring: CurveRing): readonly Pt[] {
  const known = outlines.get(ring)
  if (known) return known
  const points = flattenRing(ring, sagittaM)
  const made = [...points, ...points.slice(0, 1)]
  outlines.set(ring, made)
  return made
}
