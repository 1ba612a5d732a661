/** What a shadow measured at a known minute tells: north, and the height of what throws it. */
import type { Pt } from '../../shared/document/primitives'
import type { Place } from '../../shared/document/site'
import { err, type Finding, ok, type Result } from '../../shared/problem'
import { headingOf } from '../geometry/field/northFromWall'
import { type SunPosition, sunPosition } from './sunPosition'

/** Below this the light is too weak and the shadow too long to tape (own choice). */
const leastAltitudeDeg = 5
/** A shadow shorter than 1 ft tells no direction (own choice). */
const leastShadowM = 0.3048

const stop = (code: Finding['code'], values: Finding['values']) => err([{ code, severity: 'stop', values } as const])

const sunAt = (ms: number, place: Pick<Place, 'latDeg' | 'lonDeg'>): Result<SunPosition, readonly Finding[]> => {
  const sun = sunPosition(ms, place.latDeg, place.lonDeg)
  return sun.altitudeDeg < leastAltitudeDeg ? stop('sunTooLow', { altitudeDeg: sun.altitudeDeg }) : ok(sun)
}

/**
 * The site's `northDeg` from the shadow of a plumb line, drawn from its foot to the far end, at an instant (UTC
 * milliseconds): the shadow points away from the sun, so northDeg = its heading in the drawing − (azimuth + 180°).
 */
export function northFromShadow(
  foot: Pt,
  tip: Pt,
  ms: number,
  place: Pick<Place, 'latDeg' | 'lonDeg'>,
): Result<number, readonly Finding[]> {
  const lengthM = Math.hypot(tip[0] - foot[0], tip[1] - foot[1])
  if (!(lengthM >= leastShadowM)) return stop('shadowTooShort', { lengthM })
  const sun = sunAt(ms, place)
  if (!sun.ok) return sun
  const northDeg = headingOf(foot, tip) - sun.value.azimuthDeg - 180
  return ok(((northDeg % 360) + 360) % 360)
}

export interface ShadowHeight {
  readonly heightM: number
  readonly altitudeDeg: number
  /** How much the answer would change if the clock were a minute off. */
  readonly perMinuteM: number
}

/**
 * Height above level ground of an edge whose shadow is `lengthM` long, measured in the direction it falls:
 * h = L tan(altitude), altitude as seen (refraction included). Refused under 5° of sun.
 */
export function heightFromShadow(
  lengthM: number,
  ms: number,
  place: Pick<Place, 'latDeg' | 'lonDeg'>,
): Result<ShadowHeight, readonly Finding[]> {
  if (!(lengthM > 0 && Number.isFinite(lengthM)))
    return stop('badMeasure', { foundM: lengthM, what: 'length of a shadow' })
  const sun = sunAt(ms, place)
  if (!sun.ok) return sun
  const heightAt = (altitudeDeg: number) => lengthM * Math.tan((altitudeDeg * Math.PI) / 180)
  const { altitudeDeg } = sun.value
  const later = sunPosition(ms + 60_000, place.latDeg, place.lonDeg).altitudeDeg
  const heightM = heightAt(altitudeDeg)
  return ok({ heightM, altitudeDeg, perMinuteM: Math.abs(heightAt(later) - heightM) })
}
