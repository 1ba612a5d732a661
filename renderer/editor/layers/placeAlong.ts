/** Where the length of an arc stands on the screen: a line alongside it, as a straight dimension is to its edge. */
import { edgeBounds, joinBounds } from '../../../core/geometry/bounds'
import { ringContains } from '../../../core/geometry/contains'
import { type ArcDimension, isRounding } from '../../../core/reports/dimensions'
import type { Measures } from '../../../core/units/measures'
import type { Pt } from '../../../shared/document/primitives'
import { toPlan, toScreen } from '../camera/camera'
import { lettersHidden, lineGround, linePxHidden } from './lineGround'
import { type DimensionedRing, type LineSight, lettersOnPx, onSlabPx, outPx, outsPx, slidPx } from './placeLine'

/** A shorter arc is left to the ledger. */
const leastArcPx = 90

export interface PlacedAlong {
  readonly center: Pt
  readonly radiusPx: number
  /** Angles on the screen, clockwise. */
  readonly start: number
  readonly sweep: number
  /** How far from the edge the line stands; + = farther from the center than the edge. */
  readonly outPx: number
  /** The line lies on the concrete of the ring. */
  readonly onSlab: boolean
  readonly at: Pt
  /** Unit direction of the arc at the letters. */
  readonly u: Pt
}

/** What stands on the plan along an arc: the box that is typed over says the same. */
export const alongWords = (print: Measures, lengthM: number): string => `${print.length(lengthM)} along`

/** True where the arc bends outwards, away from the concrete. */
export const isConvexArc = ({ center, middle, outward }: ArcDimension): boolean =>
  (middle[0] - center[0]) * outward[0] + (middle[1] - center[1]) * outward[1] > 0

/** Shares of the arc at which the letters stand where they have the side to themselves, and beside a radius. */
const freeShares = [0.5, 0.28, 0.72] as const
const besideShares = [0.25, 0.75] as const

/** Away from its arc a line grows longer, and bends about what stands beside: it is worse by so much of the way out. */
const awayShare = 2
const arcOnSlabPx = 2 * onSlabPx

interface AlongPlace {
  readonly onSlab: boolean
  readonly out: number
  readonly share: number
  readonly worsePx: number
}

/** The likeliest first. The radius is written towards the center: on the slab of an arc that bends outwards. */
function placesOf(isConvex: boolean): readonly AlongPlace[] {
  const shares = (onSlab: boolean) => (onSlab === isConvex ? besideShares : freeShares)
  const at = (onSlab: boolean, out: number, worsePx: number): readonly AlongPlace[] =>
    shares(onSlab).map((share, i) => ({ onSlab, out, share, worsePx: worsePx + (i === 0 ? 0 : slidPx) }))
  return [
    ...outsPx.flatMap(out => at(false, out, awayShare * (out - outPx))),
    ...at(true, outPx, arcOnSlabPx),
  ].toSorted((p, q) => p.worsePx - q.worsePx)
}
const convexPlaces = placesOf(true)
const concavePlaces = placesOf(false)

/** A piece of the arc this long is as good as straight. */
const piecePx = 40

/** How much of the line along an arc, and whether its letters, lie on something. */
function hiddenAlong(placed: PlacedAlong, { near, camera, lettersPx }: LineSight) {
  const { center, radiusPx, start, sweep, at, u } = placed
  const on = (angle: number): Pt => [center[0] + radiusPx * Math.cos(angle), center[1] + radiusPx * Math.sin(angle)]
  const seenFrom = (a: Pt, b: Pt) => {
    const longPx = Math.hypot(b[0] - a[0], b[1] - a[1])
    const [ux, uy] = [(b[0] - a[0]) / longPx, (b[1] - a[1]) / longPx]
    return {
      ground: lineGround({ a, u: [ux, uy], n: [-uy, ux] }, near, camera),
      place: { longPx, out: 0, middle: longPx / 2, lettersPx },
    }
  }
  const pieces = Math.max(1, Math.ceil((Math.abs(sweep) * radiusPx) / piecePx))
  let linePx = 0
  for (let i = 0; i < pieces; i++) {
    const { ground, place } = seenFrom(on(start + (sweep * i) / pieces), on(start + (sweep * (i + 1)) / pieces))
    linePx += linePxHidden(ground, place)
  }
  const half = lettersPx / 2
  const { ground, place } = seenFrom(
    [at[0] - u[0] * half, at[1] - u[1] * half],
    [at[0] + u[0] * half, at[1] + u[1] * half],
  )
  return { linePx, letters: lettersHidden(ground, place) }
}

/**
 * The length of an arc, clear of what stands around as a straight dimension is: its letters along the line, the line
 * farther out, or on the slab. Null for a rounded corner, a whole circle, and where there is no room.
 */
export function placeAlong(of: DimensionedRing, dimension: ArcDimension, sight: LineSight): PlacedAlong | null {
  const { edgeIds, center: middle, radiusM, lengthM, startRad, sweepRad, wholeCircle } = dimension
  const { camera } = sight
  if (wholeCircle || edgeIds.some(edgeId => isRounding({ edgeId })) || lengthM * camera.zoom < leastArcPx) return null
  const isConvex = isConvexArc(dimension)
  const center = toScreen(camera, middle)
  const [start, sweep] = [-startRad, -sweepRad]
  const turn = Math.sign(sweep)
  const hasConcrete = (px: number): boolean =>
    [0.08, 0.5, 0.92].every(t => {
      const angle = start + sweep * t
      return ringContains(of.ring, toPlan(camera, [center[0] + px * Math.cos(angle), center[1] + px * Math.sin(angle)]))
    })
  let best: PlacedAlong | null = null
  let least = Infinity
  for (const { onSlab, out, share, worsePx } of isConvex ? convexPlaces : concavePlaces) {
    if (worsePx >= least) break
    const away = onSlab === isConvex ? -out : out
    const radiusPx = radiusM * camera.zoom + away
    if (radiusPx < 2 * outPx || (onSlab && (of.wallId !== undefined || !hasConcrete(radiusPx)))) continue
    const angle = start + sweep * share
    const placed: PlacedAlong = {
      center,
      radiusPx,
      start,
      sweep,
      outPx: away,
      onSlab,
      at: [center[0] + radiusPx * Math.cos(angle), center[1] + radiusPx * Math.sin(angle)],
      u: [-Math.sin(angle) * turn, Math.cos(angle) * turn],
    }
    const { linePx, letters } = hiddenAlong(placed, sight)
    const cost = linePx + (letters ? lettersOnPx : 0) + worsePx
    if (cost < least) [best, least] = [placed, cost]
  }
  return best
}

/** What an arc takes up on the plan. */
export const arcBox = ({ ring }: DimensionedRing, { edgeIds }: ArcDimension) =>
  joinBounds(ring.filter(({ edgeId }) => edgeIds.includes(edgeId)).map(edgeBounds))
