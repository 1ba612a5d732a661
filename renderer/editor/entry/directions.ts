/** Directions and turns as they are typed and told: words for the square ones, degrees for the rest. */
import { parseAngle } from '../../../core/units/parseAngle'
import type { Pt } from '../../../shared/document/primitives'
import { err, ok, type Result } from '../../../shared/problem'

const square = { up: 0, right: 90, down: 180, left: 270 } as const

/** Unit vector of a direction, degrees clockwise from drawing-up; square directions leave no crumb of rounding. */
export const unitOf = (deg: number): Pt => {
  const quarter = (((deg / 90) % 4) + 4) % 4
  if (Number.isInteger(quarter))
    return (
      [
        [0, 1],
        [1, 0],
        [0, -1],
        [-1, 0],
      ] as const
    )[quarter as 0 | 1 | 2 | 3]
  const angle = (deg * Math.PI) / 180
  return [Math.sin(angle), Math.cos(angle)]
}

const trim = (deg: number): string => String(Number(deg.toFixed(1)))

export const printDirection = (deg: number): string => {
  const whole = ((Number(deg.toFixed(1)) % 360) + 360) % 360
  return Object.entries(square).find(([, each]) => each === whole)?.[0] ?? `${trim(whole)}°`
}

/** + = to the left. */
export const printTurn = (deg: number): string => {
  const size = Math.abs(Number(deg.toFixed(1)))
  return size === 0 ? 'straight on' : `${trim(size)}° ${deg > 0 ? 'left' : 'right'}`
}

const quote = (text: string) => `“${text.trim()}”`

/** An angle with its sign. */
const parseSigned = (text: string): number | undefined => {
  const deg = parseAngle(text.replace(/^[-−]/, ''))
  return deg === undefined ? undefined : /^[-−]/.test(text) ? -deg : deg
}

const compass = { n: 0, north: 0, e: 90, east: 90, s: 180, south: 180, w: 270, west: 270 } as const

/**
 * A bearing by its quadrant, `N 45°30′ E`, or a quarter of the compass: degrees clockwise from true north.
 * Source: bearings and azimuths, P. R. Wolf and C. D. Ghilani, Elementary Surveying, 13th ed., 2012, chapter 7.
 */
export const parseBearing = (text: string): number | undefined => {
  const plain = text.trim().toLowerCase()
  if (Object.hasOwn(compass, plain)) return compass[plain as keyof typeof compass]
  const read = /^([ns])[a-z]*\s*(\d.*?)\s*([ew])[a-z]*$/.exec(plain)
  const deg = read ? parseAngle(read[2]!) : undefined
  if (!read || deg === undefined || deg > 90) return undefined
  const [, from, , to] = read
  if (from === 'n') return to === 'e' ? deg : (360 - deg) % 360
  return to === 'e' ? 180 - deg : 180 + deg
}

/** A bearing by its quadrant or as an azimuth, 0 to 360: degrees clockwise from north. */
export const parseAzimuth = (text: string): Result<number, { readonly message: string }> => {
  const deg = parseBearing(text) ?? parseAngle(text.trim().replace(/°$/, ''))
  return deg === undefined || deg > 360
    ? err({ message: `${quote(text)} is not a bearing. Write it as 68.5, from 0 to 360, or as N 23°14′ E.` })
    : ok(deg % 360)
}

/** `right`, `up`, degrees clockwise from the top of the plan, or a bearing where north lies `northDeg` from there. */
export const parseDirection = (text: string, northDeg = 0): Result<number, { readonly message: string }> => {
  const plain = text.trim().toLowerCase()
  if (Object.hasOwn(square, plain)) return ok(square[plain as keyof typeof square])
  const bearing = parseBearing(plain)
  const deg = bearing === undefined ? parseSigned(plain) : bearing + northDeg
  if (deg === undefined)
    return err({
      message: `${quote(text)} is not a direction. Write right, up, left, down, degrees from up, or a bearing like N 45 E.`,
    })
  return ok(((deg % 360) + 360) % 360)
}

/** `90`, `90 left`, `45.5 right`, `89°30′ L`; a bare number turns left, a minus turns right. */
export const parseTurn = (text: string): Result<number, { readonly message: string }> => {
  const plain = text.trim().toLowerCase()
  if (plain === 'straight on') return ok(0)
  const read = /^(.*?)\s*(left|right|l|r)?$/.exec(plain)!
  const deg = parseSigned(read[1]!)
  if (deg === undefined || Math.abs(deg) > 360)
    return err({ message: `${quote(text)} is not a turn. Write it as 90 left, 45 right or 90.` })
  return ok(read[2]?.startsWith('r') && deg !== 0 ? -deg : deg)
}

/** Clockwise from drawing-up, 0 ≤ … < 360. */
export const directionOf = ([ax, ay]: Pt, [bx, by]: Pt): number =>
  ((Math.atan2(bx - ax, by - ay) * 180) / Math.PI + 360) % 360

/** The turn from one direction to another, + = left, −180 < … ≤ 180. */
export const turnBetween = (fromDeg: number, toDeg: number): number => {
  const left = (((fromDeg - toDeg) % 360) + 360) % 360
  return left > 180 ? left - 360 : left
}
