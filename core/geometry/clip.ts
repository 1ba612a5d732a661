/**
 * Union, intersection, difference and offset of flat shapes: the one door to the clipping library.
 * Coordinates are rounded to a grid of 2.5e-6 m (1 mm = 400 units, 1/16 in = 635 units, both whole) about a local
 * origin in whole meters, so answers do not depend on what else is clipped. Valid for shapes within 2 km.
 */
import {
  Clipper64,
  ClipperOffset,
  ClipType,
  EndType,
  FillRule,
  JoinType,
  type Path64,
  type Paths64,
  type Point64,
} from 'clipper2-ts'
import type { Pt } from '../../shared/document/primitives'
import { type Box, joinBounds, pointBounds } from './bounds'
import type { Region, Ring } from './curve'

/** Grid units in a meter. */
const unitsPerM = 400_000
/** The clipping grid, meters. */
export const gridM = 1 / unitsPerM
/** Sharper corners than this miter ratio are cut off square by an offset. */
const miterLimit = 10

interface Origin {
  readonly x: number
  readonly y: number
}

function originOf(boxes: Iterable<Box>): Origin {
  const { minX, minY, maxX, maxY } = joinBounds(boxes)
  return minX <= maxX ? { x: Math.round((minX + maxX) / 2), y: Math.round((minY + maxY) / 2) } : { x: 0, y: 0 }
}

/** −0 is avoided: it would compare unequal as a key. */
const toUnits = (v: number, o: number) => Math.round((v - o) * unitsPerM) + 0

/** Points carry the number `tag`, `tag` + 1 … through the clipping. */
function toPath(ring: Ring, o: Origin, tag = 1): Path64 {
  const path: Path64 = new Array<Point64>(ring.length)
  for (let i = 0; i < ring.length; i++) {
    const p = ring[i]!
    path[i] = { x: toUnits(p[0], o.x), y: toUnits(p[1], o.y), z: tag + i }
  }
  return path
}

function toRing(path: Path64, o: Origin): Pt[] {
  return path.map(p => [p.x / unitsPerM + o.x, p.y / unitsPerM + o.y] as const)
}

/** Twice the signed area in square grid units, from the first point. */
function twiceArea(path: Path64): number {
  const first = path[0]!
  let sum = 0
  let a = path[path.length - 1]!
  for (const b of path) {
    sum += (a.x - first.x) * (b.y - first.y) - (a.y - first.y) * (b.x - first.x)
    a = b
  }
  return sum
}

function pathBox(path: Path64): Box {
  let minX = Infinity
  let minY = Infinity
  let maxX = -Infinity
  let maxY = -Infinity
  for (const { x, y } of path) {
    if (x < minX) minX = x
    if (x > maxX) maxX = x
    if (y < minY) minY = y
    if (y > maxY) maxY = y
  }
  return { minX, minY, maxX, maxY }
}

/** −1 outside, 0 on the boundary, 1 inside. */
function sideOf(path: Path64, x: number, y: number): -1 | 0 | 1 {
  let inside = false
  let a = path[path.length - 1]!
  for (const b of path) {
    if (x === b.x && y === b.y) return 0
    if (a.y === b.y) {
      if (y === a.y && x > Math.min(a.x, b.x) && x < Math.max(a.x, b.x)) return 0
    } else if (a.y > y !== b.y > y || y === a.y || y === b.y) {
      const side = (b.x - a.x) * (y - a.y) - (x - a.x) * (b.y - a.y)
      if (side === 0 && y >= Math.min(a.y, b.y) && y <= Math.max(a.y, b.y)) return 0
      if (a.y > y !== b.y > y && (b.y > a.y ? side > 0 : side < 0)) inside = !inside
    }
    a = b
  }
  return inside ? 1 : -1
}

/** One box in another, give or take two grid units of rounding. */
const boxHolds = (a: Box, b: Box) =>
  a.minX <= b.minX + 2 && a.minY <= b.minY + 2 && a.maxX >= b.maxX - 2 && a.maxY >= b.maxY - 2

/**
 * How surely the hole lies in the outer path: its points inside less those outside. Single points may touch the outer
 * path or stick out of it by a grid unit of rounding, so no one point decides.
 */
function holdScore(outer: Path64, hole: Path64): number {
  let score = 0
  for (const p of hole) {
    score += sideOf(outer, p.x, p.y)
    if (Math.abs(score) >= 8) return score
  }
  return score
}

/** True for a turned-over crumb of rounding, some grid units wide, that belongs to no ring. */
function isCrumb(path: Path64): boolean {
  let around = 0
  let a = path[path.length - 1]!
  for (const b of path) {
    around += Math.hypot(b.x - a.x, b.y - a.y)
    a = b
  }
  return Math.abs(twiceArea(path)) <= 16 * around
}

