import { err, ok, type Result } from '../../shared/problem'
import { parseAngle } from './parseAngle'
import type { Misread } from './parseLength'

export interface Coordinates {
  /** + = north. */
  readonly latDeg: number
  /** + = east. */
  readonly lonDeg: number
}

const refused = (text: string, why: string) => err({ message: `“${text.trim()}” ${why}` })

interface Read {
  readonly deg: number
  readonly letter: string
}

/** One coordinate with its sign or its letter, before or after. */
function readOne(text: string): Read | undefined {
  const found = /^([nsew])?\s*([-+])?\s*(.*?)\s*([nsew])?$/.exec(text.trim())
  if (!found) return undefined
  const [, before = '', sign = '', digits = '', after = ''] = found
  const letter = before || after
  // A sign and a letter, or two letters, say it twice.
  if ((before && after) || (sign === '-' && letter)) return undefined
  const deg = parseAngle(digits)
  if (deg === undefined) return undefined
  return { deg: sign === '-' || letter === 's' || letter === 'w' ? -deg : deg, letter }
}

/** The two parts: by a comma or a semicolon, by the letters, by a second sign, else in the middle of plain numbers. */
function halves(text: string): readonly [string, string] | undefined {
  const split = (found: RegExpExecArray | null) => found && ([found[1]!, found[2]!] as const)
  const words = text.split(/\s+/)
  return (
    split(/^([^,;]+)[,;]([^,;]+)$/.exec(text)) ??
    split(/^(.+?[nsew])\s*([^nsew]+[nsew])$/.exec(text)) ??
    split(/^([nsew][^nsew]+)([nsew][^nsew]+)$/.exec(text)) ??
    split(/^([-+]?[^-+]+?)\s*([-+][^-+]+)$/.exec(text)) ??
    (words.length % 2 === 0 && !text.includes(',')
      ? [words.slice(0, words.length / 2).join(' '), words.slice(words.length / 2).join(' ')]
      : undefined)
  )
}

/**
 * Both coordinates of a place as they are copied from a map or a deed: `43.6150, −116.2023`, `43°36′54″ N 116°12′8″ W`,
 * `N 43 36.9 W 116 12.1`, `+43.6150-116.2023/` (ISO 6709, decimal degrees). Latitude first unless the letters say
 * otherwise; without letters west and south are minus. Refused out of −90…90 and −180…180.
 */
export function parseCoordinates(text: string): Result<Coordinates, Misread> {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/\b(north|south|east|west)\b/g, word => word[0]!)
    .replace(/[−–]/g, '-')
    .replace(/\/$/, '')
    .replace(/\s+/g, ' ')
  const both = halves(plain)?.map(readOne)
  const [first, second] = both ?? []
  if (!first || !second)
    return refused(text, 'is no pair of coordinates. Write them as 43.615, −116.202 or 43°36′54″ N 116°12′8″ W.')
  const isTurned = 'ew'.includes(first.letter) && first.letter !== ''
  const [lat, lon] = isTurned ? [second, first] : [first, second]
  if ((lat.letter !== '' && !'ns'.includes(lat.letter)) || (lon.letter !== '' && !'ew'.includes(lon.letter)))
    return refused(text, 'names two latitudes or two longitudes.')
  if (Math.abs(lat.deg) > 90) return refused(text, 'has a latitude beyond 90°. The latitude comes first.')
  if (Math.abs(lon.deg) > 180) return refused(text, 'has a longitude beyond 180°.')
  return ok({ latDeg: lat.deg, lonDeg: lon.deg })
}
