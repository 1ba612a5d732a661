/** Drawing-frame meters to longitude and latitude on the WGS 84 ellipsoid. */
import type { Pt } from '../../shared/document/primitives'
import type { SheetPlace } from './sheetData'

/** NGA.STND.0036 (WGS 84), Table 3.1: semi-major axis in meters and flattening. */
const semiMajorM = 6378137
const flattening = 1 / 298.257223563
const e2 = flattening * (2 - flattening)

/**
 * Radii of curvature in the meridian M and the prime vertical N at a latitude, in meters.
 * Source: J. P. Snyder, Map Projections: A Working Manual, USGS Professional Paper 1395, 1987, eq. (4-18), (4-20).
 */
export function curvatureRadii(latDeg: number): { meridianM: number; primeVerticalM: number } {
  const s = Math.sin((latDeg * Math.PI) / 180)
  const w = 1 - e2 * s * s
  return { meridianM: (semiMajorM * (1 - e2)) / w ** 1.5, primeVerticalM: semiMajorM / Math.sqrt(w) }
}

/**
 * Longitude and latitude in degrees of a drawing point, not rounded. The drawing's origin lies at the place; northDeg is
 * the clockwise angle from drawing-up to true north, so east = x cos n − y sin n, north = x sin n + y cos n.
 *
 * Second order in distance over radius: the meridian's radius at the middle latitude of the step, the parallel's at the
 * latitude reached, and the drop −E² tan φ ÷ (2 M N) of a line that leaves the meridian square to it (Legendre's series,
 * as in G. Bomford, Geodesy, 4th ed., 1980, §2.14, from memory). What is left is of the order (distance ÷ radius)²:
 * 1e-7 of a length at 1 km below 70° of latitude. Not for the poles.
 */
export function toGeographic(place: SheetPlace, [x, y]: Pt): readonly [lonDeg: number, latDeg: number] {
  const turn = (place.northDeg * Math.PI) / 180
  const eastM = x * Math.cos(turn) - y * Math.sin(turn)
  const northM = x * Math.sin(turn) + y * Math.cos(turn)
  const degrees = 180 / Math.PI
  const { meridianM, primeVerticalM } = curvatureRadii(place.latDeg)
  const halfStep = ((northM / meridianM) * degrees) / 2
  const footDeg = place.latDeg + (northM / curvatureRadii(place.latDeg + halfStep).meridianM) * degrees
  const drop = (eastM * eastM * Math.tan(footDeg / degrees)) / (2 * meridianM * primeVerticalM)
  const parallelM = curvatureRadii(footDeg).primeVerticalM * Math.cos(footDeg / degrees)
  return [place.lonDeg + (eastM / parallelM) * degrees, footDeg - drop * degrees]
}