interface Nested {
  readonly outer: Path64
  readonly holes: Path64[]
}

/** Puts each clockwise path into the smallest counter-clockwise one around it. */
function nest(paths: Paths64): Nested[] {
  const outers: { outer: Path64; box: Box; area: number; holes: Path64[] }[] = []
  const holes: Path64[] = []
  for (const path of paths) {
    if (path.length < 3) continue
    const area = twiceArea(path)
    if (area > 0) outers.push({ outer: path, box: pathBox(path), area, holes: [] })
    else if (area < 0) holes.push(path)
  }
  outers.sort((a, b) => a.area - b.area)
  for (const hole of holes) {
    const box = pathBox(hole)
    const around = outers.filter(outer => boxHolds(outer.box, box))
    const home = around.length === 1 ? around[0] : around.find(a => holdScore(a.outer, hole) > 0)
    const owner = home ?? around[around.length - 1]
    if (owner) owner.holes.push(hole)
    else if (!isCrumb(hole)) throw new Error(`a hole at ${hole[0]!.x}, ${hole[0]!.y} grid units lies in no outer ring`)
  }
  return outers
}

function toRegions(paths: Paths64, o: Origin): Region[] {
  return nest(paths).map(({ outer, holes }) => ({ ring: toRing(outer, o), holes: holes.map(h => toRing(h, o)) }))
}

const ringsOf = (regions: readonly Region[]): Ring[] => regions.flatMap(r => [r.ring, ...r.holes])

function runClipper(type: ClipType, subject: Paths64, clip: Paths64): Paths64 {
  const clipper = new Clipper64()
  clipper.addPaths(subject, 0)
  if (clip.length > 0) clipper.addPaths(clip, 1)
  const out: Paths64 = []
  if (!clipper.execute(type, FillRule.NonZero, out)) throw new Error('clipping failed')
  return out
}

function run(type: ClipType, subject: readonly Ring[], clip: readonly Ring[]): Region[] {
  const o = originOf([...subject, ...clip].map(pointBounds))
  const paths = (rings: readonly Ring[]) => rings.map(r => toPath(r, o))
  return toRegions(runClipper(type, paths(subject), paths(clip)), o)
}

/** A ring of an answer; `from[i]` is the number of the input point it is (from 0, over all rings of `a`, then of `b`), −1 for a crossing. */
export interface TracedRing {
  readonly ring: Ring
  readonly from: readonly number[]
}

export interface TracedRegion {
  readonly outer: TracedRing
  readonly holes: readonly TracedRing[]
}

/** A boolean of two sets of rings, each filled non-zero, that tells where the answer's points came from. */
export function clipTraced(
  kind: 'union' | 'intersect' | 'subtract',
  a: readonly Ring[],
  b: readonly Ring[],
): TracedRegion[] {
  if (a.length === 0 || (kind === 'intersect' && b.length === 0)) return []
  const o = originOf([...a, ...b].map(pointBounds))
  let tag = 1
  const paths = (rings: readonly Ring[]) =>
    rings.map(r => {
      const path = toPath(r, o, tag)
      tag += r.length
      return path
    })
  const type = { union: ClipType.Union, intersect: ClipType.Intersection, subtract: ClipType.Difference }[kind]
  const traced = (path: Path64): TracedRing => ({ ring: toRing(path, o), from: path.map(p => (p.z ?? 0) - 1) })
  return nest(runClipper(type, paths(a), paths(b))).map(({ outer, holes }) => ({
    outer: traced(outer),
    holes: holes.map(traced),
  }))
}

/** Everything the rings wind around a number of times other than zero; they may cross and run either way. */
export function unionRings(rings: readonly Ring[]): Region[] {
  return rings.length === 0 ? [] : run(ClipType.Union, rings, [])
}

/** What two sets of rings, each filled non-zero, have in common. */
export function intersectRings(a: readonly Ring[], b: readonly Ring[]): Region[] {
  return a.length === 0 || b.length === 0 ? [] : run(ClipType.Intersection, a, b)
}

/** What is left of `a` without `b`, each filled non-zero. */
export function subtractRings(a: readonly Ring[], b: readonly Ring[]): Region[] {
  return a.length === 0 ? [] : run(ClipType.Difference, a, b)
}

/** All that lies in any of the regions. */
export function unionRegions(regions: readonly Region[]): Region[] {
  return unionRings(ringsOf(regions))
}

