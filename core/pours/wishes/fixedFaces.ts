/** The faces into which required joints cut a region, before anything is searched. */
import type { Pt } from '../../../shared/document/primitives'
import type { Finding } from '../../../shared/problem'
import { regionContains } from '../region/cut'
import { type CutRegion, type CutRing, makeRegion, makeRing, makeSide, type Side } from '../region/cutRegion'
import { jointSegments, type Line, nearM } from '../region/jointSegments'
import { type Segment, type SegmentEnd, traceFaces } from '../region/traceFaces'
import type { JointLine } from '../search/cutTree'
import type { RequiredLine } from './jointWishes'

/** Fixed joints are numbered from here on in the faces, out of the way of those a search numbers from 0. */
export const firstFixed = 1_000_000

export interface FixedJoint extends JointLine {
  readonly wishId: string
}

export interface FixedFaces {
  readonly faces: readonly CutRegion[]
  /** Joint i has the number firstFixed + i in the faces. */
  readonly joints: readonly FixedJoint[]
  readonly findings: readonly Finding[]
}

/** A joint has material this far to either side (m). */
const besideM = 2e-4
/** A required line carried on by less than this is drawn well enough (m). */
const carriedM = 0.01

const spanOf = ({ a, b }: Segment) => {
  const lengthM = Math.hypot(b.x - a.x, b.y - a.y)
  return { lengthM, ux: (b.x - a.x) / lengthM, uy: (b.y - a.y) / lengthM }
}

const middleOf = ({ a, b }: Line): Pt => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]

/** False for a piece that runs along the boundary and cuts nothing. */
function isInside(region: CutRegion, segment: Segment): boolean {
  const { ux, uy } = spanOf(segment)
  const x = (segment.a.x + segment.b.x) / 2
  const y = (segment.a.y + segment.b.y) / 2
  return [besideM, -besideM].every(by => regionContains(region, x - uy * by, y + ux * by))
}

/** What is left of a piece where an earlier one lies on the same line. */
function withoutShared(piece: Segment, earlier: Segment): Segment[] {
  const { lengthM, ux, uy } = spanOf(piece)
  const place = ({ x, y }: SegmentEnd) => {
    const [dx, dy] = [x - piece.a.x, y - piece.a.y]
    return { t: dx * ux + dy * uy, off: Math.abs(-dx * uy + dy * ux) }
  }
  const [p, q] = [place(earlier.a), place(earlier.b)]
  if (p.off > nearM || q.off > nearM) return [piece]
  const [from, to] = p.t < q.t ? [p.t, q.t] : [q.t, p.t]
  const [first, last] = p.t < q.t ? [earlier.a, earlier.b] : [earlier.b, earlier.a]
  if (to <= nearM || from >= lengthM - nearM) return [piece]
  return [...(from > nearM ? [{ ...piece, b: first }] : []), ...(to < lengthM - nearM ? [{ ...piece, a: last }] : [])]
}

/** Where two pieces cross inside both; null where they only meet or miss. */
function crossing(s: Segment, o: Segment): SegmentEnd | null {
  const { lengthM, ux, uy } = spanOf(s)
  const off = ({ x, y }: SegmentEnd) => -(x - s.a.x) * uy + (y - s.a.y) * ux
  const [da, db] = [off(o.a), off(o.b)]
  if (da * db >= 0 || Math.abs(da) <= nearM || Math.abs(db) <= nearM) return null
  const f = da / (da - db)
  const x = o.a.x + f * (o.b.x - o.a.x)
  const y = o.a.y + f * (o.b.y - o.a.y)
  const t = (x - s.a.x) * ux + (y - s.a.y) * uy
  return t > nearM && t < lengthM - nearM ? { x, y, on: null } : null
}

interface Placed {
  readonly line: RequiredLine
  readonly segment: Segment
}

