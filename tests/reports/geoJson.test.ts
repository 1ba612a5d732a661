import { describe, expect, it } from 'vitest'
import { geoJson, type Position, windRing } from '../../core/reports/geoJson'
import { patio } from './patio'

const signedArea = (ring: readonly Position[]): number =>
  ring.slice(1).reduce((s, [x, y], i) => s + ring[i]![0] * y - x * ring[i]![1], 0)

describe('GeoJSON', () => {
  it('winds an exterior ring counter-clockwise (RFC 7946 §3.1.6, right-hand rule; unit square of the winding example)', () => {
    const clockwise: Position[] = [
      [100, 0],
      [100, 1],
      [101, 1],
      [101, 0],
      [100, 0],
    ]
    expect(windRing(clockwise, 'exterior')).toEqual([
      [100, 0],
      [101, 0],
      [101, 1],
      [100, 1],
      [100, 0],
    ])
    expect(windRing(clockwise, 'hole')).toEqual(clockwise)
  })

  it('closes every ring, winds all polygons by the rule and keeps 8 decimals', () => {
    const { features } = geoJson(patio)
    let polygons = 0
    for (const { geometry } of features) {
      if (geometry.type !== 'Polygon') continue
      for (const [i, ring] of geometry.coordinates.entries()) {
        polygons++
        expect(ring.length).toBeGreaterThanOrEqual(4)
        expect(ring.at(-1)).toEqual(ring[0])
        expect(Math.sign(signedArea(ring))).toBe(i === 0 ? 1 : -1)
        for (const value of ring.flat()) expect(Math.round(value * 1e8) / 1e8).toBe(value)
      }
    }
    // Slab and its hole, opening, border, three pours and a hole, house.
    expect(polygons).toBe(2 + 1 + 1 + 4 + 1)
  })

  it('names each part once and has no member that RFC 7946 took out (crs, §4)', () => {
    const collection = geoJson(patio)
    expect(Object.keys(collection)).toEqual(['type', 'features'])
    const kinds = collection.features.map(f => f.properties.kind)
    for (const kind of ['slab', 'opening', 'border', 'pour', 'construction joint', 'isolation joint', 'tree', 'point'])
      expect(kinds).toContain(kind)
    const ids = collection.features.map(f => f.id)
    expect(new Set(ids).size).toBe(ids.length)
  })
})
