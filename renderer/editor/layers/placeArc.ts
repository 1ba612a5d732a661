/** Where the radius of an arc and the width of a circle stand on the screen. */
import type { ArcDimension } from '../../../core/reports/dimensions'
import type { Pt } from '../../../shared/document/primitives'
import { type Camera, toScreen } from '../camera/camera'
import { around, meet, type Rect, runsThrough } from './labelRoom'
import { isConvexArc } from './placeAlong'

/** An arc seen smaller than this is left to the ledger. */
const leastRadiusPx = 22

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
  /** About what its letters take up. */
  readonly letters: Rect
}

/** How far from the arc its radius is written, the farthest first. */
const reachesPx = [70, 48, 26, 14] as const
/** Letters and a flag stand so far apart, from the middle of the flag to the end and to the middle of the letters. */
const keptClear = { beyondPx: 12, highPx: 18 } as const
/** The foot itself keeps this far from a flag. */
const footPx = 9
/** Letters under the foot stand this far below it. */
const underPx = 18
/** Letters beside the foot begin this far from it. */
const besidePx = 14
/** A radius takes about so much, and a whole circle; how wide they really are, is known once they are lettered. */
const usualLettersPx = 48
const acrossLettersPx = 88
const lettersHighPx = 24

type Spot = Pick<PlacedArc, 'foot' | 'under' | 'side'>

/** A straight dimension as it stands, with the edge that it measures. */
export interface StandingLine {
  readonly line: readonly [Pt, Pt]
  readonly edge: readonly [Pt, Pt]
  readonly letters: Rect
}

/**
 * `flags`: marked points of the plan, which the letters of a radius keep off; `lines`: the dimensions of straight edges,
 * which they keep off where they can, and rather off the edges too; `taken`: the letters of other arcs.
 */
export function placeArc(
  dimension: ArcDimension,
  camera: Camera,
  flags: readonly Pt[] = [],
  lines: readonly StandingLine[] = [],
  taken: readonly Rect[] = [],
): PlacedArc | null {
  const { radiusM, middle, outward, wholeCircle } = dimension
  const radiusPx = radiusM * camera.zoom
  if (radiusPx < leastRadiusPx) return null
  const rim = toScreen(camera, middle)
  const isConvex = isConvexArc(dimension)
  const direction: Pt = isConvex ? [-outward[0], outward[1]] : [outward[0], -outward[1]]
  const natural = direction[0] >= 0 ? 1 : -1
  const seen = flags.map(at => toScreen(camera, at))
  const wide = wholeCircle ? acrossLettersPx : usualLettersPx
  const footAt = (px: number): Pt => {
    const reach = Math.min(radiusPx, px)
    return [rim[0] + direction[0] * reach, rim[1] + direction[1] * reach]
  }
  // A flag stands on its point, 14 px high.
  const standsClear = ({ foot: [x, y] }: Spot): boolean =>
    seen.every(([fx, fy]) => Math.abs(fx - x) > footPx || Math.abs(fy - 7 - y) > footPx + 7)
  const readsClear = (spot: Spot): boolean => {
    const letters = radiusLetters(spot, wide)
    return seen.every(
      ([fx, fy]) =>
        Math.abs(fx - letters[0]) > wide / 2 + keptClear.beyondPx || Math.abs(fy - 7 - letters[1]) > keptClear.highPx,
    )
  }
  const lettersOf = (spot: Spot) => around(radiusLetters(spot, wide), wide + 10, lettersHighPx)
  const keepsOffLines = (spot: Spot): boolean => {
    const letters = lettersOf(spot)
    return (
      taken.every(theirs => !meet(letters, theirs)) &&
      lines.every(({ line: [from, to], letters: theirs }) => !meet(letters, theirs) && !runsThrough(letters, from, to))
    )
  }
  const keepsOffEdges = (spot: Spot): boolean =>
    lines.every(({ edge: [from, to] }) => !runsThrough(lettersOf(spot), from, to))
  const spots = ([natural, -natural] as const).flatMap(side =>
    [false, true].flatMap(under => reachesPx.map((px): Spot => ({ foot: footAt(px), under, side: side as 1 | -1 }))),
  )
  const clear = spots.filter(spot => standsClear(spot) && readsClear(spot))
  const spot =
    clear.find(each => keepsOffLines(each) && keepsOffEdges(each)) ??
    clear.find(keepsOffLines) ??
    clear[0] ??
    spots.find(standsClear) ??
    spots[0]!
  return { rim, ...spot, inside: isConvex, letters: lettersOf(spot) }
}

/** The middle of the letters of a radius that are this wide: beside the foot, or under it. */
export const radiusLetters = (
  { foot: [x, y], side, under }: Pick<PlacedArc, 'foot' | 'side' | 'under'>,
  widthPx: number,
): Pt => (under ? [x, y + underPx] : [x + side * (besidePx + widthPx / 2), y])
