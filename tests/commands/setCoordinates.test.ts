import { describe, expect, it } from 'vitest'
import { isElsewhere, setCoordinates, setPlace } from '../../core/document/commands/setSite'
import { sampleSite } from '../plan/sampleSite'
import { chain } from './edit'

const site = chain(sampleSite('l-patio-accepted'), setPlace({ name: 'Juniper Flats', latDeg: 60, lonDeg: -116 }))
const nameAt = (latDeg: number, lonDeg: number) => chain(site, setCoordinates({ latDeg, lonDeg })).place.name

describe('other coordinates', () => {
  // A degree of a great circle is 60 nautical miles, 111.1 km; of longitude at 60° N half of that.
  it('keep the name within about 30 km', () => {
    expect(nameAt(60.2, -116)).toBe('Juniper Flats')
    expect(nameAt(60, -115.5)).toBe('Juniper Flats')
  })

  it('drop it farther away, where it would name another place', () => {
    expect(nameAt(60.3, -116)).toBeUndefined()
    expect(nameAt(60, -115.4)).toBeUndefined()
    expect(nameAt(-33.9, 151.2)).toBeUndefined()
  })

  it('lie elsewhere from there on, for all that was told of the first place', () => {
    expect(isElsewhere({ latDeg: 60, lonDeg: -116 }, { latDeg: 60.2, lonDeg: -116 })).toBe(false)
    expect(isElsewhere({ latDeg: 60, lonDeg: -116 }, { latDeg: 60.3, lonDeg: -116 })).toBe(true)
  })

  it('count across the date line, not around the earth', () => {
    const atLine = chain(site, setPlace({ latDeg: -17, lonDeg: 179.95 }))
    expect(chain(atLine, setCoordinates({ latDeg: -17, lonDeg: -179.95 })).place.name).toBe('Juniper Flats')
  })
})
