import type { Pt } from '../../../shared/document/primitives'
import { type Camera, type Size, toScreen } from '../camera/camera'
import { around, meet, type Rect } from '../layers/labelRoom'
import { loupePlace, loupePx } from '../loupePlace'

/** With a line of help under the boxes. */
export const boxSize = { width: 272, height: 128 }
/** Of the row of buttons under the boxes. */
export const actsHeight = 42
/** The boxes stand this far from the point, and never over it. */
const asidePx = 26
/** Where the plan leaves no room there, still this far: half a fingertip. */
const clearPx = 22
/** From the loupe. */
const besideLoupePx = 8
/** What stands over the plan at its left, its top, its right and its foot. */
const rim = { left: 92, top: 96, right: 8, foot: 62 } as const

const within = (at: number, least: number, most: number) => Math.max(least, Math.min(most, at))

const isClear = (box: Rect, at: Pt): boolean => !meet(box, around(at, 2 * clearPx, 2 * clearPx))

/** Where a prompt may need a second line, and the mark of north stands above the boxes. */
const narrowPx = 800

/** Beside the outline, under the prompt and the mark of north; on a plan too narrow for that, under all three. */
const startPlace = ({ width }: Size): readonly [left: number, top: number] =>
  width >= 212 + boxSize.width + rim.right
    ? [212, width < narrowPx ? 86 : 42]
    : [Math.max(rim.left, width - boxSize.width - rim.right), 104]

/**
 * Where the boxes stand on the plan, its left and top in pixels: beside the last point, on the side the line does not go
 * to; where that is off the plan, on the side that covers neither it nor what is aimed at, nor the loupe of a finger, and
 * of the corners that are likely next and of the points set before as few as can be. Before the first point under the
 * prompt, or at the foot of the plan while the finger or its loupe is there.
 */
export function placeEntry(
  camera: Camera,
  size: Size,
  placed: readonly Pt[],
  aimed: Pt | undefined,
  isUnderFinger = false,
): readonly [left: number, top: number] {
  const aim = aimed && toScreen(camera, aimed)
  const loupe = isUnderFinger && aim ? loupeRect(aim, size) : null
  const [last, ...earlier] = placed.map(at => toScreen(camera, at)).toReversed()
  if (!last) return beforeFirst(size, loupe && aim ? { loupe, aim } : null)
  const [x, y] = last
  const [ax, ay] = aim ?? [x + 1, y - 1]
  const { width } = boxSize
  const height = boxSize.height + actsHeight
  const widest = size.width - width - rim.right
  const lowest = size.height - height - rim.foot
  const besides = (at: number, length: number, least: number, most: number) =>
    [at - asidePx - length, at + asidePx].map(each => within(each, least, most))
  const lefts = [x, ax].flatMap(at => {
    const both = besides(at, width, rim.left, widest)
    return ax >= x ? both : both.toReversed()
  })
  const tops = [y, ay].flatMap(at => {
    const both = besides(at, height, rim.top, lowest)
    return ay >= y ? both : both.toReversed()
  })
  if (loupe) {
    lefts.push(
      within(loupe.x - besideLoupePx - width, rim.left, widest),
      within(loupe.x + loupe.width + besideLoupePx, rim.left, widest),
    )
    // Above the hand, not under it.
    tops.splice(2, 0, within(loupe.y - besideLoupePx - height, rim.top, lowest))
  }
  const wanted = nextCorners(earlier.toReversed(), last)
  const hidden = (left: number, top: number): number => {
    const box = { x: left, y: top, width, height }
    return (
      (isClear(box, last) ? 0 : 10_000) +
      (isClear(box, [ax, ay]) ? 0 : 3_000) +
      (loupe && meet(box, loupe) ? 1_000 : 0) +
      Math.min(999, 10 * wanted.filter(at => !isClear(box, at)).length + earlier.filter(at => !isClear(box, at)).length)
    )
  }
  const places = lefts.flatMap(left => tops.map(top => ({ at: [left, top] as const, hides: hidden(left, top) })))
  return places.reduce((best, each) => (each.hides < best.hides ? each : best)).at
}

/** The corners a hand is most likely to go to: the first, which closes the shape, and the one across from it. */
function nextCorners([first, ...between]: readonly Pt[], last: Pt): readonly Pt[] {
  const before = between.at(-1)
  if (!first || !before) return first ? [first] : []
  return [first, [first[0] + last[0] - before[0], first[1] + last[1] - before[1]]]
}

function loupeRect(aim: Pt, size: Size): Rect {
  const [x, y] = loupePlace(aim, size)
  return { x, y, width: loupePx, height: loupePx }
}

function beforeFirst(
  size: Size,
  hand: { readonly loupe: Rect; readonly aim: Pt } | null,
): readonly [left: number, top: number] {
  const [left, top] = startPlace(size)
  const box = { x: left, y: top, ...boxSize }
  const isHidden = hand !== null && (meet(box, hand.loupe) || !isClear(box, hand.aim))
  return isHidden ? [left, Math.max(top, size.height - boxSize.height - actsHeight - rim.foot)] : [left, top]
}
