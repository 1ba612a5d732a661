/**
 * Booleans of shapes with exact arcs. The clipping library only finds which edges survive and in what order, on chords at
 * most 0.1 mm from the arcs; afterwards every flat edge is traced to the line or arc it came from and every corner is
 * computed again as the exact meeting point of its two curves. Areas and lengths of the answer are therefore exact.
 */
import type { Pt } from '../../shared/document/primitives'
import { edgeMeets, joinBounds, pointBounds, ringBounds } from './bounds'
import { clipTraced, gridM, type TracedRing } from './clip'
import { distanceToEdge, ringContains } from './contains'
import type { CurveEdge, CurveRegion, CurveRing, Ring } from './curve'
import { angleFrom, onCircle } from './edgeAt'
import { EdgeGrid } from './edgeGrid'
import { edgeLength } from './edgeLength'
import { chordCount } from './flattenRing'
import { intersectSupports, projectOn, type Support, supportOf } from './intersectSupports'
import { curveArea, ringArea } from './ringArea'
import { ringLength } from './ringLength'

/** Chords for clipping lie at most this far from their arc. */
const clipSagittaM = 1e-4
/** A flat point this near a source curve lies on it: the sagitta, the grid and room for crossings at chord ends. */
const onCurveM = 2e-4
/** A straight source edge is followed to a few grid units. */
const onLineM = 8 * gridM
/** A ring thinner than this on average is left over from chords that do not coincide; it is no shape. */
const sliverM = 2e-5
/** A point this near to a curve is on it, rounding aside. */
const exactM = 2e-9
/** Two frames' areas nearer than this, or a billionth of the area, agree. */
const agreeM2 = 1e-9
/** Shorter edges are dropped. */
const shortM = 1e-8

export interface CurveShapes {
  readonly regions: readonly CurveRegion[]
  /** True where an edge could not be traced to its arc and stayed a chord (≤ 0.1 mm from it). */
  readonly chordsKept: boolean
}

/** The least chords a circle gets so that none is farther than the sagitta; a multiple of 4 so that turned copies agree. */
function circleSteps(radiusM: number): number {
  return Math.ceil(chordCount(radiusM, 2 * Math.PI, clipSagittaM) / 4) * 4
}

/** Rings of a slab are clipped many times over; an edge never changes, so its chords are found once. */
const chordsOfArc = new WeakMap<CurveEdge, readonly Pt[]>()

/**
 * Flat points of an edge, its end left out. An arc is cut at whole multiples of its circle's step, counted from +x:
 * two arcs of one circle then share their chords wherever they overlap.
 */
function chordsOf(edge: CurveEdge): readonly Pt[] {
  if (!edge.arc) return [edge.from]
  const known = chordsOfArc.get(edge)
  if (known) return known
  const points: Pt[] = [edge.from]
  chordsOfArc.set(edge, points)
  const { center, radiusM, sweepRad } = edge.arc
  const steps = circleSteps(radiusM)
  const step = (2 * Math.PI) / steps
  const start = angleFrom(center, edge.from)
  const end = start + sweepRad
  const margin = (4 * gridM) / (radiusM * step)
  if (sweepRad > 0)
    for (let k = Math.ceil(start / step + margin); k < end / step - margin; k++)
      points.push(onCircle(edge.arc, k * step))
  else
    for (let k = Math.floor(start / step - margin); k > end / step + margin; k--)
      points.push(onCircle(edge.arc, k * step))
  return points
}

/** A source edge; what is seldom asked for is worked out when it is. */
class Source {
  private knownSupport: Support | undefined

  constructor(readonly edge: CurveEdge) {}

  get support(): Support {
    this.knownSupport ??= supportOf(this.edge)
    return this.knownSupport
  }
}

function distanceToSupport(s: Support, p: Pt): number {
  if (s.line) return Math.abs((p[0] - s.at[0]) * s.along[1] - (p[1] - s.at[1]) * s.along[0])
  return Math.abs(Math.hypot(p[0] - s.center[0], p[1] - s.center[1]) - s.radiusM)
}

