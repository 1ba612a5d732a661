/** Faces of a region cut by any set of segments: planar face tracing on exact arcs. */
import type { ChordEnd } from './chords'
import { partOf, ringContains } from './cut'
import { type CutRegion, type CutRing, makeRegion, makeRing, makeSide, ringArea, type Side } from './cutRegion'

/** A point on the boundary (with its place there) or inside. */
export interface SegmentEnd {
  readonly x: number
  readonly y: number
  readonly on: ChordEnd | null
}

export interface Segment {
  readonly a: SegmentEnd
  readonly b: SegmentEnd
  /** Number of the joint it belongs to. */
  readonly joint: number
}

export interface TracedFaces {
  readonly faces: readonly CutRegion[]
  /** Joints with a piece that ends inside and so divides nothing. */
  readonly openJoints: readonly number[]
}

/** Points closer than this are one (m). */
const sameM = 1e-6
/** A segment's end this close to another segment lies on it (m). */
const onSegmentM = 1e-4
/** Loops smaller than this are spurs (m²). */
const leastLoopM2 = 1e-9

interface Node {
  readonly x: number
  readonly y: number
}

interface HalfEdge {
  readonly from: number
  readonly to: number
  /** The side as it enters a ring; its start is the node `from`. */
  readonly side: Side
  /** Tangent angles when leaving `from` and when arriving at `to`. */
  readonly leaves: number
  readonly arrives: number
}

interface Piece {
  readonly from: number
  readonly to: number
  readonly joint: number
}

const line = (x: number, y: number, joint: number): Side => makeSide('', x, y, 0, 0, 0, 0, joint, 0)

function tangents(side: Side, ex: number, ey: number): readonly [number, number] {
  if (side.sweep === 0) {
    const angle = Math.atan2(ey - side.y, ex - side.x)
    return [angle, angle]
  }
  const quarter = side.sweep > 0 ? Math.PI / 2 : -Math.PI / 2
  return [Math.atan2(side.y - side.cy, side.x - side.cx) + quarter, Math.atan2(ey - side.cy, ex - side.cx) + quarter]
}

class Arrangement {
  readonly nodes: Node[] = []
  readonly edges: HalfEdge[] = []
  private readonly boundaryNodes: number
  private readonly vertexNode: number[][] = []
  private readonly inserted: { readonly end: ChordEnd; readonly node: number }[][][] = []

  private readonly onSides = new Set<number>()

  constructor(private readonly region: CutRegion) {
    for (const ring of region.rings) {
      this.vertexNode.push(ring.sides.map(s => this.nodes.push({ x: s.x, y: s.y }) - 1))
      this.inserted.push(ring.sides.map(() => []))
    }
    this.boundaryNodes = this.nodes.length
  }

  nodeAt(end: SegmentEnd): number {
    const { on } = end
    if (on?.vertex) return this.vertexNode[on.ring]![on.side]!
    for (let i = this.boundaryNodes; i < this.nodes.length; i++) {
      const n = this.nodes[i]!
      if (Math.abs(n.x - end.x) < sameM && Math.abs(n.y - end.y) < sameM) return i
    }
    const node = this.nodes.push({ x: end.x, y: end.y }) - 1
    if (on) {
      this.inserted[on.ring]![on.side]!.push({ end: on, node })
      this.onSides.add(node)
    }
    return node
  }

  private addEdge(from: number, to: number, side: Side): void {
    const end = this.nodes[to]!
    const [leaves, arrives] = tangents(side, end.x, end.y)
    this.edges.push({ from, to, side, leaves, arrives })
  }

  addBoundary(): void {
    this.region.rings.forEach((ring, r) => {
      ring.sides.forEach((side, i) => {
        const stops = this.inserted[r]![i]!.sort((p, q) => p.end.along - q.end.along)
        let from = this.vertexNode[r]![i]!
        let start: ChordEnd | null = null
        for (const stop of stops) {
          this.addEdge(from, stop.node, partOf(side, start, stop.end))
          from = stop.node
          start = stop.end
        }
        this.addEdge(from, this.vertexNode[r]![(i + 1) % ring.sides.length]!, partOf(side, start, null))
      })
    })
  }

  addPieces(pieces: readonly Piece[]): void {
    for (const { from, to, joint } of pieces) {
      this.addEdge(from, to, line(this.nodes[from]!.x, this.nodes[from]!.y, joint))
      this.addEdge(to, from, line(this.nodes[to]!.x, this.nodes[to]!.y, joint))
    }
  }

  isOnBoundary(node: number): boolean {
    return node < this.boundaryNodes || this.onSides.has(node)
  }

  /** Closed loops with the face on their left: at each node the first edge clockwise from where we came. */
  loops(): CutRing[] {
    const leaving: number[][] = this.nodes.map(() => [])
    this.edges.forEach((e, i) => {
      leaving[e.from]!.push(i)
    })
    const next = this.edges.map(e => {
      let best = -1
      let least = Number.POSITIVE_INFINITY
      for (const i of leaving[e.to]!) {
        let turn = e.arrives + Math.PI - this.edges[i]!.leaves
        turn -= 2 * Math.PI * Math.floor(turn / (2 * Math.PI))
        if (turn < 1e-9) turn += 2 * Math.PI
        if (turn < least) {
          least = turn
          best = i
        }
      }
      return best
    })
    const used = new Uint8Array(this.edges.length)
    const loops: CutRing[] = []
    for (let i = 0; i < this.edges.length; i++) {
      const sides: Side[] = []
      for (let at = i; at >= 0 && !used[at]; at = next[at]!) {
        used[at] = 1
        sides.push(this.edges[at]!.side)
      }
      if (sides.length > 1) loops.push(makeRing(sides, this.region.ox, this.region.oy))
    }
    return loops
  }
}

