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

/** Corners of the ring and points along its arcs, then their hull: filled and read within one call. */
const scratch = { count: 0, x: [] as number[], y: [] as number[], order: [] as number[], hull: [] as number[] }

function putPoint(x: number, y: number): void {
  const { x: xs, y: ys, order } = scratch
  const n = scratch.count++
  xs[n] = x
  ys[n] = y
  let i = n
  for (; i > 0; i--) {
    const before = order[i - 1]!
    if (xs[before]! < x || (xs[before] === x && ys[before]! <= y)) break
    order[i] = before
  }
  order[i] = n
}

/** Arcs that bulge inwards lie behind their chords. */
function probe({ sides }: CutRing): void {
  scratch.count = 0
  for (const s of sides) {
    putPoint(s.x, s.y)
    if (s.sweep <= 0) continue
    const c = Math.cos(s.sweep / arcProbes)
    const d = Math.sin(s.sweep / arcProbes)
    let dx = s.x - s.cx
    let dy = s.y - s.cy
    for (let i = 1; i < arcProbes; i++) {
      const turned = c * dx - d * dy
      dy = d * dx + c * dy
      dx = turned
      putPoint(s.cx + dx, s.cy + dy)
    }
  }
}

/** Convex hull, counter-clockwise (monotone chain: A. M. Andrew, Information Processing Letters 9(5), 1979). */
function findHull(): number {
  const { count, x, y, order, hull } = scratch
  let n = 0
  const grow = (p: number, least: number): void => {
    for (; n > least; n--) {
      const o = hull[n - 2]!
      const a = hull[n - 1]!
      if ((x[a]! - x[o]!) * (y[p]! - y[o]!) - (y[a]! - y[o]!) * (x[p]! - x[o]!) > 0) break
    }
    hull[n++] = p
  }
  for (let i = 0; i < count; i++) grow(order[i]!, 1)
  const lower = n
  for (let i = count - 2; i >= 0; i--) grow(order[i]!, lower)
  return n - 1
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
  probe(ring)
  const n = findHull()
  const { x, y, hull } = scratch
  let best = Number.POSITIVE_INFINITY
  let ux = 1
  let uy = 0
  for (let i = 0; i < n; i++) {
    const p = hull[i]!
    const q = hull[i + 1 === n ? 0 : i + 1]!
    const px = x[p]!
    const py = y[p]!
    const dx = x[q]! - px
    const dy = y[q]! - py
    const length = Math.sqrt(dx * dx + dy * dy)
    if (length < 1e-9) continue
    const vx = dx / length
    const vy = dy / length
    let low = Number.POSITIVE_INFINITY
    let high = Number.NEGATIVE_INFINITY
    let deep = 0
    for (let k = 0; k < n; k++) {
      const ex = x[hull[k]!]! - px
      const ey = y[hull[k]!]! - py
      const t = ex * vx + ey * vy
      if (t < low) low = t
      if (t > high) high = t
      const d = ey * vx - ex * vy
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
