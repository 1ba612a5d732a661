import type { Pt } from '../../shared/document/primitives'
import type { Steps } from '../../shared/document/slab'
import type { CurveEdge, CurveRing } from './curve'
import { pointAt } from './edgeAt'
import { edgeLength } from './edgeLength'

/** A shorter tread is not drawn: so deep into a hollow arc none is left. */
const leastM = 1e-3

/** The lines of a flight, tread by tread, going out from its edge: about the center of an arc where it stands on one. */
export function stepLines(
  outline: CurveRing,
  { id, edgeId, fromT, widthM, risers, treadM }: Steps,
): readonly CurveEdge[] {
  const edge = outline.find(each => each.edgeId === edgeId)
  if (!edge) return []
  const toT = Math.min(1, fromT + widthM / edgeLength(edge))
  const [a, b] = [pointAt(edge, fromT), pointAt(edge, toT)]
  if (Math.hypot(b[0] - a[0], b[1] - a[1]) === 0) return []
  const out = outFrom(edge)
  // The lowest riser ends on the ground: one tread fewer than risers.
  const treads = Array.from({ length: Math.max(1, risers - 1) }, (_, i): readonly CurveEdge[] => {
    const m = (i + 1) * treadM
    const line = { edgeId: id, from: out(a, m), to: out(b, m) }
    if (!edge.arc) return [line]
    const { center, sweepRad } = edge.arc
    const radiusM = edge.arc.radiusM + Math.sign(sweepRad) * m
    return radiusM < leastM ? [] : [{ ...line, arc: { center, radiusM, sweepRad: sweepRad * (toT - fromT) } }]
  }).flat()
  const last = treads.at(-1)
  return last ? [...treads, { edgeId: id, from: a, to: last.from }, { edgeId: id, from: b, to: last.to }] : []
}

/** Away from the concrete: it is on the left of travel, the flight on the right. */
function outFrom({ from, to, arc }: CurveEdge): (p: Pt, m: number) => Pt {
  if (arc) {
    const { center, radiusM, sweepRad } = arc
    return ([x, y], m) => {
      const share = (Math.sign(sweepRad) * m) / radiusM
      return [x + (x - center[0]) * share, y + (y - center[1]) * share]
    }
  }
  const long = Math.hypot(to[0] - from[0], to[1] - from[1])
  const [nx, ny] = [(to[1] - from[1]) / long, -(to[0] - from[0]) / long]
  return ([x, y], m) => [x + nx * m, y + ny * m]
}
