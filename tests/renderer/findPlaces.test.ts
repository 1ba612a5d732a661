/** The place look-up on the list that comes with the planner. */
import { readFileSync } from 'node:fs'
import lookUpZone from '@photostructure/tz-lookup'
import { describe, expect, it } from 'vitest'
import { findPlaces, readPlaces } from '../../renderer/slab/place/findPlaces'

const text = readFileSync('renderer/slab/place/places.txt', 'utf8')
const list = readPlaces(text)
const first = (wanted: string) => findPlaces(list, wanted)[0]!

/** Principal places of zones with their coordinates, IANA time zone database, zone1970.tab (from memory). */
const zones: readonly (readonly [town: string, latDeg: number, lonDeg: number, zone: string])[] = [
  ['Boise, ID', 43.6136, -116.2025, 'America/Boise'],
  ['Phoenix, AZ', 33.4483, -112.0733, 'America/Phoenix'],
  ['Denver, CO', 39.7392, -104.9842, 'America/Denver'],
  ['Chicago, IL', 41.85, -87.65, 'America/Chicago'],
  ['New York, NY', 40.7142, -74.0064, 'America/New_York'],
  ['Los Angeles, CA', 34.0522, -118.2428, 'America/Los_Angeles'],
  ['Indianapolis, IN', 39.7683, -86.1581, 'America/Indiana/Indianapolis'],
  ['Honolulu, HI', 21.3069, -157.8583, 'Pacific/Honolulu'],
  ['Anchorage, AK', 61.2181, -149.9003, 'America/Anchorage'],
  ['Toronto, ON', 43.65, -79.3833, 'America/Toronto'],
]

describe('the place list', () => {
  it.each(zones)('%s stands where the zone table has it, in its zone', (town, latDeg, lonDeg, zone) => {
    const place = first(town)
    expect(Math.abs(place.latDeg - latDeg)).toBeLessThan(0.12)
    expect(Math.abs(place.lonDeg - lonDeg)).toBeLessThan(0.12)
    expect(lookUpZone(place.latDeg, place.lonDeg)).toBe(zone)
  })

  it('is smaller than a megabyte and a half and names its source first', () => {
    expect(Buffer.byteLength(text)).toBeLessThan(1.5 * 1024 * 1024)
    expect(text.split('\n')[0]).toMatch(/GeoNames.*CC BY 4\.0/)
  })

  it('holds a coordinate for every place', () => {
    for (const { name, latDeg, lonDeg } of list.places) {
      expect(name).not.toBe('')
      expect(Math.abs(latDeg) <= 90 && Math.abs(lonDeg) <= 180).toBe(true)
    }
  })
})

describe('looking a place up', () => {
  it('puts the larger of two towns by one name first, and another state by its letters', () => {
    expect(first('portland').region).toBe('OR')
    expect(first('portland, me').region).toBe('ME')
  })
  it('minds neither accents nor capitals', () => {
    expect(first('MONTREAL').name).toBe('Montréal')
  })
  it('takes the state, the province or the country written out, with a comma or without', () => {
    for (const wanted of ['boise, idaho', 'Boise Idaho', 'boise id', 'BOISE, US', 'boise, united states'])
      expect(first(wanted), wanted).toMatchObject({ name: 'Boise', region: 'ID' })
    expect(first('perth, australia').country).toBe('AU')
    expect(first('perth united kingdom').country).toBe('GB')
    expect(first('london, ontario')).toMatchObject({ region: 'ON', country: 'CA' })
    expect(first('new york').name).toBe('New York City')
    expect(findPlaces(list, 'boise, ohio')).toEqual([])
  })
  it('takes short words written out, hyphens as spaces and letters of other tongues plain', () => {
    for (const [wanted, name] of [
      ['saint louis', 'St. Louis'],
      ['st louis', 'St. Louis'],
      ['St Jerome', 'Saint-Jérôme'],
      ['fort worth', 'Fort Worth'],
      ['ft worth', 'Fort Worth'],
      ['tromso', 'Tromsø'],
      ['lodz', 'Łódź'],
    ] as const)
      expect(first(wanted).name, wanted).toBe(name)
    expect(first('sto').name).toMatch(/^Sto/)
  })
  it('finds nothing by one letter, or by a name nobody has', () => {
    expect(findPlaces(list, 'b')).toEqual([])
    expect(findPlaces(list, 'zzyzzqx')).toEqual([])
  })
})
