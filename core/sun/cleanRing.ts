import type { Pt } from '../../shared/document/primitives'
import type { Ring } from '../geometry/curve'
import { flatRingArea } from '../geometry/flatArea'

/** A corner nearer than this to the line through its neighbors is none. */
const straightM = 1e-6

const isCorner = ([px, py]: Pt, [x, y]: Pt, [nx, ny]: Pt): boolean => {
  const length = Math.hypot(nx - px, ny - py)
  const offM = length === 0 ? 0 : Math.abs((nx - px) * (y - py) - (ny - py) * (x - px)) / length
  return offM > straightM
}

/** The ring counter-clockwise without repeated points and without corners on a straight line. */
export const cleanRing = (ring: Ring): Ring => {
  let points = flatRingArea(ring) < 0 ? [...ring].reverse() : [...ring]
  for (;;) {
    const kept: Pt[] = []
    for (let i = 0; i < points.length; i++) {
      const before = kept.at(-1) ?? points.at(-1)!
      if (isCorner(before, points[i]!, points[(i + 1) % points.length]!)) kept.push(points[i]!)
    }
    if (kept.length === points.length || kept.length < 3) return kept
    points = kept
  }
}
