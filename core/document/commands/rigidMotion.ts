import type { Pt } from '../../../shared/document/primitives'

/** A move that changes no length. */
export interface RigidMotion {
  at(p: Pt): Pt
  /** A direction, degrees counter-clockwise from drawing-right. */
  direction(deg: number): number
  readonly mirrored: boolean
}

/** A direction as the motion leaves it, 0 ≤ deg < 360. */
export const turned = (motion: RigidMotion, deg: number): number => ((motion.direction(deg) % 360) + 360) % 360

/** The same with −180 < deg ≤ 180. */
export const turnedEitherWay = (motion: RigidMotion, deg: number): number => {
  const full = turned(motion, deg)
  return full > 180 ? full - 360 : full
}

export const shiftBy = ([dx, dy]: Pt): RigidMotion => ({
  at: ([x, y]) => [x + dx, y + dy],
  direction: deg => deg,
  mirrored: false,
})

/** Counter-clockwise about a point; quarter turns leave no crumb of rounding. */
export const turnAbout = ([cx, cy]: Pt, turnDeg: number): RigidMotion => {
  const angle = (turnDeg * Math.PI) / 180
  const square = Number.isInteger(turnDeg / 90)
  const cos = square ? Math.round(Math.cos(angle)) : Math.cos(angle)
  const sin = square ? Math.round(Math.sin(angle)) : Math.sin(angle)
  return {
    at: ([x, y]) => [cx + (x - cx) * cos - (y - cy) * sin, cy + (x - cx) * sin + (y - cy) * cos],
    direction: deg => deg + turnDeg,
    mirrored: false,
  }
}

/** Across the line through two points, which must not be one. */
export const mirrorAcross = (a: Pt, b: Pt): RigidMotion => {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1])
  const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
  const lineDeg = (Math.atan2(uy, ux) * 180) / Math.PI
  return {
    at: ([x, y]) => {
      const off = 2 * ((x - a[0]) * uy - (y - a[1]) * ux)
      return [x - off * uy, y + off * ux]
    },
    direction: deg => 2 * lineDeg - deg,
    mirrored: true,
  }
}
