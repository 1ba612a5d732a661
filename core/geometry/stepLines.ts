import type { Pt } from '../../shared/document/primitives'
import type { Steps } from '../../shared/document/slab'
import type { CurveEdge, CurveRing } from './curve'
import { pointAt } from './edgeAt'
import { edgeLength } from './edgeLength'
import { reverseEdge } from './reverseRing'

/** A shorter tread is not drawn: so deep into a hollow arc none is left. */
const leastM = 1e-3

interface Flight {
  /** The stretch of the slab's edge that it stands on. */
  readonly foot: CurveEdge
  readonly treads: readonly CurveEdge[]
  /** Out from the beginning and from the end of the foot. */
  readonly sides: readonly [CurveEdge, CurveEdge]
}

/** Null where it is on no edge, or too short to be drawn. */
function flightOf(outline: CurveRing, { id, edgeId, fromT, widthM, risers, treadM }: Steps): Flight | null {
  const edge = outline.find(each => each.edgeId === edgeId)
  if (!edge) return null
  const toT = Math.min(1, fromT + widthM / edgeLength(edge))
  const [a, b] = [pointAt(edge, fromT), pointAt(edge, toT)]
  if (Math.hypot(b[0] - a[0], b[1] - a[1]) === 0) return null
  const out = outFrom(edge)
  const along = (from: Pt, to: Pt, radiusM: number): CurveEdge => {
    const line = { edgeId: id, from, to }
    if (!edge.arc) return line
    const { center, sweepRad } = edge.arc
    return { ...line, arc: { center, radiusM, sweepRad: sweepRad * (toT - fromT) } }
  }
  // The lowest riser ends on the ground: one tread fewer than risers.
  const treads = Array.from({ length: Math.max(1, risers - 1) }, (_, i): readonly CurveEdge[] => {
    const m = (i + 1) * treadM
    const radiusM = edge.arc ? edge.arc.radiusM + Math.sign(edge.arc.sweepRad) * m : Infinity
    return radiusM < leastM ? [] : [along(out(a, m), out(b, m), radiusM)]
  }).flat()
  const last = treads.at(-1)
  if (!last) return null
  return {
    foot: along(a, b, edge.arc?.radiusM ?? Infinity),
    treads,
    sides: [
      { edgeId: id, from: a, to: last.from },
      { edgeId: id, from: b, to: last.to },
    ],
  }
}

/** The lines of a flight, tread by tread, going out from its edge: about the center of an arc where it stands on one. */
export function stepLines(outline: CurveRing, steps: Steps): readonly CurveEdge[] {
  const flight = flightOf(outline, steps)
  return flight ? [...flight.treads, ...flight.sides] : []
}

/** What a flight covers; empty where none is drawn. */
export function stepsRing(outline: CurveRing, steps: Steps): CurveRing {
  const flight = flightOf(outline, steps)
  if (!flight) return []
  const { foot, treads, sides } = flight
  return [reverseEdge(foot), sides[0], treads.at(-1)!, reverseEdge(sides[1])]
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
