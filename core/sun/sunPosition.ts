/** Where the sun stands, and which way and how far a meter of height throws its shadow. */
import { getPosition } from 'suncalc'
import type { Pt } from '../../shared/document/primitives'

const degree = Math.PI / 180

export interface SunPosition {
  /** Above the horizon with refraction: what shadows use. Degrees. */
  readonly altitudeDeg: number
  /** Without refraction. Degrees. */
  readonly trueAltitudeDeg: number
  /** Clockwise from true north, 0 ≤ azimuth < 360. */
  readonly azimuthDeg: number
}

/** Refraction in radians at a true altitude in radians: J. Meeus, Astronomical Algorithms, 2nd ed., 1998, formula 16.4
 * (Sæmundsson); below the horizon its value at the horizon, as the library that adds it does. */
const refractionRad = (trueRad: number): number => {
  const h = Math.max(0, trueRad)
  return 0.0002967 / Math.tan(h + 0.00312536 / (h + 0.08901179))
}

/** Undoes the refraction: six turns of h = apparent − R(h) settle to 1e-9 rad, since |dR/dh| < 0.2. */
const trueAltitudeRad = (apparentRad: number): number => {
  let h = apparentRad - refractionRad(apparentRad)
  for (let turn = 0; turn < 12; turn++) h = apparentRad - refractionRad(h)
  return h
}

/**
 * Position of the sun's center.
 * @param utcMs milliseconds since 1970-01-01T00:00Z; good to 0.015° between 1900 and 2100
 * @param latDeg −90 … 90, north positive
 * @param lonDeg −180 … 180, east positive
 */
export const sunPosition = (utcMs: number, latDeg: number, lonDeg: number): SunPosition => {
  const { altitude, azimuth } = getPosition(new Date(utcMs), latDeg, lonDeg)
  return {
    altitudeDeg: altitude,
    trueAltitudeDeg: trueAltitudeRad(altitude * degree) / degree,
    azimuthDeg: azimuth,
  }
}

/** Unit vector in the drawing toward the sun: (sin(A + northDeg), cos(A + northDeg)). `northDeg` = clockwise angle from
 * drawing-up to true north. */
export const sunVector = (sun: Pick<SunPosition, 'azimuthDeg'>, northDeg: number): Pt => {
  const angle = (sun.azimuthDeg + northDeg) * degree
  return [Math.sin(angle), Math.cos(angle)]
}

/** Where the shadow of a point 1 m above a level plane falls, in meters from the foot: cot(altitude), away from the sun.
 * Valid above the horizon only. */
export const shadowPerMeter = (sun: Pick<SunPosition, 'altitudeDeg' | 'azimuthDeg'>, northDeg: number): Pt => {
  const [x, y] = sunVector(sun, northDeg)
  const reach = 1 / Math.tan(sun.altitudeDeg * degree)
  return [-x * reach, -y * reach]
}
