/** Places by the beginning of their name, out of the list that comes with the planner. */

export interface FoundPlace {
  readonly name: string
  /** State or province, where the list has one. */
  readonly region: string
  /** ISO 3166-1, two letters. */
  readonly country: string
  readonly latDeg: number
  readonly lonDeg: number
}

export interface PlaceList {
  readonly places: readonly FoundPlace[]
  /** Their names as they are compared, in the same order. */
  readonly plain: readonly string[]
}

/** Without accents, capitals and points: `St. Jérôme` is found by `st jerome`. */
const plainName = (text: string): string =>
  text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().replace(/[.’']/g, '').trim()

/** Reads the list: a line of head, then tab-separated rows, the largest place first. */
export function readPlaces(text: string): PlaceList {
  const places = text
    .split('\n')
    .filter(line => line !== '' && !line.startsWith('#'))
    .map((line): FoundPlace => {
      const [name = '', region = '', country = '', lat = '', lon = ''] = line.split('\t')
      return { name, region, country, latDeg: Number(lat) / 1000, lonDeg: Number(lon) / 1000 }
    })
  return { places, plain: places.map(({ name }) => plainName(name)) }
}

/**
 * The places whose name begins with `wanted`; after a comma the state, province or country: `boise, id`. Whole names
 * come before longer ones, larger places before smaller ones.
 */
export function findPlaces({ places, plain }: PlaceList, wanted: string, most = 8): readonly FoundPlace[] {
  const [first = '', ...rest] = wanted.split(',')
  const start = plainName(first)
  const where = rest.map(plainName).filter(word => word !== '')
  if (start.length < 2) return []
  const whole: FoundPlace[] = []
  const longer: FoundPlace[] = []
  for (const [i, name] of plain.entries()) {
    if (!name.startsWith(start)) continue
    const place = places[i]!
    const around = [place.region.toLowerCase(), place.country.toLowerCase()]
    if (!where.every(word => around.some(each => each.startsWith(word)))) continue
    if (name === start) whole.push(place)
    else if (longer.length < most) longer.push(place)
    if (whole.length >= most) break
  }
  return [...whole, ...longer].slice(0, most)
}
