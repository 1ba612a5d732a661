/** Where the dimension of a straight edge stands on the screen. */
import { type Box, boxesMeet, pointBounds, ringBounds } from '../../../core/geometry/bounds'
import { ringContains } from '../../../core/geometry/contains'
import type { CurveRing } from '../../../core/geometry/curve'
import { ringArea } from '../../../core/geometry/ringArea'
import type { LineDimension } from '../../../core/reports/dimensions'
import type { Id, Pt } from '../../../shared/document/primitives'
import { type Camera, toPlan, toScreen } from '../camera/camera'
import type { DimensionGround } from './dimensionGround'
import { halfLettersPx, lettersHidden, lineGround, linePxHidden, type NearGround } from './lineGround'
import { mostMarkPx } from './markSizes'

/** A ring, or the line of a fence, whose dimensions stand on the plan, and what it is called. */
export interface DimensionedRing {
  readonly ring: CurveRing
  readonly name: string
  /** The wall or fence whose points, in order, the edges join. */
  readonly wallId?: Id
}

/** How far outside the slab a dimension line stands. */
export const outPx = 30

export interface LineSurroundings {
  /** At its start and at its end. */
  readonly inwardAt: readonly [boolean, boolean]
  readonly outwards: 1 | -1
  readonly lettersPx: number
}

const turnsInward = new WeakMap<CurveRing, ReadonlyMap<string, readonly [boolean, boolean]>>()

/** At which ends of its straight edges a ring turns to the right, away from the concrete: by the id of the edge. */
function inwardEnds(ring: CurveRing): ReadonlyMap<string, readonly [boolean, boolean]> {
  const known = turnsInward.get(ring)
  if (known) return known
  const turnsRight = (p: CurveRing[number], q: CurveRing[number]): boolean => {
    if (p.arc || q.arc) return false
    const [ux, uy] = [p.to[0] - p.from[0], p.to[1] - p.from[1]]
    const [vx, vy] = [q.to[0] - q.from[0], q.to[1] - q.from[1]]
    return ux * vy - uy * vx < -0.3 * Math.hypot(ux, uy) * Math.hypot(vx, vy)
  }
  const made = new Map(
    ring.map((edge, i) => [
      edge.edgeId,
      [turnsRight(ring.at(i - 1)!, edge), turnsRight(edge, ring[(i + 1) % ring.length]!)] as const,
    ]),
  )
  turnsInward.set(ring, made)
  return made
}

/** Across an opening narrower than this its dimensions stand around it, on the slab. */
const narrowPx = 150

/** What is around the dimension of a straight edge of a ring. */
export function surroundingsOf(
  { ring, wallId }: DimensionedRing,
  { edgeId }: LineDimension,
  camera: Camera,
  lettersPx: number,
): LineSurroundings {
  if (wallId !== undefined) return { inwardAt: [false, false], outwards: 1, lettersPx }
  if (ringArea(ring) < 0) {
    const { minX, maxX, minY, maxY } = ringBounds(ring)
    const isNarrow = Math.min(maxX - minX, maxY - minY) * camera.zoom < narrowPx
    if (isNarrow) return { inwardAt: [false, false], outwards: -1, lettersPx }
  }
  return { inwardAt: inwardEnds(ring).get(edgeId) ?? [false, false], outwards: 1, lettersPx }
}

export interface PlacedLine {
  readonly a: Pt
  readonly b: Pt
  readonly longPx: number
  /** Unit direction of travel, and the unit normal towards the dimension line. */
  readonly u: Pt
  readonly n: Pt
  /** How far from the edge the line stands. */
  readonly outPx: number
  /** The line lies on the concrete of the ring, or on that around an opening. */
  readonly onSlab: boolean
  /** The middle of the letters. */
  readonly at: Pt
  readonly upright: boolean
}

/** Where dimension lines of neighbors cross, letters keep this far from the crossing. */
const crossingPx = 14

/**
 * `letters` is how long they are. Where the outline turns inwards at an end (`inwardAt`) the neighbor's line crosses
 * this one, and the letters make way. `outwards` < 0 puts the line on the concrete's side.
 */
export function placeLine(
  { from, to }: LineDimension,
  camera: Camera,
  { inwardAt, outwards, lettersPx }: LineSurroundings = { inwardAt: [false, false], outwards: 1, lettersPx: 0 },
  { out = outPx, slide = 0 }: LineWish = {},
): PlacedLine {
  const [a, b] = [toScreen(camera, from), toScreen(camera, to)]
  const longPx = Math.hypot(b[0] - a[0], b[1] - a[1])
  const u: Pt = longPx === 0 ? [1, 0] : [(b[0] - a[0]) / longPx, (b[1] - a[1]) / longPx]
  // The concrete is on the left of travel; the screen's y runs down.
  const n: Pt = [-u[1] * outwards, u[0] * outwards]
  const along = lettersAlong(longPx, inwardAt, lettersPx, slide)
  const at: Pt = [a[0] + u[0] * along + n[0] * out, a[1] + u[1] * along + n[1] * out]
  return { a, b, longPx, u, n, outPx: out, onSlab: outwards < 0, at, upright: Math.abs(u[1]) > Math.abs(u[0]) }
}

