import type { Pt } from '../../shared/document/primitives'
import type { Size } from './camera/camera'

/** The side of the loupe on the screen, in pixels. */
export const loupePx = 112
/** How far its edge stays from the point it shows. */
const asidePx = 56

/** Its left and top in pixels of the plan: above the fingertip, or beside it where there is no room above. */
export function loupePlace([x, y]: Pt, { width }: Size): readonly [left: number, top: number] {
  const isRoomAbove = y - asidePx - loupePx > 0
  const beside = x > width / 2 ? x - asidePx - loupePx : x + asidePx
  const left = isRoomAbove ? Math.max(0, Math.min(x - loupePx / 2, width - loupePx)) : beside
  return [left, isRoomAbove ? y - asidePx - loupePx : Math.max(0, y - loupePx / 2)]
}
