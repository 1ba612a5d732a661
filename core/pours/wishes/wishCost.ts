/** What a joint costs for where it lies: beside a miter, off the wished directions, or out of sight. Feet of joint. */
import type { Pt } from '../../../shared/document/primitives'
import type { Weights } from '../weights'
import type { Courses, JointWishes } from './jointWishes'

interface Line {
  readonly ax: number
  readonly ay: number
  readonly bx: number
  readonly by: number
}

interface Axis {
  readonly ux: number
  readonly uy: number
}

interface Strip extends Axis {
  readonly x: number
  readonly y: number
  readonly lengthM: number
  readonly halfM: number
}

interface CourseLines extends Axis {
  readonly lines: Courses['lines'] | null
}

/** The wishes that cost or save something, ready to be asked about many joints. */
export interface WishGround {
  readonly directions: readonly Axis[]
  readonly courses: readonly CourseLines[]
  readonly miters: readonly Line[]
  readonly hiding: readonly Strip[]
}

export interface WishTerms {
  nearMiter: number
  offDirection: number
  hidden: number
}

const ftM = 0.3048
/** A joint this far off a line still lies on it (m). */
const onLineM = 0.015
/** sin of the angle within which two lines run the same way: half a degree. */
const sameSin = 0.0087
/** Hiding lines shorter than this hide nothing worth a joint (m). */
const leastHidingM = 0.3

const axisOf = (deg: number): Axis => ({ ux: Math.cos((deg * Math.PI) / 180), uy: Math.sin((deg * Math.PI) / 180) })

/** Null where no wish bears on the cost. */
export function wishGround(wishes: JointWishes | undefined): WishGround | null {
  if (!wishes) return null
  const { directionsDeg = [], courses = [], miters = [], hiding = [] } = wishes
  const strips = hiding.flatMap(({ from, to, widthM }): Strip[] => {
    const lengthM = Math.hypot(to[0] - from[0], to[1] - from[1])
    if (lengthM < leastHidingM) return []
    const [ux, uy] = [(to[0] - from[0]) / lengthM, (to[1] - from[1]) / lengthM]
    return [{ x: from[0], y: from[1], ux, uy, lengthM, halfM: widthM / 2 }]
  })
  if (directionsDeg.length + courses.length + miters.length + strips.length === 0) return null
  const line = (a: Pt, b: Pt): Line => ({ ax: a[0], ay: a[1], bx: b[0], by: b[1] })
  return {
    directions: directionsDeg.map(axisOf),
    courses: courses.map(({ deg, lines }) => ({ ...axisOf(deg), lines: lines ?? null })),
    miters: miters.map(({ from, to }) => line(from, to)),
    hiding: strips,
  }
}

/** Unit vectors along what hides a joint. */
export const hidingDirections = (ground: WishGround | null): readonly Axis[] =>
  ground ? [...ground.courses, ...ground.hiding.map(({ ux, uy }) => ({ ux, uy }))] : []

/** Least that a foot of joint may cost. */
export const leastJointCost = (ground: WishGround | null, w: Weights): number =>
  ground && ground.hiding.length + ground.courses.length > 0 ? Math.max(0, w.jointLength - w.hidden) : w.jointLength

/** Offsets of lines along (ux, uy) that lie in a hiding strip: along its middle and both its edges. */
export const offsetsAlong = (ground: WishGround, ux: number, uy: number): number[] =>
  ground.hiding.flatMap(strip => {
    if (Math.abs(strip.ux * uy - strip.uy * ux) > sameSin) return []
    const middle = strip.halfM === 0 ? [0] : [0, strip.halfM, -strip.halfM]
    const [mx, my] = [strip.x + (strip.ux * strip.lengthM) / 2, strip.y + (strip.uy * strip.lengthM) / 2]
    return middle.map(by => -uy * mx + ux * my + by)
  })

/** How far a joint from (ax, ay) along (ux, uy) would move left to lie on the courses' lines beside it. */
export const shiftsToCourses = (ground: WishGround, ax: number, ay: number, ux: number, uy: number): number[] =>
  ground.courses.flatMap(course => {
    if (!course.lines || !isAlong(ux, uy, course)) return []
    const { at, stepM } = course.lines
    const steps = (-(ax - at[0]) * uy + (ay - at[1]) * ux) / stepM
    return [Math.floor(steps), Math.ceil(steps)].map(line => (line - steps) * stepM)
  })

function distanceToPoint(x: number, y: number, { ax, ay, bx, by }: Line): number {
  const [dx, dy] = [bx - ax, by - ay]
  const l2 = dx * dx + dy * dy
  const t = l2 === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / l2))
  return Math.hypot(x - ax - t * dx, y - ay - t * dy)
}

