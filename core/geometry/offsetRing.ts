/**
 * The parallel of a ring, worked out edge by edge: lines stay lines, arcs stay arcs about their centers. For the plain
 * case only, where no edge of the parallel vanishes or turns back; whoever asks falls back to the general band
 * (edgeStrips) otherwise.
 */
import type { Pt } from '../../shared/document/primitives'
import { boxesMeet, edgeBounds, ringBounds } from './bounds'
import type { CurveEdge, CurveRing } from './curve'
import { angleFrom, tangentAt } from './edgeAt'
import { gridOf } from './edgeGrid'
import { findSelfCrossing } from './findSelfCrossing'
import { intersectEdges } from './intersectEdges'
import { intersectSupports, type Support, supportOf } from './intersectSupports'

/** Below this sine two edges run on smoothly. */
const smoothSine = 1e-6
/** Sharper re-entrant corners are squared off, which is not the plain case. */
const miterLimit = 10
/** Shorter parallels count as vanished, nearer rings as touching. */
const leastM = 1e-6

const turn = 2 * Math.PI
const shiftPoint = (p: Pt, along: Pt, depthM: number): Pt => [p[0] - along[1] * depthM, p[1] + along[0] * depthM]

function shiftSupport(edge: CurveEdge, depthM: number): Support | undefined {
  const s = supportOf(edge)
  if (s.line) return { line: true, along: s.along, at: shiftPoint(s.at, s.along, depthM) }
  const radiusM = s.radiusM - Math.sign(edge.arc!.sweepRad) * depthM
  return radiusM > leastM ? { line: false, center: s.center, radiusM } : undefined
}

/** The parallel's corner points at the joint of two edges: one, or three around a miter next to an arc. */
function corner(a: CurveEdge, b: CurveEdge, sa: Support, sb: Support, depthM: number): readonly Pt[] | undefined {
  const u = tangentAt(a, 1)
  const v = tangentAt(b, 0)
  const sine = u[0] * v[1] - u[1] * v[0]
  const cosine = u[0] * v[0] + u[1] * v[1]
  const end = shiftPoint(a.to, u, depthM)
  if (Math.abs(sine) < smoothSine) return cosine > 0 ? [end] : undefined
  const half = Math.sqrt((1 + cosine) / 2)
  if (half * miterLimit < 1) return undefined
  // the tangents' parallels meet d tan(turn/2) before the corner, beyond it where the corner is re-entrant
  const back = (depthM * sine) / (1 + cosine)
  const tip: Pt = [end[0] - u[0] * back, end[1] - u[1] * back]
  if (!a.arc && !b.arc) return [tip]
  if (sine < 0) return [...(a.arc ? [end] : []), tip, ...(b.arc ? [shiftPoint(b.from, v, depthM)] : [])]
  let best: Pt | undefined
  let least = Infinity
  for (const x of intersectSupports(sa, sb)) {
    const d = Math.hypot(x[0] - tip[0], x[1] - tip[1])
    if (d < least) {
      least = d
      best = x
    }
  }
  return best && [best]
}

/** The parallel edge between two corner points; undefined where it has vanished or turned back. */
function parallel(edge: CurveEdge, s: Support, edgeId: string, from: Pt, to: Pt): CurveEdge | undefined {
  if (s.line) {
    const run = (to[0] - from[0]) * s.along[0] + (to[1] - from[1]) * s.along[1]
    return run > leastM ? { edgeId, from, to } : undefined
  }
  const { center, sweepRad } = edge.arc!
  const way = Math.sign(sweepRad)
  const middle = angleFrom(center, edge.from) + sweepRad / 2
  const fromMiddle = (p: Pt) => {
    const d = way * (angleFrom(center, p) - middle)
    return d - Math.round(d / turn) * turn
  }
  const run = fromMiddle(to) - fromMiddle(from)
  if (run * s.radiusM <= leastM) return undefined
  return { edgeId, from, to, arc: { center, radiusM: s.radiusM, sweepRad: way * run } }
}

/** Rings never change, and an edit leaves most of them alone: the parallels of a ring, by depth and name. */
const knownParallels = new WeakMap<CurveRing, Map<string, CurveRing | undefined>>()
/** A border whose width is dragged asks for ever other ones. */
const mostParallels = 16

/**
 * The ring `depthM` to the left of a ring, every edge named `edgeId`; undefined where an edge vanishes or turns back, a
 * corner is too sharp, or the parallel crosses itself.
 */
export function offsetRing(ring: CurveRing, depthM: number, edgeId: string): CurveRing | undefined {
  const known = knownParallels.get(ring) ?? new Map<string, CurveRing | undefined>()
  knownParallels.set(ring, known)
  const key = `${depthM} ${edgeId}`
  if (known.has(key)) return known.get(key)
  if (known.size >= mostParallels) known.clear()
  const made = findParallel(ring, depthM, edgeId)
  known.set(key, made)
  return made
}

function findParallel(ring: CurveRing, depthM: number, edgeId: string): CurveRing | undefined {
  const n = ring.length
  const supports: Support[] = []
  for (const edge of ring) {
    const s = shiftSupport(edge, depthM)
    if (!s) return undefined
    supports.push(s)
  }
  const corners: (readonly Pt[])[] = []
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n
    const points = corner(ring[i]!, ring[j]!, supports[i]!, supports[j]!, depthM)
    if (!points) return undefined
    corners.push(points)
  }
  const out: CurveEdge[] = []
  for (let i = 0; i < n; i++) {
    const before = corners[(i + n - 1) % n]!
    const after = corners[i]!
    const edge = parallel(ring[i]!, supports[i]!, edgeId, before[before.length - 1]!, after[0]!)
    if (!edge) return undefined
    out.push(edge)
    for (let k = 1; k < after.length; k++) out.push({ edgeId, from: after[k - 1]!, to: after[k]! })
  }
  return findSelfCrossing(out) ? undefined : out
}

/** True where two rings keep clear of each other by more than a micrometer (one may lie inside the other). */
export function ringsClear(a: CurveRing, b: CurveRing): boolean {
  if (!boxesMeet(ringBounds(a), ringBounds(b), leastM)) return true
  const grid = gridOf(b)
  return !a.some(edge => grid.near(edgeBounds(edge), leastM).some(i => intersectEdges(edge, b[i]!, leastM).length > 0))
}
