/** Dimensions of a slab's outline: straight edges to the corner of the forms, arcs by radius. */
import type { Pt } from '../../shared/document/primitives'
import type { CurveEdge, CurveRing } from '../geometry/curve'
import type { Measures } from '../units/measures'

export interface LineDimension {
  readonly kind: 'line'
  readonly edgeId: string
  readonly from: Pt
  readonly to: Pt
  readonly lengthM: number
}

export interface ArcDimension {
  readonly kind: 'arc'
  /** In the order of travel; one circle drawn as several edges is one dimension. */
  readonly edgeIds: readonly string[]
  readonly center: Pt
  readonly radiusM: number
  /** Middle of the arc, and the unit direction from it out of the slab. */
  readonly middle: Pt
  readonly outward: Pt
  readonly lengthM: number
  /** Where the arc starts as it is seen from its center, and how far it turns, + = counter-clockwise. */
  readonly startRad: number
  readonly sweepRad: number
  readonly wholeCircle: boolean
}

export type Dimension = LineDimension | ArcDimension

/** What stands at a circle or an arc, on the plan and on paper: a whole circle by its width, an arc by its radius. */
export const arcWords = (measures: Measures, { radiusM, wholeCircle }: ArcDimension): string =>
  wholeCircle ? `${measures.length(2 * radiusM)} across` : `R ${measures.length(radiusM)}`

/** The arc a corner is rounded with, no edge of its own. */
export const isRounding = ({ edgeId }: { readonly edgeId: string }): boolean => edgeId.endsWith('~')

const direction = (edge: CurveEdge): Pt => {
  const [dx, dy] = [edge.to[0] - edge.from[0], edge.to[1] - edge.from[1]]
  const length = Math.hypot(dx, dy)
  return [dx / length, dy / length]
}

/** Where the lines of two straight edges meet, or undefined when they run almost alongside. */
function cornerOf(before: CurveEdge, after: CurveEdge): Pt | undefined {
  const [ux, uy] = direction(before)
  const [vx, vy] = direction(after)
  const cross = ux * vy - uy * vx
  if (Math.abs(cross) < 0.02) return undefined
  const t = ((after.from[0] - before.to[0]) * vy - (after.from[1] - before.to[1]) * vx) / cross
  return [before.to[0] + ux * t, before.to[1] + uy * t]
}

/** The straight edge beyond a rounding, where there is one. */
function beyondRounding(ring: CurveRing, index: number, step: 1 | -1): CurveEdge | undefined {
  const at = (i: number): CurveEdge => ring[(i + 2 * ring.length) % ring.length]!
  const rounding = at(index + step)
  const beyond = at(index + 2 * step)
  return isRounding(rounding) && rounding.arc !== undefined && beyond.arc === undefined ? beyond : undefined
}

const sameCircle = (p: CurveEdge, q: CurveEdge): boolean =>
  p.arc !== undefined &&
  q.arc !== undefined &&
  Math.abs(p.arc.radiusM - q.arc.radiusM) < 1e-6 &&
  Math.hypot(p.arc.center[0] - q.arc.center[0], p.arc.center[1] - q.arc.center[1]) < 1e-6 &&
  p.arc.sweepRad * q.arc.sweepRad > 0

function arcDimension(edges: readonly CurveEdge[]): ArcDimension {
  const first = edges[0]!
  const { center, radiusM } = first.arc!
  const sweep = edges.reduce((sum, e) => sum + e.arc!.sweepRad, 0)
  const startRad = Math.atan2(first.from[1] - center[1], first.from[0] - center[0])
  const angle = startRad + sweep / 2
  const ray: Pt = [Math.cos(angle), Math.sin(angle)]
  // The slab lies on the left: outside a counter-clockwise arc, inside a clockwise one.
  const out = sweep > 0 ? 1 : -1
  return {
    kind: 'arc',
    edgeIds: edges.map(({ edgeId }) => edgeId),
    center,
    radiusM,
    middle: [center[0] + radiusM * ray[0], center[1] + radiusM * ray[1]],
    outward: [out * ray[0], out * ray[1]],
    lengthM: radiusM * Math.abs(sweep),
    startRad,
    sweepRad: sweep,
    wholeCircle: Math.abs(sweep) > 2 * Math.PI - 1e-6,
  }
}

/** Consecutive arcs of one circle are one dimension; a rounded corner is dimensioned to the corner of the forms. */
export function outlineDimensions(ring: CurveRing): Dimension[] {
  const dimensions: Dimension[] = []
  // Start where a new circle or a straight edge starts, so that no run of arcs is cut in two.
  const start = Math.max(
    0,
    ring.findIndex((edge, i) => !sameCircle(ring.at(i - 1)!, edge)),
  )
  const edges = [...ring.slice(start), ...ring.slice(0, start)]
  for (let i = 0; i < edges.length; i++) {
    const edge = edges[i]!
    if (edge.arc !== undefined) {
      const run = [edge]
      while (i + 1 < edges.length && sameCircle(edge, edges[i + 1]!)) run.push(edges[++i]!)
      dimensions.push(arcDimension(run))
      continue
    }
    const before = beyondRounding(edges, i, -1)
    const after = beyondRounding(edges, i, 1)
    const from = (before && cornerOf(before, edge)) ?? edge.from
    const to = (after && cornerOf(edge, after)) ?? edge.to
    const lengthM = Math.hypot(to[0] - from[0], to[1] - from[1])
    dimensions.push({ kind: 'line', edgeId: edge.edgeId, from, to, lengthM })
  }
  return dimensions
}
