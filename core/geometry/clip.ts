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

function toPath(ring: Ring, o: Origin): Path64 {
  const path: Path64 = new Array<Point64>(ring.length)
  for (let i = 0; i < ring.length; i++) {
    const p = ring[i]!
    path[i] = { x: toUnits(p[0], o.x), y: toUnits(p[1], o.y) }
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

const boxHolds = (a: Box, b: Box) => a.minX <= b.minX && a.minY <= b.minY && a.maxX >= b.maxX && a.maxY >= b.maxY

/** True where the hole lies in the outer path; holes may touch it in single points. */
function holds(outer: Path64, hole: Path64): boolean {
  for (const p of hole) {
    const side = sideOf(outer, p.x, p.y)
    if (side !== 0) return side > 0
  }
  const a = hole[0]!
  const b = hole[1]!
  return sideOf(outer, (a.x + b.x) / 2, (a.y + b.y) / 2) >= 0
}

/** Puts each clockwise path into the smallest counter-clockwise one around it. */
function nest(paths: Paths64, o: Origin): Region[] {
  const outers: { path: Path64; box: Box; area: number; ring: Ring; holes: Ring[] }[] = []
  const holes: Path64[] = []
  for (const path of paths) {
    if (path.length < 3) continue
    const area = twiceArea(path)
    if (area > 0) outers.push({ path, box: pathBox(path), area, ring: toRing(path, o), holes: [] })
    else if (area < 0) holes.push(path)
  }
  for (const hole of holes) {
    const box = pathBox(hole)
    let home: (typeof outers)[number] | undefined
    for (const outer of outers) {
      if (home && outer.area >= home.area) continue
      if (boxHolds(outer.box, box) && holds(outer.path, hole)) home = outer
    }
    home?.holes.push(toRing(hole, o))
  }
  return outers.map(({ ring, holes: inside }) => ({ ring, holes: inside }))
}

const ringsOf = (regions: readonly Region[]): Ring[] => regions.flatMap(r => [r.ring, ...r.holes])

function run(type: ClipType, subject: readonly Ring[], clip: readonly Ring[]): Region[] {
  const o = originOf([...subject, ...clip].map(pointBounds))
  const clipper = new Clipper64()
  clipper.addPaths(
    subject.map(r => toPath(r, o)),
    0,
  )
  if (clip.length > 0)
    clipper.addPaths(
      clip.map(r => toPath(r, o)),
      1,
    )
  const out: Paths64 = []
  if (!clipper.execute(type, FillRule.NonZero, out)) throw new Error('clipping failed')
  return nest(out, o)
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
  return nest(out, o)
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
    for (let i = 0; i < count; i++) path[i] = { x: toUnits(kept[2 * i]!, o.x), y: toUnits(kept[2 * i + 1]!, o.y) }
    subject.push(path)
  }
  if (subject.length === 0) return []
  const clipper = new Clipper64()
  clipper.addPaths(subject, 0)
  clipper.addPaths(
    rings.map(r => toPath(r, o)),
    1,
  )
  const out: Paths64 = []
  if (!clipper.execute(ClipType.Intersection, FillRule.NonZero, out)) throw new Error('clipping failed')
  return nest(out, o)
}
