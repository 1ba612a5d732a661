import type { Place } from '../../shared/document/site'
import { sunPosition } from './sunPosition'

const dayHeight = ({ latDeg, lonDeg }: Pick<Place, 'latDeg' | 'lonDeg'>, date: string): number =>
  sunPosition(Date.parse(`${date}T12:00:00Z`) - lonDeg * 240_000, latDeg, lonDeg).altitudeDeg

/** By how many degrees the sun stands higher at noon on `date` than on `other`, both `YYYY-MM-DD`; lower is negative. */
export const noonHeightApart = (place: Pick<Place, 'latDeg' | 'lonDeg'>, date: string, other: string): number =>
  dayHeight(place, date) - dayHeight(place, other)
