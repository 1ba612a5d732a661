import type { Pt } from '../../../shared/document/primitives'
import { type Camera, type Size, toScreen } from '../camera/camera'

/** With a line of help under the boxes. */
export const boxSize = { width: 272, height: 128 }
/** Of the row of buttons under the boxes. */
export const actsHeight = 42
/** The boxes stand this far from the point, and never over it. */
const asidePx = 26
/** Where the plan leaves no room there, still this far: half a fingertip. */
const clearPx = 22

/** Where a prompt may need a second line. */
const narrowPx = 800

/** Beside the outline, under the prompt; on a plan too narrow for that, under both. */
const startPlace = ({ width }: Size): readonly [left: number, top: number] =>
  width >= 212 + boxSize.width + 8 ? [212, width < narrowPx ? 64 : 42] : [Math.max(92, width - boxSize.width - 8), 104]

/**
 * Where the boxes stand on the plan, its left and top in pixels: beside the last point, on the side the line does not go
 * to; where that is off the plan, on the side that covers neither it nor what is aimed at. Before the first point, under
 * the prompt beside the outline.
 */
export function placeEntry(
  camera: Camera,
  size: Size,
  last: Pt | undefined,
  aimed: Pt | undefined,
): readonly [left: number, top: number] {
  if (!last) return startPlace(size)
  const [x, y] = toScreen(camera, last)
  const [ax, ay] = aimed ? toScreen(camera, aimed) : [x + 1, y - 1]
  const { width } = boxSize
  const height = boxSize.height + actsHeight
  const within = (at: number, least: number, most: number) => Math.max(least, Math.min(most, at))
  const besides = (at: number, length: number, whole: number, least: number, foot: number) =>
    [at - asidePx - length, at + asidePx].map(each => within(each, least, whole - length - foot))
  const lefts = [x, ax].flatMap(at => {
    const both = besides(at, width, size.width, 92, 8)
    return ax >= x ? both : both.toReversed()
  })
  const tops = [y, ay].flatMap(at => {
    const both = besides(at, height, size.height, 76, 62)
    return ay >= y ? both : both.toReversed()
  })
  const isClear = (left: number, top: number, px: number, py: number) =>
    px <= left - clearPx || px >= left + width + clearPx || py <= top - clearPx || py >= top + height + clearPx
  const places = lefts.flatMap(left => tops.map(top => [left, top] as const))
  return (
    places.find(place => isClear(...place, x, y) && isClear(...place, ax, ay)) ??
    places.find(place => isClear(...place, x, y)) ??
    places[0]!
  )
}
