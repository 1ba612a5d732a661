/** Sun height through the site day, and the hours worth showing. */
import type { SiteDay } from '../../core/sun/siteDay'
import { sunPosition } from '../../core/sun/sunPosition'
import type { Place } from '../../shared/document/site'

export interface SunCurve {
  readonly samples: readonly { readonly ms: number; readonly altitudeDeg: number }[]
  /**
   * From an hour before first light or the first event to an hour after last light or the last event; the whole day where
   * the sun does neither rise nor set.
   */
  readonly fromMs: number
  readonly toMs: number
  readonly highestDeg: number
}

const stepMs = 5 * 60_000
const hourMs = 3_600_000
/** Civil twilight: the sun 6° down. Source: U.S. Naval Observatory, "Rise, Set, and Twilight Definitions". */
export const firstLightDeg = -6

/** When something is to be done, on the clock of the day shown. */
export interface Events {
  readonly fromMs: number
  readonly toMs: number
}

/** Events count in whole hours, so that the tape keeps still while a start is moved by minutes. */
export function sunCurve(
  day: SiteDay,
  place: Pick<Place, 'latDeg' | 'lonDeg'>,
  events: Events | null = null,
): SunCurve {
  const samples: { ms: number; altitudeDeg: number }[] = []
  for (let ms = day.startMs; ms <= day.endMs; ms += stepMs)
    samples.push({ ms, altitudeDeg: sunPosition(ms, place.latDeg, place.lonDeg).altitudeDeg })
  const light = samples.filter(each => each.altitudeDeg > firstLightDeg)
  const whole = light.length === 0 || light.length === samples.length
  const hoursIn = (ms: number) => (ms - day.startMs) / hourMs
  const first = events ? day.startMs + Math.floor(hoursIn(events.fromMs)) * hourMs : Number.POSITIVE_INFINITY
  const last = events ? day.startMs + Math.ceil(hoursIn(events.toMs)) * hourMs : Number.NEGATIVE_INFINITY
  const from = whole ? day.startMs : Math.max(day.startMs, Math.min(light[0]!.ms, first) - hourMs)
  const to = whole ? day.endMs : Math.min(day.endMs, Math.max(light.at(-1)!.ms, last) + hourMs)
  return { samples, fromMs: from, toMs: to, highestDeg: samples.reduce((m, s) => Math.max(m, s.altitudeDeg), -90) }
}
