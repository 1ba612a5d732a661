import { convexHull } from './convexHull'
import type { Ring } from './curve'

export interface MinAreaRectangle {
  /** The longer side. */
  readonly lengthM: number
  readonly widthM: number
  /** Length ÷ width, ≥ 1. */
  readonly aspect: number
  /** Direction of the length, counter-clockwise from +x, in [0, π). */
  readonly angleRad: number
}

/**
 * The smallest rectangle around a ring; one of its sides lies on a side of the convex hull.
 * Source: H. Freeman and R. Shapira, "Determining the minimum-area encasing rectangle for an arbitrary closed curve",
 * Comm. ACM 18 (1975). The ring must have an area.
 */
export function minAreaRectangle(ring: Ring): MinAreaRectangle {
  const hull = convexHull(ring)
  let least = Infinity
  let best = { lengthM: 0, widthM: 0, aspect: 1, angleRad: 0 }
  hull.forEach((p, i) => {
    const q = hull[(i + 1) % hull.length]!
    const side = Math.hypot(q[0] - p[0], q[1] - p[1])
    const ux = (q[0] - p[0]) / side
    const uy = (q[1] - p[1]) / side
    let low = Infinity
    let high = -Infinity
    let deep = 0
    for (const [x, y] of hull) {
      const along = (x - p[0]) * ux + (y - p[1]) * uy
      low = Math.min(low, along)
      high = Math.max(high, along)
      deep = Math.max(deep, (y - p[1]) * ux - (x - p[0]) * uy)
    }
    const wide = high - low
    // a later rectangle must be smaller by more than rounding, so that the same shape turned gives the same answer
    if (wide * deep >= least * (1 - 1e-12)) return
    least = wide * deep
    const lengthM = Math.max(wide, deep)
    const widthM = Math.min(wide, deep)
    const turn = Math.atan2(uy, ux) + (wide >= deep ? 0 : Math.PI / 2)
    best = { lengthM, widthM, aspect: lengthM / widthM, angleRad: ((turn % Math.PI) + Math.PI) % Math.PI }
  })
  return best
}