/** Cuts every segment at the ends of others that lie on it and where two cross. */
function piecesOf(segments: readonly Segment[], arrangement: Arrangement): Piece[] {
  const stops: { readonly t: number; readonly node: number }[][] = segments.map(() => [])
  const length = (s: Segment) => Math.hypot(s.b.x - s.a.x, s.b.y - s.a.y)
  const put = (i: number, end: SegmentEnd): void => {
    const { a, b } = segments[i]!
    const t = ((end.x - a.x) * (b.x - a.x) + (end.y - a.y) * (b.y - a.y)) / length(segments[i]!)
    stops[i]!.push({ t, node: arrangement.nodeAt(end) })
  }
  segments.forEach((s, i) => {
    put(i, s.a)
    put(i, s.b)
  })
  for (let i = 0; i < segments.length; i++) {
    const s = segments[i]!
    const ls = length(s)
    const ux = (s.b.x - s.a.x) / ls
    const uy = (s.b.y - s.a.y) / ls
    for (let j = 0; j < segments.length; j++) {
      if (i === j) continue
      const o = segments[j]!
      let touches = false
      for (const end of [o.a, o.b]) {
        const t = (end.x - s.a.x) * ux + (end.y - s.a.y) * uy
        const d = Math.abs(-(end.x - s.a.x) * uy + (end.y - s.a.y) * ux)
        if (d > onSegmentM || t < -onSegmentM || t > ls + onSegmentM) continue
        touches = true
        if (t > onSegmentM && t < ls - onSegmentM) put(i, end)
      }
      if (touches || j < i) continue
      const da = -(o.a.x - s.a.x) * uy + (o.a.y - s.a.y) * ux
      const db = -(o.b.x - s.a.x) * uy + (o.b.y - s.a.y) * ux
      if (da * db >= 0) continue
      const f = da / (da - db)
      const x = o.a.x + f * (o.b.x - o.a.x)
      const y = o.a.y + f * (o.b.y - o.a.y)
      const t = (x - s.a.x) * ux + (y - s.a.y) * uy
      if (t <= onSegmentM || t >= ls - onSegmentM) continue
      put(i, { x, y, on: null })
      put(j, { x, y, on: null })
    }
  }
  return stops.flatMap((list, i) => {
    list.sort((p, q) => p.t - q.t)
    return list.flatMap((stop, k) => {
      const before = list[k - 1]
      return before && before.node !== stop.node
        ? [{ from: before.node, to: stop.node, joint: segments[i]!.joint }]
        : []
    })
  })
}

/** Takes away, again and again, pieces with an end that nothing else meets. */
function withoutSpurs(pieces: readonly Piece[], arrangement: Arrangement): readonly [Piece[], number[]] {
  let kept = [...pieces]
  const open = new Set<number>()
  for (;;) {
    const degree = new Map<number, number>()
    for (const { from, to } of kept) {
      degree.set(from, (degree.get(from) ?? 0) + 1)
      degree.set(to, (degree.get(to) ?? 0) + 1)
    }
    const isLoose = (node: number) => degree.get(node) === 1 && !arrangement.isOnBoundary(node)
    const spurs = new Set(kept.filter(p => isLoose(p.from) || isLoose(p.to)))
    if (spurs.size === 0) return [kept, [...open]]
    for (const { joint } of spurs) open.add(joint)
    kept = kept.filter(p => !spurs.has(p))
  }
}

export function traceFaces(region: CutRegion, segments: readonly Segment[]): TracedFaces {
  const arrangement = new Arrangement(region)
  const [pieces, openJoints] = withoutSpurs(piecesOf(segments, arrangement), arrangement)
  arrangement.addBoundary()
  arrangement.addPieces(pieces)
  const outers: CutRing[] = []
  const holes: CutRing[] = []
  for (const loop of arrangement.loops()) {
    const area = ringArea(loop)
    if (area > leastLoopM2) outers.push(loop)
    else if (area < -leastLoopM2) holes.push(loop)
  }
  const rings = outers.map(outer => [outer])
  for (const hole of holes) {
    let best: CutRing[] | null = null
    for (const candidate of rings) {
      const p = besideHole(hole)
      if (!ringContains(candidate[0]!, p[0], p[1])) continue
      if (!best || ringArea(candidate[0]!) < ringArea(best[0]!)) best = candidate
    }
    best?.push(hole)
  }
  return { faces: rings.map(r => makeRegion(r, region.ox, region.oy)), openJoints }
}

/** A point just left of the hole's first side, in the material. */
function besideHole(hole: CutRing): readonly [number, number] {
  const s = hole.sides[0]!
  const e = hole.sides[1 % hole.sides.length]!
  const angle = tangents(s, e.x, e.y)[0]
  const reach = 1e-3 * Math.min(1, Math.hypot(e.x - s.x, e.y - s.y))
  const mx = s.x + reach * Math.cos(angle)
  const my = s.y + reach * Math.sin(angle)
  return [mx - 1e-3 * reach * Math.sin(angle), my + 1e-3 * reach * Math.cos(angle)]
}