/** The pieces of all lines, later ones broken where they cross earlier ones. */
function placeLines(region: CutRegion, required: readonly RequiredLine[], findings: Finding[]): Placed[] {
  const lines = required.map(({ from, to }): Line => ({ a: from, b: to }))
  const placed: Placed[] = []
  const tell = (code: Finding['code'], severity: Finding['severity'], entityId: string, point: Pt): void => {
    findings.push({ code, severity, values: {}, at: { entityId, point } })
  }
  const crossed = new Set<string>()
  required.forEach((line, i) => {
    const own = lines[i]!
    const others = lines.filter((_, j) => j !== i)
    const inside = jointSegments(region, own, others, 0).filter(segment => isInside(region, segment))
    if (inside.length === 0) {
      tell('requiredMisses', 'check', line.id, middleOf(own))
      return
    }
    const reachM = Math.hypot(own.b[0] - own.a[0], own.b[1] - own.a[1])
    const carried = inside
      .flatMap(({ a, b }) => [a, b])
      .map(({ x, y }) => {
        const t = ((x - own.a[0]) * (own.b[0] - own.a[0]) + (y - own.a[1]) * (own.b[1] - own.a[1])) / reachM
        return { x, y, byM: Math.max(-t, t - reachM) }
      })
      .find(({ byM }) => byM > carriedM)
    if (carried) tell('requiredCarriedOn', 'note', line.id, [carried.x, carried.y])
    let pieces = inside
    for (const { segment } of placed) pieces = pieces.flatMap(piece => withoutShared(piece, segment))
    for (const { line: other, segment } of [...placed])
      pieces = pieces.flatMap(piece => {
        const at = crossing(segment, piece)
        if (!at) return [piece]
        const pair = `${other.id} ${line.id}`
        if (!crossed.has(pair)) {
          crossed.add(pair)
          tell('requiredCross', 'check', line.id, [at.x, at.y])
        }
        return [
          { ...piece, b: at },
          { ...piece, a: at },
        ]
      })
    placed.push(...pieces.map(segment => ({ line, segment })))
  })
  return placed
}

type SlabDegAt = (x: number, y: number) => number

/** The ring with its joints numbered anew, and the slab's angles put back where a joint starts. */
function renumber(ring: CutRing, numbers: ReadonlyMap<number, number>, slabDegAt: SlabDegAt, of: CutRegion): CutRing {
  const sides = ring.sides.map((s): Side => {
    const joint = numbers.get(s.joint)
    return s.joint < 0 || joint === undefined
      ? s
      : makeSide(s.edgeId, s.x, s.y, s.cx, s.cy, s.r, s.sweep, joint, slabDegAt(s.x, s.y))
  })
  return makeRing(sides, of.ox, of.oy)
}

/** Each piece as far as it divides: from its first to its last side in the faces. */
function dividingPieces(faces: readonly CutRegion[], placed: readonly Placed[]): Map<number, FixedJoint> {
  const ends = new Map<number, { t: number; x: number; y: number }[]>()
  for (const { rings } of faces)
    for (const { sides } of rings)
      sides.forEach((side, i) => {
        if (side.joint < 0) return
        const { a } = placed[side.joint]!.segment
        const { ux, uy } = spanOf(placed[side.joint]!.segment)
        const list = ends.get(side.joint) ?? []
        ends.set(side.joint, list)
        for (const { x, y } of [side, sides[(i + 1) % sides.length]!])
          list.push({ t: (x - a.x) * ux + (y - a.y) * uy, x, y })
      })
  const pieces = new Map<number, FixedJoint>()
  for (const [piece, list] of [...ends].sort((p, q) => p[0] - q[0])) {
    list.sort((p, q) => p.t - q.t)
    const [from, to] = [list[0]!, list.at(-1)!]
    pieces.set(piece, {
      ...{ wishId: placed[piece]!.line.id, ax: from.x, ay: from.y, bx: to.x, by: to.y },
      lengthM: Math.hypot(to.x - from.x, to.y - from.y),
    })
  }
  return pieces
}

/**
 * Cuts a region along all required lines. An end inside goes on to the next edge or required line; a line that misses
 * is told, as are two that cross: both stay. Without a line the region itself comes back.
 */
export function fixedFaces(region: CutRegion, required: readonly RequiredLine[]): FixedFaces {
  const findings: Finding[] = []
  const placed = placeLines(region, required, findings)
  if (placed.length === 0) return { faces: [region], joints: [], findings }
  const traced = traceFaces(
    region,
    placed.map(({ segment }, joint) => ({ ...segment, joint })),
  )
  for (const { line, segment } of traced.openJoints.map(i => placed[i]!))
    findings.push({
      code: 'requiredOpen',
      severity: 'check',
      values: {},
      at: { entityId: line.id, point: [segment.b.x, segment.b.y] },
    })
  const pieces = dividingPieces(traced.faces, placed)
  const numbers = new Map([...pieces.keys()].map((piece, i) => [piece, firstFixed + i]))
  const corners = region.rings.flatMap(({ sides }) => sides)
  const slabDegAt = (x: number, y: number): number => corners.find(s => s.x === x && s.y === y)?.slabDeg ?? 0
  return {
    faces: traced.faces.map(({ rings }) =>
      makeRegion(
        rings.map(ring => renumber(ring, numbers, slabDegAt, region)),
        region.ox,
        region.oy,
      ),
    ),
    joints: [...pieces.values()],
    findings,
  }
}
