/** The rectangle of least area around a ring, arcs included. */
import type { CutRing } from './cutRegion'

export interface Box {
  readonly longM: number
  readonly shortM: number
  /** Unit vector along one side of the box. */
  readonly ux: number
  readonly uy: number
}

/** Points an arc of ≤ 45° is probed at to find the hull; the extent itself is exact. */
const arcProbes = 4

function probe(ring: CutRing): [number, number][] {
  const points: [number, number][] = []
  for (const s of ring.sides) {
    points.push([s.x, s.y])
    if (s.sweep === 0) continue
    const start = Math.atan2(s.y - s.cy, s.x - s.cx)
    for (let i = 1; i < arcProbes; i++) {
      const angle = start + (s.sweep * i) / arcProbes
      points.push([s.cx + s.r * Math.cos(angle), s.cy + s.r * Math.sin(angle)])
    }
  }
  return points
}

const cross = (o: readonly number[], a: readonly number[], b: readonly number[]): number =>
  (a[0]! - o[0]!) * (b[1]! - o[1]!) - (a[1]! - o[1]!) * (b[0]! - o[0]!)

function grow(hull: [number, number][], p: [number, number], least: number): void {
  while (hull.length > least && cross(hull[hull.length - 2]!, hull[hull.length - 1]!, p) <= 0) hull.pop()
  hull.push(p)
}

/** Convex hull, counter-clockwise (monotone chain: A. M. Andrew, Information Processing Letters 9(5), 1979). */
function hullOf(points: [number, number][]): [number, number][] {
  points.sort((a, b) => a[0] - b[0] || a[1] - b[1])
  const hull: [number, number][] = []
  for (const p of points) grow(hull, p, 1)
  const lower = hull.length
  for (let i = points.length - 2; i >= 0; i--) grow(hull, points[i]!, lower)
  hull.pop()
  return hull
}

/** Extent of the ring along (ux, uy): least and greatest position, arcs exact. */
export function extentOf(ring: CutRing, ux: number, uy: number): readonly [number, number] {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  const n = ring.sides.length
  for (let i = 0; i < n; i++) {
    const s = ring.sides[i]!
    const t = s.x * ux + s.y * uy
    if (t < low) low = t
    if (t > high) high = t
    if (s.sweep === 0) continue
    const e = ring.sides[i + 1 === n ? 0 : i + 1]!
    const turn = s.sweep > 0 ? 1 : -1
    const rise0 = turn * (-(s.y - s.cy) * ux + (s.x - s.cx) * uy)
    const rise1 = turn * (-(e.y - s.cy) * ux + (e.x - s.cx) * uy)
    if (rise0 * rise1 >= 0) continue
    const top = s.cx * ux + s.cy * uy + (rise0 > 0 ? s.r : -s.r)
    if (top < low) low = top
    if (top > high) high = top
  }
  return [low, high]
}

/** One side of the least rectangle lies along an edge of the hull (H. Freeman and R. Shapira, CACM 18(7), 1975). */
export function minimumBox(ring: CutRing): Box {
  const hull = hullOf(probe(ring))
  const n = hull.length
  let best = Number.POSITIVE_INFINITY
  let ux = 1
  let uy = 0
  for (let i = 0; i < n; i++) {
    const p = hull[i]!
    const q = hull[i + 1 === n ? 0 : i + 1]!
    const dx = q[0] - p[0]
    const dy = q[1] - p[1]
    const length = Math.sqrt(dx * dx + dy * dy)
    if (length < 1e-9) continue
    const vx = dx / length
    const vy = dy / length
    let low = Number.POSITIVE_INFINITY
    let high = Number.NEGATIVE_INFINITY
    let deep = 0
    for (let k = 0; k < n; k++) {
      const x = hull[k]![0]
      const y = hull[k]![1]
      const t = x * vx + y * vy
      if (t < low) low = t
      if (t > high) high = t
      const d = (y - p[1]) * vx - (x - p[0]) * vy
      if (d > deep) deep = d
    }
    const area = (high - low) * deep
    if (area < best - 1e-12) {
      best = area
      ux = vx
      uy = vy
    }
  }
  const [a0, a1] = extentOf(ring, ux, uy)
  const [b0, b1] = extentOf(ring, -uy, ux)
  return a1 - a0 >= b1 - b0
    ? { longM: a1 - a0, shortM: b1 - b0, ux, uy }
    : { longM: b1 - b0, shortM: a1 - a0, ux: -uy, uy: ux }
}