function sameSupport(a: Support, b: Support): boolean {
  if (a === b) return true
  if (a.line && b.line)
    return Math.abs(a.along[0] * b.along[1] - a.along[1] * b.along[0]) < 1e-9 && distanceToSupport(a, b.at) < 1e-7
  if (!a.line && !b.line)
    return (
      Math.abs(a.radiusM - b.radiusM) < 1e-7 && Math.hypot(a.center[0] - b.center[0], a.center[1] - b.center[1]) < 1e-7
    )
  return false
}

/** Angle along the arc from its start, radians, signed as the sweep; a point just before the start gets a small opposite sign. */
function alongArc(edge: CurveEdge, p: Pt): number {
  const { center, sweepRad } = edge.arc!
  const turn = 2 * Math.PI
  const way = Math.sign(sweepRad)
  let d = way * (angleFrom(center, p) - angleFrom(center, edge.from))
  d -= Math.floor(d / turn) * turn
  const over = (turn - Math.abs(sweepRad)) / 2
  if (d > Math.abs(sweepRad) + over) d -= turn
  return way * d
}

/**
 * How far the flat meeting point of two supports may lie from their exact one `x`: a sideways error e of the flat edges
 * moves it by e / sine of their angle, and by no more than √(2Re) where an arc parts from its tangent.
 */
function reach(a: Support, b: Support, x: Pt): number {
  const normal = (s: Support): Pt =>
    s.line ? [-s.along[1], s.along[0]] : [(x[0] - s.center[0]) / s.radiusM, (x[1] - s.center[1]) / s.radiusM]
  const [n, m] = [normal(a), normal(b)]
  const sine = Math.abs(n[0] * m[1] - n[1] * m[0])
  if (a.line && b.line) return (3 * onLineM) / sine
  const radiusM = Math.min(a.line ? Infinity : a.radiusM, b.line ? Infinity : b.radiusM)
  return 3 * Math.min(onCurveM / sine, Math.sqrt(2 * radiusM * onCurveM))
}

class Tracer {
  private readonly sources: Source[] = []
  /** By flat point: the source that starts or runs on there, and the one that arrives. */
  private readonly leaving: number[] = []
  private readonly arriving: number[] = []
  /** By flat point: the next around its ring. */
  private readonly following: number[] = []
  /** By source: its first flat point. */
  private readonly firstPoint: number[] = []
  readonly flat: Ring[] = []
  private grid: EdgeGrid | undefined
  chordsKept = false

  constructor(rings: readonly CurveRing[]) {
    for (const ring of rings) {
      const points: Pt[] = []
      const first = this.leaving.length
      for (const edge of ring) {
        const source = this.sources.length
        this.sources.push(new Source(edge))
        this.firstPoint.push(this.leaving.length)
        if (!edge.arc) {
          points.push(edge.from)
          this.leaving.push(source)
          this.arriving.push(source - 1)
          continue
        }
        const chords = chordsOf(edge)
        for (let i = 0; i < chords.length; i++) {
          points.push(chords[i]!)
          this.leaving.push(source)
          this.arriving.push(i === 0 ? source - 1 : source)
        }
      }
      if (ring.length > 0) this.arriving[first] = this.sources.length - 1
      for (let k = first + 1; k < this.leaving.length; k++) this.following.push(k)
      if (ring.length > 0) this.following.push(first)
      this.flat.push(points)
    }
  }

  /** The exact corner at a flat point, if it is one. */
  private exactCorner(point: number): Pt | undefined {
    if (point < 0) return undefined
    const source = this.leaving[point]!
    return this.firstPoint[source] === point ? this.sources[source]!.edge.from : undefined
  }

  /** How far a flat point may lie from a source edge that it belongs to. */
  private follows(source: number, p: Pt): boolean {
    const { edge } = this.sources[source]!
    return distanceToEdge(edge, p) <= (edge.arc ? onCurveM : onLineM)
  }

