/** Sun height through the site day, and the hours worth showing. */
import type { SiteDay } from '../../core/sun/siteDay'
import { sunPosition } from '../../core/sun/sunPosition'
import type { Place } from '../../shared/document/site'

export interface SunCurve {
  readonly samples: readonly { readonly ms: number; readonly altitudeDeg: number }[]
  /** From an hour before first light to an hour after last light; the whole day where the sun does neither rise nor set. */
  readonly fromMs: number
  readonly toMs: number
  readonly highestDeg: number
}

const stepMs = 5 * 60_000
const hourMs = 3_600_000
/** Civil twilight: the sun 6° down. Source: U.S. Naval Observatory, "Rise, Set, and Twilight Definitions". */
export const firstLightDeg = -6

export function sunCurve(day: SiteDay, place: Pick<Place, 'latDeg' | 'lonDeg'>): SunCurve {
  const samples: { ms: number; altitudeDeg: number }[] = []
  for (let ms = day.startMs; ms <= day.endMs; ms += stepMs)
    samples.push({ ms, altitudeDeg: sunPosition(ms, place.latDeg, place.lonDeg).altitudeDeg })
  const light = samples.filter(each => each.altitudeDeg > firstLightDeg)
  const whole = light.length === 0 || light.length === samples.length
  const from = whole ? day.startMs : Math.max(day.startMs, light[0]!.ms - hourMs)
  const to = whole ? day.endMs : Math.min(day.endMs, light.at(-1)!.ms + hourMs)
  return { samples, fromMs: from, toMs: to, highestDeg: samples.reduce((m, s) => Math.max(m, s.altitudeDeg), -90) }
}
