/** What an edit of joints stands on: the regions of one part, its edges, and where its joints run. */
import type { AcceptedPours, Anchor, End, Joint } from '../../../shared/document/pours'
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Slab } from '../../../shared/document/slab'
import { groundRings, pourGround } from '../../document/commands/pourGround'
import { Ends } from '../../document/commands/settlePours'
import { regionContains } from '../../geometry/contains'
import type { CurveRegion, CurveRing } from '../../geometry/curve'
import { type EdgeSpan, edgeSpans, nearestSpan } from '../../geometry/edgeSpans'
import { intersectEdges } from '../../geometry/intersectEdges'

/** A point this close to an edge, corner or joint lies on it (m). */
export const onM = 1e-3
/** Lines are drawn this far beyond the slab to meet everything on it (m). */
const farM = 1e5

export interface JointLine {
  readonly id: Id
  readonly from: Pt
  readonly to: Pt
}

export interface JointGround {
  readonly slab: Slab
  readonly regions: readonly CurveRegion[]
  readonly rings: readonly CurveRing[]
  readonly spans: ReadonlyMap<string, EdgeSpan>
  readonly joints: readonly Joint[]
  readonly lines: readonly JointLine[]
}

export function jointGround(slab: Slab, accepted: AcceptedPours): JointGround {
  const regions = pourGround(slab, accepted.part)
  const rings = groundRings(regions)
  const spans = edgeSpans(rings)
  const ends = new Ends(slab, spans, accepted.joints)
  const lines = accepted.joints.map(({ id, locked, ends: [a, b] }): JointLine => {
    if (locked) return { id, from: a.last, to: b.last }
    return { id, from: ends.at(a), to: ends.at(b) }
  })
  return { slab, regions, rings, spans, joints: accepted.joints, lines }
}

const distance = (a: Pt, b: Pt): number => Math.hypot(a[0] - b[0], a[1] - b[1])

/** Share of a line nearest to a point, and how far off the point lies. */
export function nearestOnLine({ from, to }: JointLine, p: Pt): { readonly t: number; readonly distanceM: number } {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const l2 = dx * dx + dy * dy
  const t = l2 === 0 ? 0 : Math.max(0, Math.min(1, ((p[0] - from[0]) * dx + (p[1] - from[1]) * dy) / l2))
  return { t, distanceM: distance(p, [from[0] + t * dx, from[1] + t * dy]) }
}

/** True when a joint ends on `other`, itself or through the joints it ends on. */
function hangsOn(joints: readonly Joint[], jointId: Id, other: Id, depth = 0): boolean {
  if (jointId === other) return true
  const joint = joints.find(({ id }) => id === jointId)
  if (!joint || depth > joints.length) return false
  return joint.ends.some(({ anchor }) => anchor.on === 'joint' && hangsOn(joints, anchor.jointId, other, depth + 1))
}

/** The end of a joint at a point: on the corner, joint or edge it lies on, else free. */
export function anchorAt(ground: JointGround, p: Pt, ownId: Id | null): End {
  const { slab, spans, lines, joints } = ground
  const paths = [slab.outline, ...slab.openings.map(({ path }) => path)]
  const corner = paths
    .flatMap(({ vertices }) => vertices)
    .find(vertex => vertex.roundM === undefined && distance(vertex.at, p) < onM)
  if (corner) return { anchor: { on: 'vertex', vertexId: corner.id }, last: p }
  const known = new Set([
    ...paths.flatMap(({ edges }) => edges.map(({ id }) => id)),
    ...paths.flatMap(({ vertices }) => vertices.map(({ id }) => `${id}~`)),
  ])
  const near = nearestSpan(
    [...spans].filter(([edgeId]) => known.has(edgeId)),
    p,
    onM,
  )
  if (near) return { anchor: { on: 'edge', edgeId: near.edgeId, t: near.t }, last: p }
  let best: { readonly anchor: Anchor; readonly distanceM: number } | null = null
  for (const line of lines) {
    if (ownId !== null && hangsOn(joints, line.id, ownId)) continue
    const { t, distanceM } = nearestOnLine(line, p)
    if (distanceM < onM && (!best || distanceM < best.distanceM))
      best = { anchor: { on: 'joint', jointId: line.id, t }, distanceM }
  }
  return { anchor: best?.anchor ?? { on: 'free' }, last: p }
}

/** Where a line of two points is met, as distances along it from the first. */
export class Sight {
  readonly lengthM: number
  private readonly ux: number
  private readonly uy: number

  constructor(
    private readonly from: Pt,
    to: Pt,
  ) {
    this.lengthM = distance(from, to)
    this.ux = (to[0] - from[0]) / this.lengthM
    this.uy = (to[1] - from[1]) / this.lengthM
  }

  at(t: number): Pt {
    return [this.from[0] + t * this.ux, this.from[1] + t * this.uy]
  }

  private meet(other: CurveRing[number]): number[] {
    const line = { edgeId: '', from: this.at(-farM), to: this.at(farM) }
    return intersectEdges(line, other).map(([x, y]) => (x - this.from[0]) * this.ux + (y - this.from[1]) * this.uy)
  }

  meetRings(rings: readonly CurveRing[]): number[] {
    return rings.flatMap(ring => ring.flatMap(edge => this.meet(edge)))
  }

  meetLine({ from, to }: JointLine): number[] {
    return this.meet({ edgeId: '', from, to })
  }
}

/**
 * Both ends of a joint drawn from p to q: an end inside a pour goes on to the next edge or joint, an end off the slab
 * comes back to its edge. Null where the line misses the slab.
 */
export function settleLine(ground: JointGround, p: Pt, q: Pt, ownId: Id | null): readonly [Pt, Pt] | null {
  const sight = new Sight(p, q)
  if (!(sight.lengthM > onM)) return null
  const edges = sight.meetRings(ground.rings)
  const stops = ground.lines
    .filter(({ id }) => ownId === null || !hangsOn(ground.joints, id, ownId))
    .flatMap(line => sight.meetLine(line))
  const isInside = (t: number): boolean => ground.regions.some(region => regionContains(region, sight.at(t)))
  const settle = (t: number, outward: 1 | -1): number | null => {
    const ahead = (list: readonly number[]): number | null =>
      list.reduce<number | null>((best, s) => {
        if ((s - t) * outward <= onM) return best
        return best === null || (s - best) * outward < 0 ? s : best
      }, null)
    const on = [...edges, ...stops].find(s => Math.abs(s - t) <= onM)
    if (on !== undefined) return on
    if (isInside(t)) return ahead([...edges, ...stops])
    const other = outward > 0 ? 0 : sight.lengthM
    const back = edges.filter(s => (t - s) * outward > 0 && (s - other) * outward > 0)
    return back.length === 0 ? null : outward > 0 ? Math.max(...back) : Math.min(...back)
  }
  const [t0, t1] = [settle(0, -1), settle(sight.lengthM, 1)]
  if (t0 === null || t1 === null || t1 - t0 <= onM) return null
  return [sight.at(t0), sight.at(t1)]
}
