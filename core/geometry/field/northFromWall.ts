import type { Pt } from '../../../shared/document/primitives'
import { err, type Finding, ok, type Result } from '../../../shared/problem'

/** A needle points to magnetic north; declination is + where that lies east of true north, degrees. */
export type Bearing =
  | { readonly kind: 'true'; readonly deg: number }
  | { readonly kind: 'compass'; readonly deg: number; readonly declinationDeg: number }

/** Clockwise angle from drawing-up of the direction a→b, 0 ≤ … < 360. */
export const headingOf = (a: Pt, b: Pt): number => ((Math.atan2(b[0] - a[0], b[1] - a[1]) * 180) / Math.PI + 360) % 360

/** The site's `northDeg` from the bearing of a line looking from `a` to `b`: its heading in the drawing less its true
 * bearing, 0 ≤ … < 360. True bearing = compass bearing + declination. */
export function northFromWall(a: Pt, b: Pt, bearing: Bearing): Result<number, readonly Finding[]> {
  const lengthM = Math.hypot(b[0] - a[0], b[1] - a[1])
  if (!(lengthM > 0))
    return err([{ code: 'badMeasure', severity: 'stop', values: { foundM: lengthM, what: 'length of a wall' } }])
  const trueDeg = bearing.kind === 'true' ? bearing.deg : bearing.deg + bearing.declinationDeg
  if (!Number.isFinite(trueDeg))
    return err([{ code: 'badMeasure', severity: 'stop', values: { found: trueDeg, what: 'bearing' } }])
  return ok((((headingOf(a, b) - trueDeg) % 360) + 360) % 360)
}
