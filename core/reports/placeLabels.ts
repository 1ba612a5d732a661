/** Puts labels where they hide least: each wish has candidates, the cheapest set without collisions is sought. */
import type { XY } from './svgPen'

/** A box turned by `turnDeg`, counter-clockwise on paper. */
export interface LabelBox {
  readonly center: XY
  readonly width: number
  readonly height: number
  readonly turnDeg?: number
  /** A line of the label's own drawing: other lines may cross it at a small cost. */
  readonly line?: true
  /** A thin line that other lines cross freely; letters rather stand beside it. */
  readonly thin?: true
}

export interface Candidate<T> {
  readonly boxes: readonly LabelBox[]
  /** What this place costs by itself. */
  readonly cost: number
  readonly place: T
}

export interface LabelWish<T> {
  readonly candidates: readonly Candidate<T>[]
  /** Left out when every place costs more. */
  readonly dropAbove?: number
}

export interface Obstacles {
  readonly segments: readonly { readonly a: XY; readonly b: XY; readonly weight: number }[]
  readonly boxes: readonly { readonly box: LabelBox; readonly weight: number }[]
  readonly bounds: { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number }
}

/** Label over label: nothing else may weigh as much. */
const collisionCost = 1000
const labelOnLineCost = 320
const labelOnThinCost = 60
const crossingCost = 25

function collision(p: LabelBox, q: LabelBox): number {
  if (p.thin || q.thin) return p.line && q.line ? 0 : labelOnThinCost
  if (p.line !== q.line) return labelOnLineCost
  if (p.line === undefined) return collisionCost
  const between = Math.abs((p.turnDeg ?? 0) - (q.turnDeg ?? 0)) % 180
  return Math.min(between, 180 - between) < 5 ? labelOnLineCost : crossingCost
}
const outsideCost = 5000

interface Corners {
  readonly of: LabelBox
  readonly points: readonly XY[]
  readonly axes: readonly XY[]
  readonly x0: number
  readonly y0: number
  readonly x1: number
  readonly y1: number
}

function corners(box: LabelBox): Corners {
  const a = (-(box.turnDeg ?? 0) * Math.PI) / 180
  const u: XY = [Math.cos(a), Math.sin(a)]
  const v: XY = [-u[1], u[0]]
  const [w, h] = [box.width / 2, box.height / 2]
  const at = (s: number, t: number): XY => [
    box.center[0] + s * w * u[0] + t * h * v[0],
    box.center[1] + s * w * u[1] + t * h * v[1],
  ]
  const points = [at(-1, -1), at(1, -1), at(1, 1), at(-1, 1)]
  const xs = points.map(p => p[0])
  const ys = points.map(p => p[1])
  return {
    of: box,
    points,
    axes: [u, v],
    x0: Math.min(...xs),
    y0: Math.min(...ys),
    x1: Math.max(...xs),
    y1: Math.max(...ys),
  }
}

const apart = (axis: XY, p: readonly XY[], q: readonly XY[]): boolean => {
  let [p0, p1, q0, q1] = [Infinity, -Infinity, Infinity, -Infinity]
  for (const [x, y] of p) {
    const d = x * axis[0] + y * axis[1]
    if (d < p0) p0 = d
    if (d > p1) p1 = d
  }
  for (const [x, y] of q) {
    const d = x * axis[0] + y * axis[1]
    if (d < q0) q0 = d
    if (d > q1) q1 = d
  }
  return p1 <= q0 + 1e-9 || q1 <= p0 + 1e-9
}

/** Separating axes of two turned boxes. */
const overlap = (p: Corners, q: Corners): boolean =>
  p.x0 < q.x1 &&
  q.x0 < p.x1 &&
  p.y0 < q.y1 &&
  q.y0 < p.y1 &&
  ![...p.axes, ...q.axes].some(axis => apart(axis, p.points, q.points))

const hitsSegment = (box: Corners, a: XY, b: XY): boolean => {
  if (Math.max(a[0], b[0]) < box.x0 || Math.min(a[0], b[0]) > box.x1) return false
  if (Math.max(a[1], b[1]) < box.y0 || Math.min(a[1], b[1]) > box.y1) return false
  const normal: XY = [a[1] - b[1], b[0] - a[0]]
  return ![...box.axes, normal].some(axis => apart(axis, box.points, [a, b]))
}

/** True when two labels share paper. */
export const boxesCollide = (p: LabelBox, q: LabelBox): boolean => overlap(corners(p), corners(q))

/**
 * Chooses one candidate for each wish, in the order given (the first have the first choice), then lets each choose
 * again three times in view of all the others. Deterministic. Null = left out.
 */
export function placeLabels<T>(wishes: readonly LabelWish<T>[], obstacles: Obstacles): (T | null)[] {
  const { bounds } = obstacles
  const fixed = obstacles.boxes.map(({ box, weight }) => ({ box: corners(box), weight }))
  const prepared = wishes.map(wish =>
    wish.candidates.map(candidate => {
      const boxes = candidate.boxes.map(corners)
      let cost = candidate.cost
      for (const box of boxes) {
        if (box.x0 < bounds.x0 || box.x1 > bounds.x1 || box.y0 < bounds.y0 || box.y1 > bounds.y1) cost += outsideCost
        for (const s of box.of.line ? [] : obstacles.segments) if (hitsSegment(box, s.a, s.b)) cost += s.weight
        for (const f of fixed) if (overlap(box, f.box)) cost += f.weight
      }
      return { boxes, cost, place: candidate.place }
    }),
  )
  const chosen: (number | null)[] = wishes.map(() => null)
  const priceOf = (index: number, boxes: readonly Corners[]): number => {
    let cost = 0
    for (let other = 0; other < chosen.length; other++) {
      const pick = chosen[other]
      if (other === index || pick === null || pick === undefined) continue
      for (const theirs of prepared[other]![pick]!.boxes)
        for (const box of boxes) if (overlap(box, theirs)) cost += collision(box.of, theirs.of)
    }
    return cost
  }
  for (let sweep = 0; sweep < 4; sweep++)
    for (let index = 0; index < wishes.length; index++) {
      let best = wishes[index]!.dropAbove ?? Infinity
      let pick: number | null = null
      for (const [i, candidate] of prepared[index]!.entries()) {
        if (candidate.cost >= best) continue
        const cost = candidate.cost + priceOf(index, candidate.boxes)
        if (cost < best) {
          best = cost
          pick = i
        }
      }
      chosen[index] = pick
    }
  return chosen.map((pick, index) => (pick === null ? null : prepared[index]![pick]!.place))
}