/** Where along a line the middle of its letters stands. */
function lettersAlong(
  longPx: number,
  inwardAt: LineSurroundings['inwardAt'],
  lettersPx: number,
  slide: number,
): number {
  const half = lettersPx / 2 + crossingPx
  const least = inwardAt[0] ? outPx + half : 0
  const most = longPx - (inwardAt[1] ? outPx + half : 0)
  return least > most ? longPx / 2 : Math.max(least, Math.min(most, longPx * (0.5 + slide)))
}

interface LineWish {
  readonly out?: number
  /** How far the letters stand from the middle, as a share of the line. */
  readonly slide?: number
}

/** What a place is worse by, in pixels of a line that lies on something: letters on something, a line on the slab. */
export const lettersOnPx = 160
export const onSlabPx = 90
export const slidPx = 15
const slides = [0, 0.22, -0.22] as const
/** Farther than this from its edge a line is no longer read with it. */
export const outsPx = [outPx, 52, 74, 96] as const

/** Places to try, the likeliest first: none is better than what it is worse by. */
const places = slides
  .flatMap(slide => {
    const slid = slide === 0 ? 0 : slidPx
    return [
      ...outsPx.map(out => ({ slide, out, onSlab: false, worsePx: out - outPx + slid })),
      { slide, out: outPx, onSlab: true, worsePx: onSlabPx + slid },
    ]
  })
  .toSorted((p, q) => p.worsePx - q.worsePx)

/** A line on the slab needs that there is concrete under it, and a little beyond. */
function hasConcrete(ring: CurveRing, placed: PlacedLine, camera: Camera): boolean {
  const { a, longPx, u, n } = placed
  return [0.08, 0.5, 0.92].every(t =>
    ringContains(
      ring,
      toPlan(camera, [
        a[0] + u[0] * longPx * t + n[0] * (outPx + crossingPx),
        a[1] + u[1] * longPx * t + n[1] * (outPx + crossingPx),
      ]),
    ),
  )
}

/** How far from what it measures a dimension can come to lie. */
const reachOf = (camera: Camera, lettersPx: number): number =>
  (outsPx[3] + halfLettersPx + crossingPx + lettersPx) / camera.zoom

/** The slabs beside a box which the ring that is measured is no edge of. */
export function neighborsOf(
  { ring }: DimensionedRing,
  box: Box,
  slabs: readonly CurveRing[],
  camera: Camera,
  lettersPx: number,
): readonly CurveRing[] {
  if (slabs.length < 2) return noRings
  const reachM = reachOf(camera, lettersPx)
  const near = slabs.filter(other => other !== ring && boxesMeet(ringBounds(other), box, reachM))
  // An opening or an inset lies on its own slab.
  return near.length === 0 ? noRings : near.filter(other => !ringContains(other, ring[0]!.from))
}

const noRings: readonly CurveRing[] = []

/** How long the letters of a dimension are, and what stands about it. */
export interface LineSight {
  readonly near: NearGround
  readonly camera: Camera
  readonly lettersPx: number
}

/** What of the ground the dimension of a line or an arc with this box can come near, wherever it stands. */
export function groundNear(
  box: Box,
  ground: DimensionGround,
  neighbors: readonly CurveRing[],
  camera: Camera,
  lettersPx: number,
): NearGround {
  const reachM = reachOf(camera, lettersPx)
  const isNear = (at: Pt, marginM: number): boolean =>
    at[0] > box.minX - marginM && at[0] < box.maxX + marginM && at[1] > box.minY - marginM && at[1] < box.maxY + marginM
  const comesNear = (points: readonly Pt[]): boolean => boxesMeet(pointBounds(points), box, reachM)
  return {
    neighbors,
    flags: ground.flags.filter(at => isNear(at, reachM)),
    crowns: ground.crowns.filter(({ at, radiusM }) => isNear(at, reachM + radiusM)),
    steps: ground.steps.filter(comesNear),
    walls: ground.walls.filter(comesNear),
    marks: ground.marks.filter(({ at }) => isNear(at, reachM + mostMarkPx / camera.zoom)),
  }
}

/**
 * A straight dimension clear of crowns, steps, fences, marks and other slabs as far as it can be: its letters along the
 * line, the line farther out, or on the slab.
 */
export function placeClear(
  dimensioned: DimensionedRing,
  dimension: LineDimension,
  { near, camera, lettersPx }: LineSight,
): PlacedLine {
  const surroundings = surroundingsOf(dimensioned, dimension, camera, lettersPx)
  const inside = { ...surroundings, inwardAt: [false, false], outwards: -1 } as const
  const mayLieInside = dimensioned.wallId === undefined && surroundings.outwards > 0 && ringArea(dimensioned.ring) >= 0
  let best = placeLine(dimension, camera, surroundings)
  const { longPx } = best
  // Seen from outside, whichever side the line of an opening stands on.
  const ground = lineGround(placeLine(dimension, camera), near, camera)
  let least = Infinity
  for (const { slide, out, onSlab, worsePx } of places) {
    if (worsePx >= least) break
    if (onSlab && !mayLieInside) continue
    const side = onSlab ? inside : surroundings
    const middle = lettersAlong(longPx, side.inwardAt, lettersPx, slide)
    const place = { longPx, middle, lettersPx, out: out * side.outwards }
    const cost = worsePx + linePxHidden(ground, place) + (lettersHidden(ground, place) ? lettersOnPx : 0)
    if (cost >= least) continue
    const placed = placeLine(dimension, camera, side, { out, slide })
    if (onSlab && !hasConcrete(dimensioned.ring, placed, camera)) continue
    best = placed
    least = cost
  }
  return best
}
