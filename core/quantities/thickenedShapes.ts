import type { Slab } from '../../shared/document/slab'
import type { CurveRegion } from '../geometry/curve'
import { clipCurveRings } from '../geometry/curveBoolean'
import { edgeOwners } from '../geometry/edgeOwners'
import { edgeStrips } from '../geometry/edgeStrips'
import type { ResolvedSlab } from '../geometry/resolvedSlab'

export interface ThickenedShape {
  readonly shape: readonly CurveRegion[]
  /** Whole depth at the edge, slab included. */
  readonly depthM: number
}

/** The ground under each thickened edge: a strip of its width along the edges, inside the slab. */
export function thickenedShapes(slab: ResolvedSlab, source: Slab): ThickenedShape[] {
  const rings = [
    { path: source.outline, ring: slab.outline },
    ...slab.openings.flatMap(o => {
      const path = source.openings.find(s => s.id === o.id)?.path
      return path ? [{ path, ring: o.ring }] : []
    }),
  ]
  return source.thickened.map(({ edges, depthM, widthM }) => {
    const wanted = new Set<string>(edges)
    const pieces = rings.flatMap(({ path, ring }) => {
      const owners = edgeOwners(path)
      const isWanted = (edgeId: string) => (owners.get(edgeId) ?? []).some(owner => wanted.has(owner))
      const chain = ring.map(edge => ({ edge, depthM: isWanted(edge.edgeId) ? widthM : 0 }))
      return edgeStrips(chain, true, { inner: 'inner', cut: 'cut' })
    })
    return { depthM, shape: clipCurveRings(pieces, slab.net).regions }
  })
}
