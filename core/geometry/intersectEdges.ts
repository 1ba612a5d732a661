import type { Pt } from '../../shared/document/primitives'
import { edgeBounds, edgeMeets } from './bounds'
import { distanceToEdge } from './contains'
import type { CurveEdge } from './curve'
import { angleFrom } from './edgeAt'
import { intersectSupports, supportOf } from './intersectSupports'

const turn = 2 * Math.PI

function coincide(a: CurveEdge, b: CurveEdge, nearM: number): boolean {
  const s = supportOf(a)
  const t = supportOf(b)
  if (s.line && t.line) {
    const off = (p: Pt) => Math.abs((p[0] - s.at[0]) * s.along[1] - (p[1] - s.at[1]) * s.along[0])
    return off(b.from) <= nearM && off(b.to) <= nearM
  }
  if (!s.line && !t.line)
    return (
      Math.abs(s.radiusM - t.radiusM) <= nearM &&
      Math.hypot(s.center[0] - t.center[0], s.center[1] - t.center[1]) <= nearM
    )
  return false
}

/**
 * Points common to two edges, exact on arcs; `nearM` is how far apart they may be and still touch. Where the edges run
 * along each other, the ends of the common piece.
 */
export function intersectEdges(a: CurveEdge, b: CurveEdge, nearM = 1e-7): Pt[] {
  if (!edgeMeets(a, edgeBounds(b), nearM)) return []
  const points: Pt[] = []
  const keep = (p: Pt) => {
    if (!points.some(q => Math.hypot(q[0] - p[0], q[1] - p[1]) <= 4 * nearM)) points.push(p)
  }
  for (const p of [a.from, a.to]) if (distanceToEdge(b, p) <= nearM) keep(p)
  for (const p of [b.from, b.to]) if (distanceToEdge(a, p) <= nearM) keep(p)
  if (coincide(a, b, nearM)) return points
  for (const p of intersectSupports(supportOf(a), supportOf(b), nearM))
    if (distanceToEdge(a, p) <= nearM && distanceToEdge(b, p) <= nearM) keep(p)
  return points
}

/** Length from the edge's start to one of its points, meters. */
export function runAlong({ from, to, arc }: CurveEdge, p: Pt): number {
  if (!arc) {
    const dx = to[0] - from[0]
    const dy = to[1] - from[1]
    return ((p[0] - from[0]) * dx + (p[1] - from[1]) * dy) / Math.hypot(dx, dy)
  }
  let d = Math.sign(arc.sweepRad) * (angleFrom(arc.center, p) - angleFrom(arc.center, from))
  d -= Math.floor(d / turn) * turn
  // a point a hair before the start belongs to the start, not to the far end
  if (d > (turn + Math.abs(arc.sweepRad)) / 2) d -= turn
  return d * arc.radiusM
}
