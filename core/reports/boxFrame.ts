import { pointBounds } from '../geometry/bounds'
import type { CurveRing } from '../geometry/curve'
import { flattenRing } from '../geometry/flattenRing'
import type { Frame } from './frame'
import type { PageRect } from './layer'

/** The frame that shows the outlines in the middle of a box of the page, as large as `padPt` on each side allows. */
export function boxFrame(outlines: readonly CurveRing[], box: PageRect, padPt: number): Frame {
  const b = pointBounds(outlines.flatMap(ring => flattenRing(ring)))
  const ptPerM = Math.min((box.width - 2 * padPt) / (b.maxX - b.minX), (box.height - 2 * padPt) / (b.maxY - b.minY))
  return {
    ptPerM,
    originPt: [
      box.x + box.width / 2 - ((b.minX + b.maxX) / 2) * ptPerM,
      box.y + box.height / 2 + ((b.minY + b.maxY) / 2) * ptPerM,
    ],
  }
}
