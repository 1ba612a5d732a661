/** What stands around slabs where dimensions are written: they keep off it. */
import { flattenEdge } from '../../../core/geometry/flattenRing'
import type { ResolvedSlab } from '../../../core/geometry/resolvedSlab'
import { stepLines } from '../../../core/geometry/stepLines'
import type { Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'

/** A circle in plan meters. */
export interface Crown {
  readonly at: Pt
  readonly radiusM: number
}

export interface DimensionGround {
  /** Marked points whose flags stand on the plan. */
  readonly flags: readonly Pt[]
  readonly crowns: readonly Crown[]
  /** The corners of each flight of steps. */
  readonly steps: readonly (readonly Pt[])[]
  /** Walls and fences, point by point. */
  readonly walls: readonly (readonly Pt[])[]
  /** Where trucks, pumps and the washout stand, with half of what is drawn of them, in pixels across and up. */
  readonly marks: readonly { readonly at: Pt; readonly halfPx: Pt }[]
}

/** `flags`: the marked points that are shown. */
export const dimensionGround = (
  { casters, slabs: sources, access }: Pick<Site, 'casters' | 'slabs' | 'access'>,
  slabs: readonly ResolvedSlab[],
  flags: Site['points'],
): DimensionGround => ({
  flags: flags.map(({ at }) => at),
  crowns: casters.flatMap(caster => (caster.kind === 'tree' ? [{ at: caster.at, radiusM: caster.crownRadiusM }] : [])),
  walls: casters.flatMap(caster => (caster.kind === 'wall' ? [caster.line] : [])),
  marks: access
    ? [
        ...access.truckSpots.map(({ at }) => ({ at, halfPx: [12, 24] as const })),
        ...access.pumpSpots.map(({ at }) => ({ at, halfPx: [12, 12] as const })),
        ...access.washouts.map(({ at }) => ({ at, halfPx: [16, 12] as const })),
      ]
    : [],
  steps: slabs.flatMap(({ id, outline }) =>
    (sources.find(each => each.id === id)?.steps ?? []).flatMap(steps => {
      const corners = stepLines(outline, steps).flatMap(line => [...flattenEdge(line, 0.05), line.to])
      return corners.length > 0 ? [corners] : []
    }),
  ),
})