  /** The source that a flat edge follows; −1 where there is none. */
  private sourceOf(p: Pt, q: Pt, fromP: number, fromQ: number): number {
    // most flat edges come out as they went in
    if (fromP >= 0 && fromQ >= 0) {
      if (this.following[fromP] === fromQ) return this.leaving[fromP]!
      if (this.following[fromQ] === fromP) return this.leaving[fromQ]!
    }
    const mid: Pt = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2]
    for (const [own, other, at] of [
      [fromP, fromQ, q],
      [fromQ, fromP, p],
    ] as const) {
      if (own < 0) continue
      const a = this.leaving[own]!
      const b = this.arriving[own]!
      const known = other >= 0 ? [this.leaving[other]!, this.arriving[other]!] : []
      for (const s of a === b ? [a] : [a, b])
        if (this.follows(s, mid) && (known.includes(s) || this.follows(s, at))) return s
    }
    this.grid ??= new EdgeGrid(this.sources.map(s => s.edge))
    const here = this.grid.near(pointBounds([mid]), onCurveM)
    return here.find(s => this.follows(s, p) && this.follows(s, q) && this.follows(s, mid)) ?? -1
  }

  /**
   * The exact corner between two sources near a flat point; `known`: the source corner that the flat point is, if it is
   * one. That one is not always the corner: where two bands overlap by less than the grid it may lie just past it.
   */
  private cornerOf(a: Source, b: Source, flat: Pt, known: Pt | undefined): Pt {
    const near = 3 * onCurveM
    const isCorner = (p: Pt) =>
      Math.hypot(p[0] - flat[0], p[1] - flat[1]) < near &&
      distanceToSupport(a.support, p) < exactM &&
      distanceToSupport(b.support, p) < exactM
    for (const p of [known, a.edge.from, a.edge.to, b.edge.from, b.edge.to]) if (p && isCorner(p)) return p
    if (sameSupport(a.support, b.support)) return projectOn(a.support, known ?? flat)
    let best: Pt | undefined
    let least = Infinity
    for (const x of intersectSupports(a.support, b.support, near)) {
      const d = Math.hypot(x[0] - flat[0], x[1] - flat[1])
      if (d < least) {
        least = d
        best = x
      }
    }
    return best && least <= reach(a.support, b.support, best) ? best : (known ?? flat)
  }

  /** The exact ring behind a flat ring; empty where nothing but a sliver is left. */
  trace({ ring: flat, from }: TracedRing): CurveRing {
    const n = flat.length
    const on: number[] = []
    for (let i = 0; i < n; i++) {
      const j = (i + 1) % n
      on.push(this.sourceOf(flat[i]!, flat[j]!, from[i]!, from[j]!))
    }
    let first = on.findIndex((s, i) => s < 0 || s !== on[(i + n - 1) % n])
    if (first < 0) first = 0
    const runs: { source: number; start: number }[] = []
    for (let k = 0; k < n; k++) {
      const i = (first + k) % n
      const last = runs[runs.length - 1]
      if (!last || on[i]! < 0 || last.source !== on[i]) runs.push({ source: on[i]!, start: i })
    }
    const corners = runs.map(({ source, start }, k) => {
      const before = runs[(k + runs.length - 1) % runs.length]!.source
      const known = this.exactCorner(from[start]!)
      if (source < 0 || before < 0) return known ?? flat[start]!
      return this.cornerOf(this.sources[before]!, this.sources[source]!, flat[start]!, known)
    })
    const edges: CurveEdge[] = []
    for (let k = 0; k < runs.length; k++) {
      const from = corners[k]!
      const to = corners[(k + 1) % runs.length]!
      const s = runs[k]!.source
      if (s < 0) {
        this.chordsKept = true
        edges.push({ edgeId: '', from, to })
        continue
      }
      const { edge } = this.sources[s]!
      if (!edge.arc) edges.push({ edgeId: edge.edgeId, from, to })
      else {
        const sweepRad = alongArc(edge, to) - alongArc(edge, from)
        edges.push({ edgeId: edge.edgeId, from, to, arc: { ...edge.arc, sweepRad } })
      }
    }
    return tidy(edges)
  }
}

