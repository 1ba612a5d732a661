import type { Pt } from '../../../shared/document/primitives'
import { err, type Finding, ok, type Result } from '../../../shared/problem'

export interface TapeTie {
  readonly at: Pt
  /** The third tape less the distance it should have read, meters; undefined without one. */
  readonly closingErrorM?: number
  /** The same point on the other side of the two known ones, and what the third tape says of it. */
  readonly otherSide?: { readonly at: Pt; readonly closingErrorM: number }
}

export interface ThirdTape {
  readonly from: Pt
  readonly distanceM: number
}

/** Tapes that miss each other by less have met (m). */
const touchM = 1e-9

/**
 * A point by two measured distances from two known points, on the given side of the walk from `p` to `q`; a third
 * distance gives the closing error, on either side. Along p→q at a = (d² + dP² − dQ²)/2d, off it by √(dP² − a²).
 * Refused where the tapes cannot meet, with how far they miss, and where both start from one point. Meters.
 * Source: intersection of two circles, linear-linear intersection in P. R. Wolf and C. D. Ghilani, Elementary
 * Surveying, 13th ed., 2012, chapter 11.
 */
export function tapeTie(
  p: Pt,
  q: Pt,
  dPM: number,
  dQM: number,
  side: 'left' | 'right',
  third?: ThirdTape,
): Result<TapeTie, readonly Finding[]> {
  const stop = (code: Finding['code'], values: Finding['values']) => err([{ code, severity: 'stop', values } as const])
  for (const foundM of [dPM, dQM, ...(third ? [third.distanceM] : [])])
    if (!(foundM > 0 && Number.isFinite(foundM))) return stop('badMeasure', { foundM, what: 'tape distance' })
  const apartM = Math.hypot(q[0] - p[0], q[1] - p[1])
  if (!(apartM > touchM)) return stop('tapesFromOnePoint', {})
  const shortM = apartM - dPM - dQM
  if (shortM > touchM) return stop('tapesTooShort', { gapM: shortM, apartM })
  const longM = Math.abs(dPM - dQM) - apartM
  if (longM > touchM) return stop('tapesTooLong', { gapM: longM, apartM })
  const [ux, uy] = [(q[0] - p[0]) / apartM, (q[1] - p[1]) / apartM]
  const along = (apartM + ((dPM - dQM) * (dPM + dQM)) / apartM) / 2
  const off = Math.sqrt(Math.max(0, (dPM - along) * (dPM + along))) * (side === 'left' ? 1 : -1)
  const pointAt = (offM: number): Pt => [p[0] + along * ux - offM * uy, p[1] + along * uy + offM * ux]
  const at = pointAt(off)
  if (third === undefined) return ok({ at })
  const errorAt = ([x, y]: Pt) => third.distanceM - Math.hypot(x - third.from[0], y - third.from[1])
  const other = pointAt(-off)
  return ok({ at, closingErrorM: errorAt(at), otherSide: { at: other, closingErrorM: errorAt(other) } })
}
