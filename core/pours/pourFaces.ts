/** The pours a slab has under its accepted joints: faces cut by the joints, each given to the pour whose seed it holds. */
import type { AcceptedPours, End, Joint } from '../../shared/document/pours'
import type { Pt } from '../../shared/document/primitives'
import type { Finding } from '../../shared/problem'
import type { CurveRegion } from '../geometry/curve'
import { asBuiltM2 } from './asBuiltFaces'
import { regionContains } from './region/cut'
import { type CutRegion, type CutRing, toCurveRegion, toCutRegion } from './region/cutRegion'
import { insidePoint } from './region/insidePoint'
import { jointSegments, type Line, nearM } from './region/jointSegments'
import { type Segment, traceFaces } from './region/traceFaces'

export interface PourFace {
  /** Null where no seed lies in the face. */
  readonly pourId: string | null
  readonly region: CurveRegion
  readonly areaM2: number
}

export interface FaceJoint {
  readonly id: string
  readonly from: Pt
  readonly to: Pt
  readonly lengthM: number
  readonly pourIds: readonly string[]
}

export interface PourFaces {
  readonly faces: readonly PourFace[]
  /** A joint that an opening interrupts has one row for each part. */
  readonly joints: readonly FaceJoint[]
  readonly findings: readonly Finding[]
}

/** The point at share t of the edge's length, over all its parts in ring order; null when the edge is gone. */
function pointOnEdge(ring: CutRing, edgeId: string, t: number): Pt | null {
  const n = ring.sides.length
  const first = ring.sides.findIndex((s, i) => s.edgeId === edgeId && ring.sides[(i + n - 1) % n]!.edgeId !== edgeId)
  const start = first >= 0 ? first : ring.sides.findIndex(s => s.edgeId === edgeId)
  if (start < 0) return null
  const parts: number[] = []
  for (let k = 0; k < n; k++) if (ring.sides[(start + k) % n]!.edgeId === edgeId) parts.push((start + k) % n)
  const lengthOf = (i: number) => ring.length[i + 1]! - ring.length[i]!
  let left = t * parts.reduce((sum, i) => sum + lengthOf(i), 0)
  for (const i of parts) {
    const length = lengthOf(i)
    if (left > length && i !== parts[parts.length - 1]) {
      left -= length
      continue
    }
    const s = ring.sides[i]!
    const e = ring.sides[(i + 1) % n]!
    const f = Math.min(1, left / length)
    if (s.sweep === 0) return [s.x + f * (e.x - s.x), s.y + f * (e.y - s.y)]
    const angle = Math.atan2(s.y - s.cy, s.x - s.cx) + f * s.sweep
    return [s.cx + s.r * Math.cos(angle), s.cy + s.r * Math.sin(angle)]
  }
  return null
}

class JointLines {
  readonly findings: Finding[] = []
  private readonly lines = new Map<string, Line>()

  constructor(
    private readonly region: CutRegion,
    private readonly accepted: AcceptedPours,
    private readonly vertexAt: (vertexId: string) => Pt | undefined,
  ) {}

  lineOf(joint: Joint): Line {
    const known = this.lines.get(joint.id)
    if (known) return known
    const [a, b] = joint.ends
    // What a joint anchored to itself through others would find: its last line.
    this.lines.set(joint.id, { a: a.last, b: b.last })
    const resolved: Line = joint.locked ? { a: a.last, b: b.last } : { a: this.at(joint, a), b: this.at(joint, b) }
    this.lines.set(joint.id, resolved)
    return resolved
  }

  private at(joint: Joint, { anchor, last }: End): Pt {
    if (anchor.on === 'free') return last
    const found =
      anchor.on === 'edge'
        ? this.onEdge(anchor.edgeId, anchor.t)
        : anchor.on === 'vertex'
          ? this.onVertex(anchor.vertexId, last)
          : this.onJoint(anchor.jointId, anchor.t)
    if (found) return found
    this.findings.push({
      code: 'anchorLost',
      severity: 'check',
      values: {
        anchor: anchor.on === 'edge' ? anchor.edgeId : anchor.on === 'vertex' ? anchor.vertexId : anchor.jointId,
      },
      at: { entityId: joint.id, point: last },
    })
    return last
  }

  private onEdge(edgeId: string, t: number): Pt | null {
    for (const ring of this.region.rings) {
      const point = pointOnEdge(ring, edgeId, t)
      if (point) return point
    }
    return null
  }