/** Drops edges without length, joins neighbors of one id on one support, and takes back spikes. */
function tidy(edges: readonly CurveEdge[]): CurveRing {
  let ring = edges.filter(e => edgeLength(e) >= shortM)
  for (let changed = true; changed; ) {
    changed = false
    const out: CurveEdge[] = []
    for (const edge of ring) {
      const last = out[out.length - 1]
      const joined = last && joinEdges(last, edge)
      if (!joined) out.push(edge)
      else {
        changed = true
        out.pop()
        if (edgeLength(joined) >= shortM) out.push(joined)
      }
    }
    const head = out[0]
    const tail = out[out.length - 1]
    const joined = out.length > 1 && head && tail && joinEdges(tail, head)
    if (joined) {
      changed = true
      out.shift()
      out.pop()
      if (edgeLength(joined) >= shortM) out.push(joined)
    }
    ring = out
  }
  return ring.map((edge, i) => {
    const before = ring[(i + ring.length - 1) % ring.length]!
    return before.to === edge.from ? edge : { ...edge, from: before.to }
  })
}

/** One edge for two that follow each other on one support, if they share an id or the second runs back over the first. */
function joinEdges(a: CurveEdge, b: CurveEdge): CurveEdge | undefined {
  if (!a.arc !== !b.arc) return undefined
  if (!sameSupport(supportOf(a), supportOf(b))) return undefined
  if (a.arc && b.arc) {
    const back = a.arc.sweepRad * b.arc.sweepRad < 0
    if (!back && a.edgeId !== b.edgeId) return undefined
    const longer = Math.abs(a.arc.sweepRad) >= Math.abs(b.arc.sweepRad) ? a : b
    const sweepRad = a.arc.sweepRad + b.arc.sweepRad
    if (Math.abs(sweepRad) >= 2 * Math.PI - 1e-6) return undefined
    return { edgeId: longer.edgeId, from: a.from, to: b.to, arc: { ...longer.arc!, sweepRad } }
  }
  const back = (a.to[0] - a.from[0]) * (b.to[0] - b.from[0]) + (a.to[1] - a.from[1]) * (b.to[1] - b.from[1]) < 0
  if (!back && a.edgeId !== b.edgeId) return undefined
  const longer = edgeLength(a) >= edgeLength(b) ? a : b
  return { edgeId: longer.edgeId, from: a.from, to: b.to }
}

const isSliver = (ring: CurveRing) => ring.length < 2 || Math.abs(ringArea(ring)) <= (sliverM * ringLength(ring)) / 2

type Kind = Parameters<typeof clipTraced>[0]

interface Attempt extends CurveShapes {
  readonly areaM2: number
}

const turnRing = (ring: Ring, c: number, s: number): Ring => ring.map(p => [c * p[0] - s * p[1], s * p[0] + c * p[1]])

/** The boolean as clipped in a frame turned by `turnRad`: other coordinates are rounded, other edges are level. */
function attempt(kind: Kind, tracer: Tracer, ringsOfA: number, turnRad: number): Attempt {
  const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)]
  const flat = turnRad === 0 ? tracer.flat : tracer.flat.map(r => turnRing(r, c, s))
  const back = ({ ring, from }: TracedRing): TracedRing => ({
    ring: turnRad === 0 ? ring : turnRing(ring, c, -s),
    from,
  })
  const regions: CurveRegion[] = []
  tracer.chordsKept = false
  for (const region of clipTraced(kind, flat.slice(0, ringsOfA), flat.slice(ringsOfA))) {
    const outer = tracer.trace(back(region.outer))
    if (isSliver(outer)) continue
    regions.push({ outer, holes: region.holes.map(h => tracer.trace(back(h))).filter(h => !isSliver(h)) })
  }
  return { regions, chordsKept: tracer.chordsKept, areaM2: curveArea(regions) }
}