/** What `a` and `b` have in common. */
export function intersectRegions(a: readonly Region[], b: readonly Region[]): Region[] {
  return intersectRings(ringsOf(a), ringsOf(b))
}

/** What is left of `a` without `b`. */
export function subtractRegions(a: readonly Region[], b: readonly Region[]): Region[] {
  return subtractRings(ringsOf(a), ringsOf(b))
}

/**
 * Everything that closed cycles wind around a number of times other than zero; cycles may cross themselves and each
 * other and run either way. With `clip`: only what lies in those regions.
 */
export function unionNonZero(rings: readonly Ring[], clip?: readonly Region[]): Region[] {
  return clip ? intersectRings(rings, ringsOf(clip)) : unionRings(rings)
}

/**
 * The regions grown (`deltaM` > 0) or shrunk by a parallel distance, corners mitered up to a miter ratio of 10.
 * Straight edges only: an arc must be flattened first.
 */
export function offsetRegions(regions: readonly Region[], deltaM: number): Region[] {
  if (regions.length === 0) return []
  const rings = ringsOf(regions)
  const o = originOf(rings.map(pointBounds))
  const offset = new ClipperOffset(miterLimit)
  offset.addPaths(
    rings.map(r => toPath(r, o)),
    JoinType.Miter,
    EndType.Polygon,
  )
  const out: Paths64 = []
  offset.execute(deltaM * unitsPerM, out)
  return toRegions(out, o)
}

/** Clips a cycle (x0, y0, x1, y1, …) to one side of an axis line; winding numbers on the kept side stay as they are. */
function cutHalf(
  cycle: Float64Array,
  count: number,
  axis: 0 | 1,
  limit: number,
  keep: 1 | -1,
  out: Float64Array,
): number {
  let n = 0
  let px = cycle[2 * count - 2]!
  let py = cycle[2 * count - 1]!
  let pd = ((axis === 0 ? px : py) - limit) * keep
  for (let i = 0; i < count; i++) {
    const x = cycle[2 * i]!
    const y = cycle[2 * i + 1]!
    const d = ((axis === 0 ? x : y) - limit) * keep
    if (d < 0 !== pd < 0) {
      const t = pd / (pd - d)
      out[n++] = axis === 0 ? limit : px + t * (x - px)
      out[n++] = axis === 1 ? limit : py + t * (y - py)
    }
    if (d >= 0) {
      out[n++] = x
      out[n++] = y
    }
    px = x
    py = y
    pd = d
  }
  return n / 2
}

/**
 * The union of many shadow cycles (x0, y0, x1, y1, …; either way around, crossing freely, filled non-zero), clipped to
 * `clip`. Cycles that cannot reach the clip's box are dropped, the rest is first cut back to that box, so that low sun
 * costs no more than high sun.
 */
export function unionShadow(cycles: readonly Float64Array[], clip: readonly Region[]): Region[] {
  if (clip.length === 0) return []
  const rings = ringsOf(clip)
  const box = joinBounds(rings.map(pointBounds))
  const o = originOf([box])
  const minX = box.minX - 1
  const minY = box.minY - 1
  const maxX = box.maxX + 1
  const maxY = box.maxY + 1
  const subject: Paths64 = []
  for (const cycle of cycles) {
    let west = Infinity
    let south = Infinity
    let east = -Infinity
    let north = -Infinity
    for (let i = 0; i < cycle.length; i += 2) {
      const x = cycle[i]!
      const y = cycle[i + 1]!
      if (x < west) west = x
      if (x > east) east = x
      if (y < south) south = y
      if (y > north) north = y
    }
    if (!(west < box.maxX && east > box.minX && south < box.maxY && north > box.minY)) continue
    let kept = cycle
    let count = cycle.length / 2
    const cut = (axis: 0 | 1, limit: number, keep: 1 | -1) => {
      const out = new Float64Array(4 * count + 8)
      count = cutHalf(kept, count, axis, limit, keep, out)
      kept = out
    }
    if (west < minX) cut(0, minX, 1)
    if (east > maxX) cut(0, maxX, -1)
    if (south < minY) cut(1, minY, 1)
    if (north > maxY) cut(1, maxY, -1)
    if (count < 3) continue
    const path: Path64 = new Array<Point64>(count)
    for (let i = 0; i < count; i++) path[i] = { x: toUnits(kept[2 * i]!, o.x), y: toUnits(kept[2 * i + 1]!, o.y), z: 0 }
    subject.push(path)
  }
  if (subject.length === 0) return []
  return toRegions(
    runClipper(
      ClipType.Intersection,
      subject,
      rings.map(r => toPath(r, o)),
    ),
    o,
  )
}
