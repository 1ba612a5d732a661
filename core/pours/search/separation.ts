/**
 * How long joints must be to part a region: a bound from below that looks at its boundary alone.
 *
 * Let a be the least of the pours' areas. What parts one pour from another either closes on itself or runs from the
 * boundary to the boundary, with at least the area a on either side. Over a length l, with the boundary's length s on the
 * shorter side, it holds at most (l + s)²/4π (isoperimetric inequality), and l is no less than the distance of its two
 * ends. Where it passes openings it is at least twice the distance of two rings. Every pour has such a joint, and every
 * joint is shared by two.
 */
import { segmentDistance } from '../../geometry/segmentDistance'
import type { CutRegion, CutRing } from '../region/cutRegion'

/** Pieces the longest ring is looked at in, at least. */
const pieces = 44
/** Lengths are told apart by this (m), up to `most` times as much. */
const stepM = 0.1
const most = 180
/** Boundaries of more pieces (an outline traced in hundreds of short sides) are not compared, pair by pair: no bound. */
const mostPieces = 600

export interface Separation {
  /** Longest shorter side of the boundary for joints of less than (i + 1) · stepM. */
  readonly sideM: Float64Array
  /** Least distance of two rings; infinite where there is one. */
  readonly ringsM: number
}

interface Piece {
  readonly ring: number
  readonly ax: number
  readonly ay: number
  readonly bx: number
  readonly by: number
  /** Where it starts along its ring, and how long it is. */
  readonly at: number
  readonly lengthM: number
  /** How far its arc leaves the chord. */
  readonly rise: number
}

function putPieces(ring: CutRing, number: number, pieceM: number, out: Piece[]): void {
  const n = ring.sides.length
  for (let i = 0; i < n; i++) {
    const s = ring.sides[i]!
    const e = ring.sides[i + 1 === n ? 0 : i + 1]!
    const at = ring.length[i]!
    const whole = ring.length[i + 1]! - at
    const parts = Math.max(1, Math.ceil(whole / pieceM))
    const lengthM = whole / parts
    const point = (k: number): readonly [number, number] => {
      if (k === parts) return [e.x, e.y]
      const f = k / parts
      if (s.sweep === 0) return [s.x + f * (e.x - s.x), s.y + f * (e.y - s.y)]
      const c = Math.cos(f * s.sweep)
      const d = Math.sin(f * s.sweep)
      return [s.cx + c * (s.x - s.cx) - d * (s.y - s.cy), s.cy + d * (s.x - s.cx) + c * (s.y - s.cy)]
    }
    const rise = s.sweep === 0 ? 0 : s.r * (1 - Math.cos(s.sweep / parts / 2))
    let [ax, ay] = point(0)
    for (let k = 1; k <= parts; k++) {
      const [bx, by] = point(k)
      out.push({ ring: number, ax, ay, bx, by, at: at + (k - 1) * lengthM, lengthM, rise })
      ax = bx
      ay = by
    }
  }
}

/** Pieces of one boundary do not cross. */
const pieceDistance = (p: Piece, q: Piece): number =>
  Math.min(
    segmentDistance(p.ax, p.ay, q.ax, q.ay, q.bx, q.by),
    segmentDistance(p.bx, p.by, q.ax, q.ay, q.bx, q.by),
    segmentDistance(q.ax, q.ay, p.ax, p.ay, p.bx, p.by),
    segmentDistance(q.bx, q.by, p.ax, p.ay, p.bx, p.by),
  )

export function separationOf(region: CutRegion): Separation {
  const sideM = new Float64Array(most)
  let ringsM = Number.POSITIVE_INFINITY
  const lengths = region.rings.map(({ length, sides }) => length[sides.length]!)
  const all: Piece[] = []
  region.rings.forEach((ring, number) => {
    putPieces(ring, number, Math.max(...lengths) / pieces, all)
  })
  if (all.length > mostPieces) return { sideM: sideM.fill(Math.max(...lengths)), ringsM: 0 }
  for (let i = 0; i < all.length; i++) {
    const p = all[i]!
    const px = (p.ax + p.bx) / 2
    const py = (p.ay + p.by) / 2
    for (let j = i; j < all.length; j++) {
      const q = all[j]!
      const dx = (q.ax + q.bx) / 2 - px
      const dy = (q.ay + q.by) / 2 - py
      const isOneRing = p.ring === q.ring
      const rise = p.rise + q.rise
      const near = Math.sqrt(dx * dx + dy * dy) - (p.lengthM + q.lengthM) / 2 - rise
      if (!isOneRing) {
        if (near < ringsM) ringsM = Math.min(ringsM, Math.max(0, pieceDistance(p, q) - rise))
        continue
      }
      const around = lengths[p.ring]!
      const ahead = q.at + q.lengthM - p.at
      const behind = around - q.at + p.at + p.lengthM
      const side = Math.min(around, p.ring === 0 ? Math.min(ahead, behind) : around)
      const nearBin = Math.max(0, Math.floor(near / stepM))
      if (nearBin >= most || sideM[nearBin]! >= side) continue
      const bin = i === j ? 0 : Math.max(0, Math.floor((pieceDistance(p, q) - rise) / stepM))
      for (let b = bin; b < most && sideM[b]! < side; b++) sideM[b] = side
    }
  }
  return { sideM, ringsM }
}

/**
 * Least cost of new joints that part the region into k ≥ 2 pours, at `costPerM` of joint, `cost(a)` what a plan costs
 * besides where its smallest pour measures a at most, and `overOpening` what passing an opening adds.
 */
export function leastSeparation(
  { sideM, ringsM }: Separation,
  k: number,
  areaM2: number,
  capM2: number,
  costPerM: number,
  cost: (smallestM2: number) => number,
  overOpening: number,
): number {
  const mean = areaM2 / k
  const leastM2 = areaM2 - (k - 1) * capM2 * (1 + 1e-9)
  let best = (costPerM * k * most * stepM) / 2 + cost(mean)
  for (let b = 0; b < most; b++) {
    const around = (b + 1) * stepM + sideM[b]!
    const a = (around * around) / (4 * Math.PI)
    if (a < leastM2) continue
    const now = (costPerM * k * b * stepM) / 2 + cost(Math.min(a, mean))
    if (now < best) best = now
    if (a >= mean) break
  }
  return Math.min(best, costPerM * k * ringsM + overOpening + cost(mean))
}