/** Angles of the frames tried, radians: no two differ by a right angle or another angle that shapes are drawn at. */
const frames = [0, 0.5413, 1.1287, 2.0171, 2.6749]

/**
 * Where edges run along each other but not on the grid, the clipping library now and then loses a part between them
 * (about one in three hundred of our most tangled random slabs). Which part depends on the frame. With `expectedM2` the
 * answer is the first that has this area, to a billionth; without, one whose area two frames agree on.
 */
function runCurves(
  kind: Kind,
  a: readonly CurveRing[],
  b: readonly CurveRing[],
  expectedM2?: number | undefined,
): CurveShapes {
  const tracer = new Tracer([...a, ...b])
  const tried: Attempt[] = []
  let closest: { answer: Attempt; apart: number } | undefined
  for (const frame of frames) {
    const next = attempt(kind, tracer, a.length, frame)
    const rivals = expectedM2 === undefined ? tried : [{ ...next, areaM2: expectedM2 }]
    for (const rival of rivals) {
      const apart = Math.abs(next.areaM2 - rival.areaM2)
      if (!closest || apart < closest.apart) closest = { answer: rival, apart }
    }
    if (closest && closest.apart <= agreeM2 * Math.max(1, next.areaM2)) break
    tried.push(next)
  }
  return closest!.answer
}

const ringsOf = (regions: readonly CurveRegion[]): CurveRing[] => regions.flatMap(r => [r.outer, ...r.holes])

/** What the rings (filled non-zero) have in common with regions. Rings of the regions that lie elsewhere cost nothing. */
export function clipCurveRings(rings: readonly CurveRing[], to: readonly CurveRegion[]): CurveShapes {
  if (rings.length === 0) return { regions: [], chordsKept: false }
  const box = joinBounds(rings.map(ringBounds))
  const corner: Pt = [box.minX, box.minY]
  const near = (ring: CurveRing) => ring.some(edge => edgeMeets(edge, box, onCurveM))
  const clip: CurveRing[] = []
  for (const { outer, holes } of to) {
    const holesNear: CurveRing[] = []
    let inHole = false
    for (const hole of holes) {
      if (near(hole)) holesNear.push(hole)
      else if (ringContains(hole, corner)) inHole = true
    }
    if (inHole) continue
    if (near(outer)) clip.push(outer, ...holesNear)
    else if (ringContains(outer, corner))
      return holesNear.length === 0 ? runCurves('union', rings, []) : runCurves('subtract', rings, holesNear)
  }
  return runCurves('intersect', rings, clip)
}

/** All that lies in any of the regions. Where edges coincide, here and below, either may give the answer's edge its id. */
export function unionCurves(regions: readonly CurveRegion[]): CurveShapes {
  return runCurves('union', ringsOf(regions), [])
}

/** What both have in common. */
export function intersectCurves(a: readonly CurveRegion[], b: readonly CurveRegion[]): CurveShapes {
  return runCurves('intersect', ringsOf(a), ringsOf(b))
}

/**
 * What is left of `a` without `b`. `leftM2`: its area, where the caller knows it (exactly); else it is worked out from
 * what the two have in common, so that the answer can be checked.
 */
export function subtractCurves(
  a: readonly CurveRegion[],
  b: readonly CurveRegion[],
  leftM2?: number | undefined,
): CurveShapes {
  if (a.length === 0 || b.length === 0) return { regions: a, chordsKept: false }
  const [ra, rb] = [ringsOf(a), ringsOf(b)]
  const expectedM2 = leftM2 ?? curveArea(a) - curveArea(runCurves('intersect', ra, rb).regions)
  return runCurves('subtract', ra, rb, expectedM2)
}