  private onVertex(vertexId: string, last: Pt): Pt | null {
    const rounding = this.onEdge(`${vertexId}~`, 0.5)
    if (rounding) return rounding
    const moved = this.vertexAt(vertexId)
    if (moved) return moved
    const stays = this.region.rings.some(ring => ring.sides.some(s => Math.hypot(s.x - last[0], s.y - last[1]) < nearM))
    return stays ? last : null
  }

  private onJoint(jointId: string, t: number): Pt | null {
    const other = this.accepted.joints.find(j => j.id === jointId)
    if (!other) return null
    const { a, b } = this.lineOf(other)
    return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]
  }
}

/**
 * Cuts the region by all accepted joints. Unlocked joints follow their anchors, locked ones keep their line; nothing
 * accepted is dropped in silence: each joint, seed and face that no longer fits has a finding.
 */
export function pourFaces(
  region: CurveRegion,
  accepted: AcceptedPours,
  vertexAt: (vertexId: string) => Pt | undefined = () => undefined,
): PourFaces {
  const slab = toCutRegion(region)
  const resolver = new JointLines(slab, accepted, vertexAt)
  const lines = accepted.joints.map(joint => resolver.lineOf(joint))
  const findings: Finding[] = resolver.findings
  const segments: Segment[] = []
  accepted.joints.forEach((joint, i) => {
    const own = jointSegments(
      slab,
      lines[i]!,
      lines.filter((_, j) => j !== i),
      i,
    )
    if (own.length === 0)
      findings.push({
        code: 'jointOutside',
        severity: 'check',
        values: { jointId: joint.id },
        at: { entityId: joint.id, point: lines[i]!.a },
      })
    segments.push(...own)
  })
  const traced = traceFaces(slab, segments)
  for (const i of traced.openJoints)
    findings.push({
      code: 'jointOpen',
      severity: 'check',
      values: { jointId: accepted.joints[i]!.id },
      at: { entityId: accepted.joints[i]!.id, point: lines[i]!.b },
    })
  const lost = new Set(accepted.pours.map(p => p.id))
  const faces = traced.faces.map((face): { readonly cut: CutRegion; readonly row: PourFace } => {
    const here = accepted.pours.filter(p => regionContains(face, p.seed[0], p.seed[1]))
    for (const p of here) lost.delete(p.id)
    const [first, ...rest] = here
    if (!first)
      findings.push({
        code: 'unplannedPart',
        severity: 'check',
        values: { areaM2: face.areaM2 },
        at: { entityId: accepted.slabId, point: insidePoint(face) },
      })
    if (first && rest.length > 0)
      findings.push({
        code: 'poursMerged',
        severity: 'check',
        values: {
          pours: here.map(p => p.number).join(', '),
          others: rest.map(p => p.id).join(', '),
          areaM2: face.areaM2,
        },
        at: { entityId: first.id, point: first.seed },
      })
    const built = first?.poured?.areaM2
    if (first && built !== undefined && Math.abs(face.areaM2 - built) > asBuiltM2)
      findings.push({
        code: 'differsFromAsBuilt',
        severity: 'check',
        values: { number: first.number, byM2: Math.abs(face.areaM2 - built), areaM2: face.areaM2, builtM2: built },
        at: { entityId: first.id, point: first.seed },
      })
    return {
      cut: face,
      row: {
        pourId: first?.id ?? null,
        region: toCurveRegion(face, joint => accepted.joints[joint]!.id),
        areaM2: face.areaM2,
      },
    }
  })
  for (const pour of accepted.pours)
    if (lost.has(pour.id))
      findings.push({
        code: 'pourLost',
        severity: 'check',
        values: { number: pour.number },
        at: { entityId: pour.id, point: pour.seed },
      })
  const joints = segments.map(
    ({ a, b, joint }): FaceJoint => ({
      id: accepted.joints[joint]!.id,
      from: [a.x, a.y],
      to: [b.x, b.y],
      lengthM: Math.hypot(b.x - a.x, b.y - a.y),
      pourIds: faces.flatMap(({ cut, row }) =>
        row.pourId !== null && cut.rings.some(r => r.sides.some(s => s.joint === joint)) ? [row.pourId] : [],
      ),
    }),
  )
  return { faces: faces.map(f => f.row), joints, findings }
}
