/** Which pour goes on as which face: by the area they share. */
import type { Id } from '../../../shared/document/primitives'
import { boxesMeet, ringBounds } from '../../geometry/bounds'
import type { CurveRegion } from '../../geometry/curve'
import { intersectCurves } from '../../geometry/curveBoolean'
import { ringArea } from '../../geometry/ringArea'

export interface Shape {
  readonly region: CurveRegion
  readonly areaM2: number
}

const regionArea = ({ outer, holes }: CurveRegion): number =>
  ringArea(outer) + holes.reduce((sum, hole) => sum + ringArea(hole), 0)

/** The same edges at the same places, whatever their names. */
function isSame(a: Shape, b: Shape): boolean {
  if (Math.abs(a.areaM2 - b.areaM2) > 1e-9 * a.areaM2) return false
  const [p, q] = [ringBounds(a.region.outer), ringBounds(b.region.outer)]
  const near = (u: number, v: number) => Math.abs(u - v) < 1e-9
  if (!near(p.minX, q.minX) || !near(p.minY, q.minY) || !near(p.maxX, q.maxX) || !near(p.maxY, q.maxY)) return false
  return a.region.outer.every(({ from }) =>
    b.region.outer.some(edge => near(edge.from[0], from[0]) && near(edge.from[1], from[1])),
  )
}

function sharedArea(a: Shape, b: Shape): number {
  if (!boxesMeet(ringBounds(a.region.outer), ringBounds(b.region.outer))) return 0
  return intersectCurves([a.region], [b.region]).regions.reduce((sum, region) => sum + regionArea(region), 0)
}

/**
 * For each old pour the face it goes on as: most shared area first, each face once. A pour that shares less than
 * `leastShare` of its own area with a face does not go on as it.
 */
export function matchPours(
  old: readonly (Shape & { readonly id: Id })[],
  faces: readonly Shape[],
  leastShare: number,
): ReadonlyMap<Id, number> {
  const matched = new Map<Id, number>()
  const taken = new Set<number>()
  for (const pour of old) {
    const at = faces.findIndex((face, i) => !taken.has(i) && isSame(pour, face))
    if (at < 0) continue
    matched.set(pour.id, at)
    taken.add(at)
  }
  const pairs = old.flatMap(pour =>
    matched.has(pour.id)
      ? []
      : faces.flatMap((face, at) => {
          if (taken.has(at)) return []
          const sharedM2 = sharedArea(pour, face)
          return sharedM2 > 1e-6 && sharedM2 >= leastShare * pour.areaM2 - 1e-9 ? [{ id: pour.id, at, sharedM2 }] : []
        }),
  )
  pairs.sort((a, b) => b.sharedM2 - a.sharedM2)
  for (const { id, at } of pairs) {
    if (taken.has(at) || matched.has(id)) continue
    matched.set(id, at)
    taken.add(at)
  }
  return matched
}
