/** Where a dimension stands on the screen: for the pen that draws it, and for the box that is typed over it. */
import { ringBounds } from '../../../core/geometry/bounds'
import type { CurveRing } from '../../../core/geometry/curve'
import { ringArea } from '../../../core/geometry/ringArea'
import { type ArcDimension, isRounding, type LineDimension } from '../../../core/reports/dimensions'
import type { Id, Pt } from '../../../shared/document/primitives'
import { type Camera, toScreen } from '../camera/camera'

/** A ring, or the line of a fence, whose dimensions stand on the plan, and what it is called. */
export interface DimensionedRing {
  readonly ring: CurveRing
  readonly name: string
  /** The wall or fence whose points, in order, the edges join. */
  readonly wallId?: Id
}

/** How far outside the slab a dimension line stands. */
export const outPx = 30
/** An arc seen smaller than this is left to the ledger. */
const leastRadiusPx = 22
const leastArcPx = 90

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
  /** Unit direction of travel, and the unit normal that leaves the slab. */
  readonly u: Pt
  readonly n: Pt
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
): PlacedLine {
  const [a, b] = [toScreen(camera, from), toScreen(camera, to)]
  const longPx = Math.hypot(b[0] - a[0], b[1] - a[1])
  const u: Pt = longPx === 0 ? [1, 0] : [(b[0] - a[0]) / longPx, (b[1] - a[1]) / longPx]
  // The concrete is on the left of travel; the screen's y runs down.
  const n: Pt = [-u[1] * outwards, u[0] * outwards]
  const half = lettersPx / 2 + crossingPx
  const [least, most] = [inwardAt[0] ? outPx + half : 0, longPx - (inwardAt[1] ? outPx + half : 0)]
  const along = least > most ? longPx / 2 : Math.max(least, Math.min(most, longPx / 2))
  const at: Pt = [a[0] + u[0] * along + n[0] * outPx, a[1] + u[1] * along + n[1] * outPx]
  return { a, b, longPx, u, n, at, upright: Math.abs(u[1]) > Math.abs(u[0]) }
}

export interface PlacedArc {
  /** The line of the radius, from the arc to the letters. */
  readonly rim: Pt
  readonly foot: Pt
  /** The foot lies on the slab, not beside it. */
  readonly inside: boolean
  /** + = the letters stand to the right of the foot. */
  readonly side: 1 | -1
  /** The letters stand below the foot, in its middle: beside it a marked point is in their way. */
  readonly under: boolean
  /** The line along the arc outside the slab; null for a rounded corner, a whole circle, or where there is no room. */
  readonly along: PlacedAlong | null
}

export interface PlacedAlong {
  readonly center: Pt
  readonly radiusPx: number
  /** Angles on the screen, clockwise. */
  readonly start: number
  readonly sweep: number
  /** + = the line lies farther from the center than the edge. */
  readonly out: 1 | -1
  readonly at: Pt
  /** Unit direction of the arc at the letters. */
  readonly u: Pt
}

/** How far from the arc its radius is written, the farthest first. */
const reachesPx = [70, 48, 26, 14] as const
/** What the letters of a radius and half a flag take up about the middle of the letters. */
const keptClear = { acrossPx: 36, highPx: 18 } as const
/** The foot itself keeps this far from a flag. */
const footPx = 9
/** Letters under the foot stand this far below it. */
const underPx = 18
/** Letters beside the foot begin this far from it. */
const besidePx = 14
/** A radius takes about so much; how wide it really is, is known once it is lettered. */
const usualLettersPx = 48

/** `flags`: marked points of the plan, which the letters of a radius keep off. */
export function placeArc(dimension: ArcDimension, camera: Camera, flags: readonly Pt[] = []): PlacedArc | null {
  const { center, radiusM, middle, outward } = dimension
  const radiusPx = radiusM * camera.zoom
  if (radiusPx < leastRadiusPx) return null
  const rim = toScreen(camera, middle)
  const isConvex = (middle[0] - center[0]) * outward[0] + (middle[1] - center[1]) * outward[1] > 0
  const direction: Pt = isConvex ? [-outward[0], outward[1]] : [outward[0], -outward[1]]
  const side = direction[0] >= 0 ? 1 : -1
  const seen = flags.map(at => toScreen(camera, at))
  const footAt = (px: number): Pt => {
    const reach = Math.min(radiusPx, px)
    return [rim[0] + direction[0] * reach, rim[1] + direction[1] * reach]
  }
  // A flag stands on its point, 14 px high.
  const standsClear = ({ foot: [x, y] }: { readonly foot: Pt }): boolean =>
    seen.every(([fx, fy]) => Math.abs(fx - x) > footPx || Math.abs(fy - 7 - y) > footPx + 7)
  const readsClear = (spot: { readonly foot: Pt; readonly under: boolean }): boolean => {
    const letters = radiusLetters({ ...spot, side }, usualLettersPx)
    return seen.every(
      ([fx, fy]) => Math.abs(fx - letters[0]) > keptClear.acrossPx || Math.abs(fy - 7 - letters[1]) > keptClear.highPx,
    )
  }
  const spots = [false, true].flatMap(under => reachesPx.map(px => ({ foot: footAt(px), under })))
  return {
    rim,
    ...(spots.find(spot => standsClear(spot) && readsClear(spot)) ?? spots.find(standsClear) ?? spots[0]!),
    inside: isConvex,
    side,
    along: placeAlong(dimension, camera, isConvex),
  }
}

/** The middle of the letters of a radius that are this wide: beside the foot, or under it. */
export const radiusLetters = (
  { foot: [x, y], side, under }: Pick<PlacedArc, 'foot' | 'side' | 'under'>,
  widthPx: number,
): Pt => (under ? [x, y + underPx] : [x + side * (besidePx + widthPx / 2), y])

function placeAlong(dimension: ArcDimension, camera: Camera, isConvex: boolean): PlacedAlong | null {
  const { edgeIds, center: middle, radiusM, lengthM, startRad, sweepRad, wholeCircle } = dimension
  const radiusPx = radiusM * camera.zoom + (isConvex ? outPx : -outPx)
  if (wholeCircle || edgeIds.some(edgeId => isRounding({ edgeId })) || lengthM * camera.zoom < leastArcPx) return null
  if (radiusPx < 2 * outPx) return null
  const center = toScreen(camera, middle)
  const [start, sweep] = [-startRad, -sweepRad]
  // An arc that bends inwards has its radius written on the same side: the letters keep clear of its line.
  const angle = start + sweep * (isConvex ? 0.5 : 0.25)
  const turn = Math.sign(sweep)
  return {
    center,
    radiusPx,
    start,
    sweep,
    out: isConvex ? 1 : -1,
    at: [center[0] + radiusPx * Math.cos(angle), center[1] + radiusPx * Math.sin(angle)],
    u: [-Math.sin(angle) * turn, Math.cos(angle) * turn],
  }
}
