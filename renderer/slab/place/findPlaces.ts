/** Places by the beginning of their name, out of the list that comes with the planner. */
import { regionNames } from './regionNames'

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

/** Letters that carry no accent to be taken off. */
const plainLetters: Readonly<Record<string, string>> = {
  ł: 'l',
  ø: 'o',
  đ: 'd',
  ð: 'd',
  ß: 'ss',
  æ: 'ae',
  þ: 'th',
  ı: 'i',
}
/** What stands for a word in the names of towns. */
const written: Readonly<Record<string, string>> = { st: 'saint', ste: 'sainte', ft: 'fort', mt: 'mount' }

/** Without accents, capitals, points and hyphens, short words written out: `St. Jérôme` is found by `saint jerome`. */
const plainName = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[łøđðßæþı]/g, letter => plainLetters[letter]!)
    .replace(/[.’'‘]/g, '')
    .replace(/[-\s]+/g, ' ')
    .trim()
    .replace(/\b(ste?|ft|mt)(?= )/g, word => written[word]!)

const countryNames = new Intl.DisplayNames(['en-US'], { type: 'region' })

/** The country as it is written out. */
export const countryName = (country: string): string => countryNames.of(country) ?? country

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

interface Wanted {
  /** The beginning of the town's name, plain. */
  readonly start: string
  /** State, province or country, plain; all of them. */
  readonly where: readonly string[]
}

/** `boise, idaho` is read at its comma; `boise idaho` as a town first, then with its last words as the state. */
function readings(text: string): readonly Wanted[] {
  const [start = '', ...where] = text.split(',').map(plainName)
  if (where.length > 0) return [{ start, where: where.filter(word => word !== '') }]
  const words = start.split(' ')
  return [0, 1, 2]
    .filter(last => last < words.length)
    .map(last => {
      const at = words.length - last
      return { start: words.slice(0, at).join(' '), where: last === 0 ? [] : [words.slice(at).join(' ')] }
    })
}

/**
 * The places whose name begins with `wanted`; after a comma, or at the end, the state, province or country, by its
 * letters or written out: `boise, id`, `perth australia`. Whole names come before longer ones, larger places before
 * smaller ones.
 */
export function findPlaces(list: PlaceList, wanted: string, most = 8): readonly FoundPlace[] {
  for (const reading of readings(wanted)) {
    const found = begin(list, reading, most)
    if (found.length > 0) return found
  }
  return []
}

function begin({ places, plain }: PlaceList, { start, where }: Wanted, most: number): readonly FoundPlace[] {
  if (start.length < 2) return []
  const whole: FoundPlace[] = []
  const longer: FoundPlace[] = []
  for (const [i, name] of plain.entries()) {
    if (!name.startsWith(start)) continue
    const place = places[i]!
    if (where.length > 0) {
      const { region, country } = place
      const around = [region, regionNames[region] ?? '', country, countryName(country)].map(plainName)
      if (!where.every(word => around.some(each => each.startsWith(word)))) continue
    }
    if (name === start) whole.push(place)
    else if (longer.length < most) longer.push(place)
    if (whole.length >= most) break
  }
  return [...whole, ...longer].slice(0, most)
}
