/** Directions and turns as they are typed and told: words for the square ones, degrees for the rest. */
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

/** `right`, `up`, or degrees clockwise from the top of the plan. */
export const parseDirection = (text: string): Result<number, { readonly message: string }> => {
  const plain = text.trim().toLowerCase()
  if (plain in square) return ok(square[plain as keyof typeof square])
  const read = /^([-−]?\d+(?:\.\d+)?)\s*°?$/.exec(plain)
  if (read === null)
    return err({ message: `${quote(text)} is not a direction. Write right, up, left, down, or degrees from up.` })
  return ok(((Number(read[1]!.replace('−', '-')) % 360) + 360) % 360)
}

/** `90`, `90 left`, `45.5 right`; a bare number turns left, a minus turns right. */
export const parseTurn = (text: string): Result<number, { readonly message: string }> => {
  const plain = text.trim().toLowerCase()
  if (plain === 'straight on') return ok(0)
  const read = /^([-−]?\d+(?:\.\d+)?)\s*°?\s*(left|right)?$/.exec(plain)
  const deg = Number(read?.[1]?.replace('−', '-'))
  if (read === null || Math.abs(deg) > 360)
    return err({ message: `${quote(text)} is not a turn. Write it as 90 left, 45 right or 90.` })
  return ok(read[2] === 'right' ? -deg : deg)
}

/** Clockwise from drawing-up, 0 ≤ … < 360. */
export const directionOf = ([ax, ay]: Pt, [bx, by]: Pt): number =>
  ((Math.atan2(bx - ax, by - ay) * 180) / Math.PI + 360) % 360

/** The turn from one direction to another, + = left, −180 < … ≤ 180. */
export const turnBetween = (fromDeg: number, toDeg: number): number => {
  const left = (((fromDeg - toDeg) % 360) + 360) % 360
  return left > 180 ? left - 360 : left
}
