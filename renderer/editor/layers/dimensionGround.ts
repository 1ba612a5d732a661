/** What stands around slabs where dimensions are written: they keep off it. */
import type { CurveRing } from '../../../core/geometry/curve'
import type { ResolvedSlab } from '../../../core/geometry/resolvedSlab'
import { stepsRing } from '../../../core/geometry/stepLines'
import type { Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { Slab } from '../../../shared/document/slab'
import { onceFrozen } from '../../../shared/onceFrozen'
import { closedOutline } from './closedOutline'
import type { MarkKind } from './markSizes'

/** A circle in plan meters. */
export interface Crown {
  readonly at: Pt
  readonly radiusM: number
}

export interface DimensionGround {
  /** Marked points whose flags stand on the plan. */
  readonly flags: readonly Pt[]
  readonly crowns: readonly Crown[]
  /** The closed outline of each flight of steps. */
  readonly steps: readonly (readonly Pt[])[]
  /** Walls and fences, point by point. */
  readonly walls: readonly (readonly Pt[])[]
  /** The outlines of all slabs: a dimension keeps off those that it does not measure. */
  readonly slabs: readonly CurveRing[]
  /** Where trucks, pumps and the washout stand. */
  readonly marks: readonly { readonly at: Pt; readonly kind: MarkKind }[]
}

const crownsOf = onceFrozen((casters: Site['casters']): readonly Crown[] =>
  casters.flatMap(caster => (caster.kind === 'tree' ? [{ at: caster.at, radiusM: caster.crownRadiusM }] : [])),
)

const wallsOf = onceFrozen((casters: Site['casters']): DimensionGround['walls'] =>
  casters.flatMap(caster => (caster.kind === 'wall' ? [caster.line] : [])),
)

const noFlags: DimensionGround['flags'] = []

const flagsOf = onceFrozen((points: Site['points']): DimensionGround['flags'] => points.map(({ at }) => at))

const noMarks: DimensionGround['marks'] = []

const marksOf = onceFrozen((access: NonNullable<Site['access']>): DimensionGround['marks'] => [
  ...access.truckSpots.map(({ at }) => ({ at, kind: 'truck' as const })),
  ...access.pumpSpots.map(({ at }) => ({ at, kind: 'pump' as const })),
  ...access.washouts.map(({ at }) => ({ at, kind: 'washout' as const })),
])

const stepsOf = onceFrozen((source: Slab, outline: CurveRing): DimensionGround['steps'] =>
  source.steps.flatMap(flight => {
    const ring = stepsRing(outline, flight)
    return ring.length > 0 ? [closedOutline(ring)] : []
  }),
)

/** True where a dimension finds the same about it but for other slabs. */
export const isSameGround = (a: DimensionGround, b: DimensionGround): boolean =>
  a.flags === b.flags &&
  a.crowns === b.crowns &&
  a.walls === b.walls &&
  a.marks === b.marks &&
  a.steps.length === b.steps.length &&
  a.steps.every((steps, i) => steps === b.steps[i])

/** `flags`: the marked points that are shown. */
export const dimensionGround = (
  { casters, slabs: sources, access }: Pick<Site, 'casters' | 'slabs' | 'access'>,
  slabs: readonly ResolvedSlab[],
  flags: Site['points'],
): DimensionGround => ({
  flags: flags.length === 0 ? noFlags : flagsOf(flags),
  crowns: crownsOf(casters),
  walls: wallsOf(casters),
  marks: access ? marksOf(access) : noMarks,
  slabs: slabs.map(({ outline }) => outline),
  steps: slabs.flatMap(({ id, outline }) => {
    const source = sources.find(each => each.id === id)
    return source ? stepsOf(source, outline) : []
  }),
})
