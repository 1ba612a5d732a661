/** The ground that accepted pours of one slab stand on: the regions their joints cut, and its edges. */
import type { PourPart } from '../../../shared/document/pours'
import type { Slab } from '../../../shared/document/slab'
import type { CurveRegion, CurveRing } from '../../geometry/curve'
import { resolvePath } from '../../geometry/resolvePath'
import { resolveSlab } from '../../geometry/resolveSlab'
import { pourParts } from '../../plan/pourParts'

/** Slabs are immutable, and a drag asks for the one it started from at every move. */
const known = new WeakMap<Slab, Map<PourPart, readonly CurveRegion[]>>()

const findRegions = (slab: Slab, part: PourPart): readonly CurveRegion[] => {
  if (part === 'whole') {
    const outer = resolvePath(slab.outline, slab.id).ring
    if (outer.length === 0) return []
    return [{ outer, holes: slab.openings.map(({ id, path }) => resolvePath(path, id).ring).filter(r => r.length > 0) }]
  }
  return pourParts(resolveSlab(slab)).find(row => row.part === part)?.regions ?? []
}

export const pourGround = (slab: Slab, part: PourPart): readonly CurveRegion[] => {
  const parts = known.get(slab) ?? new Map<PourPart, readonly CurveRegion[]>()
  const regions = parts.get(part) ?? findRegions(slab, part)
  parts.set(part, regions)
  known.set(slab, parts)
  return regions
}

export const groundRings = (regions: readonly CurveRegion[]): readonly CurveRing[] =>
  regions.flatMap(({ outer, holes }) => [outer, ...holes])
