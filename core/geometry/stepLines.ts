import type { Pt } from '../../shared/document/primitives'
import type { Steps } from '../../shared/document/slab'
import type { CurveRing } from './curve'
import { pointAt } from './edgeAt'
import { edgeLength } from './edgeLength'

/** The lines of a flight, tread by tread, going out from its edge. */
export function stepLines(
  outline: CurveRing,
  { edgeId, fromT, widthM, risers, treadM }: Steps,
): readonly (readonly [Pt, Pt])[] {
  const edge = outline.find(each => each.edgeId === edgeId)
  if (!edge) return []
  const [a, b] = [pointAt(edge, fromT), pointAt(edge, Math.min(1, fromT + widthM / edgeLength(edge)))]
  const long = Math.hypot(b[0] - a[0], b[1] - a[1])
  if (long === 0) return []
  // The concrete is on the left of travel, the flight on the right.
  const [nx, ny] = [(b[1] - a[1]) / long, -(b[0] - a[0]) / long]
  const out = (p: Pt, m: number): Pt => [p[0] + nx * m, p[1] + ny * m]
  // The lowest riser ends on the ground: one tread fewer than risers.
  const runM = Math.max(1, risers - 1) * treadM
  const treads = Array.from({ length: Math.max(1, risers - 1) }, (_, i): readonly [Pt, Pt] => [
    out(a, (i + 1) * treadM),
    out(b, (i + 1) * treadM),
  ])
  return [...treads, [a, out(a, runM)], [b, out(b, runM)]]
}