const side = (x: number, y: number, { ax, ay, bx, by }: Line): number => (bx - ax) * (y - ay) - (by - ay) * (x - ax)

/** 0 where the two cross. */
export function distanceBetween(s: Line, o: Line): number {
  if (side(o.ax, o.ay, s) * side(o.bx, o.by, s) < 0 && side(s.ax, s.ay, o) * side(s.bx, s.by, o) < 0) return 0
  return Math.min(
    distanceToPoint(s.ax, s.ay, o),
    distanceToPoint(s.bx, s.by, o),
    distanceToPoint(o.ax, o.ay, s),
    distanceToPoint(o.bx, o.by, s),
  )
}

/** Their boxes alone are farther apart. */
const isFarFrom = (s: Line, o: Line, byM: number): boolean =>
  Math.min(s.ax, s.bx) - Math.max(o.ax, o.bx) > byM ||
  Math.min(o.ax, o.bx) - Math.max(s.ax, s.bx) > byM ||
  Math.min(s.ay, s.by) - Math.max(o.ay, o.by) > byM ||
  Math.min(o.ay, o.by) - Math.max(s.ay, s.by) > byM

const isAlong = (ux: number, uy: number, axis: Axis): boolean => Math.abs(ux * axis.uy - uy * axis.ux) < sameSin

const offAxis = ({ x, y, ux, uy }: Strip, px: number, py: number): number => Math.abs(-(px - x) * uy + (py - y) * ux)

/** How much of the joint is out of sight, m. */
function hiddenLength(ground: WishGround, joint: Line, ux: number, uy: number, lengthM: number): number {
  for (const course of ground.courses) {
    if (!isAlong(ux, uy, course)) continue
    if (!course.lines) return lengthM
    const { at, stepM } = course.lines
    const steps = (-(joint.ax - at[0]) * course.uy + (joint.ay - at[1]) * course.ux) / stepM
    if (Math.abs(steps - Math.round(steps)) * stepM < onLineM) return lengthM
  }
  const spans: (readonly [number, number])[] = []
  for (const strip of ground.hiding) {
    if (!isAlong(ux, uy, strip)) continue
    const most = strip.halfM + onLineM
    if (offAxis(strip, joint.ax, joint.ay) > most || offAxis(strip, joint.bx, joint.by) > most) continue
    const along = (x: number, y: number) => (x - joint.ax) * ux + (y - joint.ay) * uy
    const t0 = along(strip.x, strip.y)
    const t1 = along(strip.x + strip.ux * strip.lengthM, strip.y + strip.uy * strip.lengthM)
    const from = Math.max(0, Math.min(t0, t1))
    const to = Math.min(lengthM, Math.max(t0, t1))
    if (to > from) spans.push([from, to])
  }
  let hidden = 0
  let reached = 0
  for (const [from, to] of spans.sort((p, q) => p[0] - q[0])) {
    if (to <= reached) continue
    hidden += to - Math.max(from, reached)
    reached = to
  }
  return hidden
}

/** Adds a stretch of joint to `terms`, times `share`: a half for each of the two pours along it. */
export function addWishCost(
  ground: WishGround,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  share: number,
  w: Weights,
  terms: WishTerms,
): void {
  const lengthM = Math.sqrt((bx - ax) * (bx - ax) + (by - ay) * (by - ay))
  const ux = (bx - ax) / lengthM
  const uy = (by - ay) / lengthM
  const joint = { ax, ay, bx, by }
  for (const miter of ground.miters) {
    if (isFarFrom(miter, joint, w.nearMiterM)) continue
    const d = distanceBetween(joint, miter)
    if (d < w.nearMiterM) terms.nearMiter += share * w.nearMiter * (1 - d / w.nearMiterM)
  }
  if (ground.directions.length > 0 && !ground.directions.some(d => isAlong(ux, uy, d) || isAlong(-uy, ux, d)))
    terms.offDirection += (share * w.offDirection * lengthM) / ftM
  if (ground.hiding.length + ground.courses.length > 0)
    terms.hidden -= (share * w.hidden * hiddenLength(ground, joint, ux, uy, lengthM)) / ftM
}

export function wishCost(ground: WishGround, ax: number, ay: number, bx: number, by: number, w: Weights): number {
  const terms: WishTerms = { nearMiter: 0, offDirection: 0, hidden: 0 }
  addWishCost(ground, ax, ay, bx, by, 1, w, terms)
  return terms.nearMiter + terms.offDirection + terms.hidden
}
