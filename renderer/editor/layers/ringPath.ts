/** Shapes as canvas paths in plan meters, arcs as arcs; made once per shape. */
import type { CurveRegion, CurveRing } from '../../../core/geometry/curve'
import { angleFrom } from '../../../core/geometry/edgeAt'
import type { DrawnShadow } from '../../../core/sun/drawnShadow'

const ringPaths = new WeakMap<CurveRing, Path2D>()
const regionPaths = new WeakMap<object, Path2D>()

export function addEdges(path: Path2D, edges: CurveRing): void {
  let last: readonly [number, number] | undefined
  for (const { from, to, arc } of edges) {
    if (last === undefined || last[0] !== from[0] || last[1] !== from[1]) path.moveTo(from[0], from[1])
    if (arc) {
      const start = angleFrom(arc.center, from)
      path.arc(arc.center[0], arc.center[1], arc.radiusM, start, start + arc.sweepRad, arc.sweepRad < 0)
    } else path.lineTo(to[0], to[1])
    last = to
  }
}

export function ringPath(ring: CurveRing): Path2D {
  const known = ringPaths.get(ring)
  if (known) return known
  const path = new Path2D()
  addEdges(path, ring)
  path.closePath()
  ringPaths.set(ring, path)
  return path
}

/** Several regions as one path, for the even-odd or the non-zero rule alike. */
export function regionsPath(regions: readonly CurveRegion[]): Path2D {
  const known = regionPaths.get(regions)
  if (known) return known
  const path = new Path2D()
  for (const { outer, holes } of regions) for (const ring of [outer, ...holes]) path.addPath(ringPath(ring))
  regionPaths.set(regions, path)
  return path
}

/** Adds what a caster shades, for the non-zero rule. */
export function addShadow(path: Path2D, { rings, ellipses }: DrawnShadow): void {
  for (const ring of rings) {
    path.moveTo(ring[0]!, ring[1]!)
    for (let i = 2; i < ring.length; i += 2) path.lineTo(ring[i]!, ring[i + 1]!)
    path.closePath()
  }
  for (const { cx, cy, ux, uy, alongM, acrossM } of ellipses) {
    path.moveTo(cx + alongM * ux, cy + alongM * uy)
    path.ellipse(cx, cy, alongM, acrossM, Math.atan2(uy, ux), 0, 2 * Math.PI)
    path.closePath()
  }
}
