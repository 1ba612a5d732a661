/** What lies about one straight line of a dimension, as seen from its edge: pixels along it, and out from it. */
import type { CurveRing } from '../../../core/geometry/curve'
import type { Pt } from '../../../shared/document/primitives'
import { type Camera, toScreen } from '../camera/camera'
import { closedOutline } from './closedOutline'
import type { DimensionGround } from './dimensionGround'
import { type Rect, runsThrough } from './labelRoom'
import { markHalf } from './markSizes'

/** What a dimension can lie on, near enough to what it measures. */
export interface NearGround extends Pick<DimensionGround, 'flags' | 'crowns' | 'steps' | 'walls' | 'marks'> {
  /** Other slabs. */
  readonly neighbors: readonly CurveRing[]
}

/** Where on the screen an edge begins, and the unit vectors along it and out from it. */
export interface LineFrame {
  readonly a: Pt
  readonly u: Pt
  readonly n: Pt
}

export interface LineGround {
  /** Along, out, radius. */
  readonly crowns: readonly (readonly [x: number, y: number, r: number])[]
  /** Walls and fences, point by point. */
  readonly walls: readonly (readonly Pt[])[]
  /** The closed outlines of steps and of other slabs, point by point. */
  readonly flats: readonly (readonly Pt[])[]
  readonly marks: readonly Rect[]
}

/** A place of the line and of its letters. */
export interface LinePlace {
  readonly longPx: number
  /** How far out the line stands; negative = on the other side of the edge. */
  readonly out: number
  /** The middle of the letters, along the line. */
  readonly middle: number
  readonly lettersPx: number
}

/** Half of what letters take up across their line. */
export const halfLettersPx = 12
/** Half of what is drawn of a flag, across and up. */
const flagHalfPx: Pt = [7, 7]
/** Letters keep this far from what is beside them along their line. */
const besidePx = 5
/** A line that runs this near to a fence, to steps or to the edge of another slab is read with it. */
const besideWallPx = 6

export function lineGround({ a, u, n }: LineFrame, near: NearGround, camera: Camera): LineGround {
  const seen = (at: Pt): Pt => {
    const p = toScreen(camera, at)
    const dx = p[0] - a[0]
    const dy = p[1] - a[1]
    return [dx * u[0] + dy * u[1], dx * n[0] + dy * n[1]]
  }
  const [w, h] = [Math.abs(u[0]), Math.abs(u[1])]
  /** What is drawn so far across and up about a point, or about a place above it. */
  const boxOf = (at: Pt, [wide, high]: Pt, abovePx: number): Rect => {
    const p = seen(at)
    const along = w * wide + h * high
    const across = h * wide + w * high
    const [x, y] = [p[0] - abovePx * u[1], p[1] - abovePx * n[1]]
    return { x: x - along, y: y - across, width: 2 * along, height: 2 * across }
  }
  return {
    crowns: near.crowns.map(({ at, radiusM }) => {
      const p = seen(at)
      return [p[0], p[1], radiusM * camera.zoom] as const
    }),
    walls: near.walls.map(wall => wall.map(seen)),
    flats: [...near.steps, ...near.neighbors.map(closedOutline)].map(outline => outline.map(seen)),
    marks: [
      ...near.marks.map(({ at, kind }) => boxOf(at, markHalf(kind, camera.zoom), 0)),
      ...near.flags.map(at => boxOf(at, flagHalfPx, flagHalfPx[1])),
    ],
  }
}

/** How many pixels of a line lie on crowns, steps and other slabs or run along the edge of one or a fence. */
export function linePxHidden({ crowns, walls, flats }: LineGround, { longPx, out }: LinePlace): number {
  const within = (low: number, high: number): number => Math.max(0, Math.min(longPx, high) - Math.max(0, low))
  // A fence that crosses the line hides nothing of it; one that runs along it does.
  const alongside = (points: readonly Pt[]): number => {
    let px = 0
    for (let i = 1; i < points.length; i++) {
      const from = points[i - 1]!
      const to = points[i]!
      if (Math.abs(from[1] - out) < besideWallPx && Math.abs(to[1] - out) < besideWallPx)
        px += within(Math.min(from[0], to[0]), Math.max(from[0], to[0]))
    }
    return px
  }
  let hidden = 0
  for (const crown of crowns) {
    const off = Math.abs(crown[1] - out)
    if (off >= crown[2]) continue
    const half = Math.sqrt(crown[2] * crown[2] - off * off)
    hidden += within(crown[0] - half, crown[0] + half)
  }
  for (const wall of walls) hidden += alongside(wall)
  for (const flat of flats) {
    hidden += alongside(flat)
    const stretches = stretchesOn(flat, out)
    for (let i = 1; i < stretches.length; i += 2) hidden += within(stretches[i - 1]!, stretches[i]!)
  }
  return hidden
}

/** True where letters lie on a crown, steps, a fence, a mark or another slab. */
export function lettersHidden({ crowns, walls, flats, marks }: LineGround, place: LinePlace): boolean {
  const { out, middle } = place
  const half = place.lettersPx / 2 + besidePx
  const meets = ({ x, y, width, height }: Rect): boolean =>
    out > y - halfLettersPx && out < y + height + halfLettersPx && middle > x - half && middle < x + width + half
  for (const crown of crowns) {
    const beside = Math.max(0, Math.abs(crown[0] - middle) - half)
    const above = Math.max(0, Math.abs(crown[1] - out) - halfLettersPx)
    if (beside * beside + above * above < crown[2] * crown[2]) return true
  }
  if (marks.some(meets)) return true
  if (walls.length === 0 && flats.length === 0) return false
  const box = { x: middle - half, y: out - halfLettersPx, width: 2 * half, height: 2 * halfLettersPx }
  const isCrossed = (points: readonly Pt[]): boolean =>
    points.some((to, i) => i > 0 && runsThrough(box, points[i - 1]!, to))
  return walls.some(isCrossed) || flats.some(flat => isCrossed(flat) || isOn(flat, middle, out))
}

/** Where a line that stands so far out enters an outline and leaves it, in turn. */
function stretchesOn(outline: readonly Pt[], out: number): readonly number[] {
  const crossings: number[] = []
  for (let i = 1; i < outline.length; i++) {
    const from = outline[i - 1]!
    const to = outline[i]!
    if (from[1] > out !== to[1] > out)
      crossings.push(from[0] + ((to[0] - from[0]) * (out - from[1])) / (to[1] - from[1]))
  }
  return crossings.sort((p, q) => p - q)
}

const isOn = (outline: readonly Pt[], along: number, out: number): boolean =>
  stretchesOn(outline, out).filter(x => x < along).length % 2 === 1
