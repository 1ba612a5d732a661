/** When the sun stands high enough on a day to throw shade. */
import type { Place } from '../../shared/document/site'
import type { Finding } from '../../shared/problem'
import { type SettingOverrides, settingValue } from '../../shared/settings'
import { bisect, exactMs } from './bisect'
import type { SiteDay } from './siteDay'
import { sunPosition } from './sunPosition'

export interface Span {
  readonly fromMs: number
  readonly toMs: number
}

export interface SunlitSpans {
  /** In order; usually one, two where the sun dips below the threshold around noon of a polar day. */
  readonly spans: readonly Span[]
  /** `polarDay`: above the threshold all day; `polarNight`: never. */
  readonly findings: readonly Finding[]
}

const sampleMs = 10 * 60_000

/** Whether the sun stands at or above the threshold of the settings (apparent altitude). */
export const isSunUp = (altitudeDeg: number, settings: SettingOverrides | undefined): boolean =>
  altitudeDeg >= settingValue(settings, 'minSunAltitudeDeg')

/** The highest sun near `ms`, for a day that lifts it over the threshold for less than a sample. */
const peakNear = (ms: number, altitude: (ms: number) => number): number => {
  let from = ms - sampleMs
  let to = ms + sampleMs
  while (to - from > exactMs) {
    const third = (to - from) / 3
    if (altitude(from + third) < altitude(to - third)) from += third
    else to -= third
  }
  return (from + to) / 2
}

/** The spans of the day with the sun at or above the threshold, to the second. */
export const sunlitSpans = (place: Place, day: SiteDay, settings: SettingOverrides | undefined): SunlitSpans => {
  const altitude = (ms: number): number => sunPosition(ms, place.latDeg, place.lonDeg).altitudeDeg
  const isUp = (ms: number): boolean => isSunUp(altitude(ms), settings)
  const times: number[] = []
  for (let ms = day.startMs; ms < day.endMs; ms += sampleMs) times.push(ms)
  times.push(day.endMs)
  const heights = times.map(altitude)
  const peak = heights.indexOf(Math.max(...heights))
  const peakMs = Math.min(day.endMs, Math.max(day.startMs, peakNear(times[peak]!, altitude)))
  const marks = [...times, peakMs].sort((a, b) => a - b)
  const spans: Span[] = []
  let fromMs: number | null = isUp(day.startMs) ? day.startMs : null
  for (let i = 1; i < marks.length; i++) {
    const up = isUp(marks[i]!)
    if (up && fromMs === null) fromMs = bisect(marks[i - 1]!, marks[i]!, isUp)
    else if (!up && fromMs !== null) {
      spans.push({ fromMs, toMs: bisect(marks[i]!, marks[i - 1]!, isUp) })
      fromMs = null
    }
  }
  if (fromMs !== null) spans.push({ fromMs, toMs: day.endMs })
  const values = { date: day.date, latDeg: place.latDeg, highestDeg: altitude(peakMs) }
  const first = spans[0]
  if (first === undefined) return { spans, findings: [{ code: 'polarNight', severity: 'note', values }] }
  if (spans.length === 1 && first.fromMs === day.startMs && first.toMs === day.endMs)
    return { spans, findings: [{ code: 'polarDay', severity: 'note', values }] }
  return { spans, findings: [] }
}
