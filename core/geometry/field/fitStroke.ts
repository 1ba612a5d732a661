/** A freehand stroke as lines and arcs. */
import type { Pt } from '../../../shared/document/primitives'
import { err, type Finding, ok, type Result } from '../../../shared/problem'
import { distanceToEdge } from '../contains'
import { edgeFromRise } from '../resolvePath'
import { ringArea } from '../ringArea'
import { ringLength } from '../ringLength'

export interface StrokeCorner {
  readonly at: Pt
  /** Rise of the edge that leaves this corner, + = to the right of travel. */
  readonly riseM?: number
}

export interface FittedStroke {
  /** True where the stroke came back to its start: then the last corner's edge returns to the first. */
  readonly closed: boolean
  readonly corners: readonly StrokeCorner[]
}

/** Points a stroke is thinned to: the fit compares every two of them. */
const mostPoints = 100
/** An arc must save corners to be worth its place: its price in lines. */
const arcPrice = 1.25

const apart = (a: Pt, b: Pt): number => Math.hypot(b[0] - a[0], b[1] - a[1])

/** Numbers of the points at which the stroke turns by more than the tolerance, farthest first.
 * Source: D. H. Douglas and T. K. Peucker, Cartographica 10(2), 1973. */
const findTurns = (points: readonly Pt[], toleranceM: number): number[] => {
  const turns: number[] = []
  const waiting: [number, number][] = [[0, points.length - 1]]
  for (let pair = waiting.pop(); pair !== undefined && turns.length < mostPoints; pair = waiting.pop()) {
    const [i, j] = pair
    const chord = { edgeId: '', from: points[i]!, to: points[j]! }
    let [worst, at] = [toleranceM, -1]
    for (let k = i + 1; k < j; k++) {
      const off = distanceToEdge(chord, points[k]!)
      if (off > worst) [worst, at] = [off, k]
    }
    if (at < 0) continue
    turns.push(at)
    waiting.push([i, at], [at, j])
  }
  return turns
}

/** Points at equal steps along the stroke, and the ones where it turns: equal steps alone would cut corners. */
const thin = (points: readonly Pt[], lengthM: number, toleranceM: number): Pt[] => {
  const count = Math.max(3, Math.min(mostPoints, Math.ceil((4 * lengthM) / toleranceM)))
  const turns = new Set(findTurns(points, toleranceM))
  const step = lengthM / (count - 1)
  const thinned: Pt[] = [points[0]!]
  let run = 0
  let next = 1
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!]
    const d = apart(a, b)
    for (; d > 0 && next < count - 1 && run + d >= step * next; next++) {
      const t = (step * next - run) / d
      thinned.push([a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])])
    }
    if (turns.has(i)) thinned.push(b)
    run += d
  }
  thinned.push(points.at(-1)!)
  return thinned
}

interface Piece {
  readonly price: number
  readonly worstM: number
  readonly riseM?: number
}

/** The mid-ordinate of the circle through both ends and a point: tan of half the angle it subtends from the chord. */
const riseThrough = (a: Pt, b: Pt, p: Pt): number => {
  const chord = apart(a, b)
  const [ax, ay, bx, by] = [a[0] - p[0], a[1] - p[1], b[0] - p[0], b[1] - p[1]]
  // The inscribed angle at p is π − θ/2; the rise is (c/2) tan(θ/4). + = p lies right of a→b.
  const angle = Math.atan2(ay * bx - ax * by, ax * bx + ay * by)
  return (chord / 2) * Math.tan((Math.sign(angle) * (Math.PI - Math.abs(angle))) / 2)
}

const fitPiece = (points: readonly Pt[], i: number, j: number, toleranceM: number): Piece | undefined => {
  const [a, b] = [points[i]!, points[j]!]
  if (apart(a, b) < toleranceM / 100) return undefined
  const worst = (riseM: number | undefined): number => {
    const edge = edgeFromRise('', a, b, riseM)
    let most = 0
    for (let k = i + 1; k < j && most <= toleranceM; k++) most = Math.max(most, distanceToEdge(edge, points[k]!))
    return most
  }
  const straight = worst(undefined)
  if (straight <= toleranceM) return { price: 1, worstM: straight }
  if (j - i < 4) return undefined
  // The middle half of the points tells the bulge best; their median does not mind a shaking hand.
  const rises: number[] = []
  for (let k = i + Math.ceil((j - i) / 4); k <= j - (j - i) / 4; k++) rises.push(riseThrough(a, b, points[k]!))
  const riseM = rises.sort((x, y) => x - y)[Math.floor(rises.length / 2)]!
  if (!(Math.abs(riseM) < 10 * apart(a, b))) return undefined
  const worstM = worst(riseM)
  return worstM <= toleranceM ? { price: arcPrice, worstM, riseM } : undefined
}

