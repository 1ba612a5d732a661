/** Against GeographicLib (C. F. F. Karney, Algorithms for geodesics, J. Geodesy 87, 2013, 43–55) and turf. */
import { area as turfArea } from '@turf/turf'
import geodesic from 'geographiclib-geodesic'
import { describe, expect, it } from 'vitest'
import { flattenRing } from '../../core/geometry/flattenRing'
import { curvatureRadii, toGeographic } from '../../core/reports/geographic'
import { patio } from './patio'

const wgs84 = geodesic.Geodesic.WGS84
const places = [0, 29.4, 41.6, -37.8, 60, 68].flatMap(latDeg =>
  [0, 55, 217].map(northDeg => ({ latDeg, lonDeg: -93.6, northDeg })),
)

describe('the georeferenced export before rounding', () => {
  it('has the meridian and prime vertical radii of the ellipsoid at equator and pole (a(1 − e²), a; a²/b)', () => {
    expect(curvatureRadii(0).meridianM).toBeCloseTo(6335439.327, 2)
    expect(curvatureRadii(0).primeVerticalM).toBeCloseTo(6378137, 6)
    // Polar radius of curvature: NGA.STND.0036 (WGS 84), derived constants.
    expect(curvatureRadii(90).meridianM).toBeCloseTo(6399593.6258, 3)
  })

  it('keeps the area of a slab within 0.001 % of the geodesic area, everywhere and for every north', () => {
    const outline = flattenRing(patio.slabs[0]!.outline)
    const plane = Math.abs(
      outline.reduce((s, [x, y], i) => {
        const [px, py] = outline.at(i - 1)!
        return s + px * y - x * py
      }, 0) / 2,
    )
    expect(places).toHaveLength(18)
    for (const place of places) {
      const points = outline.map(p => toGeographic(place, p))
      const polygon = wgs84.Polygon(false)
      for (const [lon, lat] of points) polygon.AddPoint(lat, lon)
      expect(Math.abs(Math.abs(polygon.Compute(false, true).area ?? Number.NaN) / plane - 1)).toBeLessThan(1e-5)
      // turf's sphere itself differs from the ellipsoid by 0.7 % at 68°.
      if (Math.abs(place.latDeg) > 60) continue
      const ring = [...points, points[0]!].map(([lon, lat]) => [lon, lat])
      expect(Math.abs(turfArea({ type: 'Polygon', coordinates: [ring] }) / plane - 1)).toBeLessThan(0.006)
    }
  })

  it('keeps every edge within 0.001 % of its geodesic length, also 1 km from the place', () => {
    for (const place of places)
      for (const shift of [0, 1000])
        for (const { from, to } of patio.slabs[0]!.outline) {
          const [p, q] = [from, to].map(([x, y]) => toGeographic(place, [x + shift, y + shift]))
          const length = Math.hypot(to[0] - from[0], to[1] - from[1])
          const { s12 } = wgs84.Inverse(p![1], p![0], q![1], q![0])
          expect(Math.abs((s12 ?? Number.NaN) / length - 1)).toBeLessThan(1e-5)
        }
  })

  it('turns with the site: with north 90° clockwise of up, +x is north and +y is west', () => {
    const place = { latDeg: 45, lonDeg: 10, northDeg: 90 }
    expect(toGeographic(place, [100, 0])[1]).toBeGreaterThan(45.0008)
    expect(toGeographic(place, [0, 100])[0]).toBeLessThan(9.999)
  })
})
