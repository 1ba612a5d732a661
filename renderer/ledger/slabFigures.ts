/** Figures the page works out itself on the drawing in hand, so that they follow every drag. */
import type { ResolvedSlab } from '../../core/geometry/resolvedSlab'
import { edgeLengths } from '../../core/quantities/edgeLengths'
import { claimFigures, slabAreas } from '../../core/quantities/slabAreas'
import type { Slab } from '../../shared/document/slab'
import type { Quantity } from '../../shared/planJson'

export interface SlabFigures {
  readonly areas: readonly Quantity[]
  readonly claims: readonly Quantity[]
  readonly lengths: readonly Quantity[]
}

const known = new WeakMap<ResolvedSlab, SlabFigures>()

export function slabFigures(slab: ResolvedSlab, source: Slab): SlabFigures {
  const made = known.get(slab)
  if (made) return made
  const areas = slabAreas(slab)
  const figures = {
    areas: areas.filter(q => q.unit === 'm²'),
    claims: claimFigures(slab),
    lengths: [...areas.filter(q => q.unit === 'm'), ...edgeLengths(slab, source)],
  }
  known.set(slab, figures)
  return figures
}