/** The cheapest chain of pieces from the first point to the last; among equals the closest to the hand. */
const bestChain = (points: readonly Pt[], toleranceM: number): StrokeCorner[] => {
  const n = points.length
  const cost = new Array<number>(n).fill(Infinity)
  const from = new Array<{ i: number; piece: Piece } | undefined>(n).fill(undefined)
  cost[0] = 0
  for (let j = 1; j < n; j++)
    for (let i = 0; i < j; i++) {
      if (cost[i]! + 1 > cost[j]! + 1e-9) continue
      const piece = fitPiece(points, i, j, toleranceM)
      if (piece === undefined) continue
      const sum = cost[i]! + piece.price + (1e-3 * piece.worstM) / toleranceM
      if (sum < cost[j]!) {
        cost[j] = sum
        from[j] = { i, piece }
      }
    }
  const corners: StrokeCorner[] = [{ at: points[n - 1]! }]
  for (let j = n - 1; j > 0; ) {
    // Neighbors are always joined by a line, so the chain never breaks.
    const { i, piece } = from[j]!
    corners.unshift({ at: points[i]!, ...(piece.riseM === undefined ? {} : { riseM: piece.riseM }) })
    j = i
  }
  return corners
}

/** A closed stroke starts at its sharpest outer place, not where the hand happened to set down. */
const startAtCorner = (loop: readonly Pt[]): Pt[] => {
  const cx = loop.reduce((sum, p) => sum + p[0], 0) / loop.length
  const cy = loop.reduce((sum, p) => sum + p[1], 0) / loop.length
  let start = 0
  loop.forEach((p, i) => {
    if (apart(p, [cx, cy]) > apart(loop[start]!, [cx, cy]) + 1e-12) start = i
  })
  return [...loop.slice(start), ...loop.slice(0, start), loop[start]!]
}

/**
 * The fewest lines and arcs that stay within `toleranceM` of a drawn stroke; corners lie on it. A stroke that ends
 * within four tolerances of its start is closed. Refused below three tolerances of length. Meters.
 */
export function fitStroke(points: readonly Pt[], toleranceM: number): Result<FittedStroke, readonly Finding[]> {
  const lengthM = points.slice(1).reduce((sum, p, i) => sum + apart(points[i]!, p), 0)
  if (!(lengthM >= 3 * toleranceM)) return err([{ code: 'strokeTooShort', severity: 'stop', values: { lengthM } }])
  const thinned = thin(points, lengthM, toleranceM)
  const closed = lengthM > 12 * toleranceM && apart(points[0]!, points.at(-1)!) <= 4 * toleranceM
  if (!closed) return ok({ closed, corners: bestChain(thinned, toleranceM) })
  return ok({ closed, corners: bestChain(startAtCorner(thinned.slice(0, -1)), toleranceM).slice(0, -1) })
}

/**
 * A stroke as an outline, its end joined to its beginning where the hand stopped short of it. Refused where it encloses
 * no more than the fit may be off along it.
 */
export function fitOutline(
  points: readonly Pt[],
  toleranceM: number,
): Result<readonly StrokeCorner[], readonly Finding[]> {
  const fitted = fitStroke(points, toleranceM)
  if (!fitted.ok) return fitted
  const { corners } = fitted.value
  const ring = corners.map(({ at, riseM }, i) => edgeFromRise('', at, corners[(i + 1) % corners.length]!.at, riseM))
  return Math.abs(ringArea(ring)) > (ringLength(ring) / 2) * toleranceM
    ? ok(corners)
    : err([{ code: 'strokeFlat', severity: 'stop', values: {} }])
}
