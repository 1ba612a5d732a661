import type { Site } from '../../shared/document/site'
import { siteFormat, siteVersion } from '../../shared/document/site'

/** The name of a site that nobody has named: the first file it is kept in names it. */
export const unnamed = 'New site'

/** The middle of the United States: 39.8° N, 98.6° W, the geographic center of the 48 states, from memory. */
const unsetPlace: Site['place'] = { latDeg: 39.8, lonDeg: -98.6, elevationM: 0, zone: 'America/Chicago', northDeg: 0 }

/** False while the place is the one every new site begins with. */
export const hasPlace = ({ name, latDeg, lonDeg }: Site['place']): boolean =>
  name !== undefined || latDeg !== unsetPlace.latDeg || lonDeg !== unsetPlace.lonDeg

/**
 * A site with nothing drawn, in the middle of the United States until its place is asked for; one finish, so that the
 * first slab has one.
 */
export const emptySite = (id: string, name: string): Site => ({
  format: siteFormat,
  version: siteVersion,
  id,
  name,
  nextId: 2,
  units: 'ftin',
  place: { ...unsetPlace },
  finishes: [{ id: 'f1', name: 'Ashlar', pattern: 'ashlar', color: '#c9b79a' }],
  slabs: [],
  casters: [],
  points: [],
  wishes: [],
  accepted: [],
})
