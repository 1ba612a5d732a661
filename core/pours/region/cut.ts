/** A cut: a chain of chords that divides a region in two. Its two faces are measured in constant time and traced. */
import type { Chord, ChordEnd } from './chords'
import {
  type CutRegion,
  type CutRing,
  makeRegion,
  makeRing,
  makeSide,
  ringArea,
  ringLength,
  type Side,
  segmentTerm,
} from './cutRegion'

/**
 * Chords from ring to ring: chain[i].b and chain[i + 1].a lie on one ring, the last end on the ring of the first. One
 * chord with both ends on the same ring is the shortest chain.
 */
export type Chain = readonly Chord[]

export interface CutMeasure {
  /** The face on the left of the chords. */
  readonly upAreaM2: number
  readonly upPerimeterM: number
  readonly lowAreaM2: number
  readonly lowPerimeterM: number
  /** Rings the chain does not touch that lie in the upper face. */
  readonly upRings: readonly number[]
  readonly lowRings: readonly number[]
  /** When the chain closes on a hole: which face lies inside the loop; else 'both'. */
  readonly loop: 'both' | 'up' | 'low'
}

/** Each ring is visited once, and no two chords meet one ring at the same point. */
export function isChain(chain: Chain): boolean {
  for (let i = 0; i < chain.length; i++) {
    const next = chain[i + 1 === chain.length ? 0 : i + 1]!
    const { b } = chain[i]!
    if (b.ring !== next.a.ring) return false
    if (chain.length > 1 && Math.abs(b.x - next.a.x) < 1e-5 && Math.abs(b.y - next.a.y) < 1e-5) return false
    for (let j = 0; j < i; j++) if (chain[j]!.b.ring === b.ring) return false
  }
  return true
}

const isWrapped = (from: ChordEnd, to: ChordEnd): boolean =>
  to.side < from.side || (to.side === from.side && to.along < from.along)

function crossTo(ring: CutRing, at: ChordEnd, ox: number, oy: number): number {
  if (at.vertex) return ring.cross[at.side]!
  const s = ring.sides[at.side]!
  const step = (s.x - ox) * (at.y - oy) - (s.y - oy) * (at.x - ox)
  return ring.cross[at.side]! + (s.sweep === 0 ? step : step + segmentTerm(s.r, s.sweep > 0 ? at.along : -at.along))
}

function lengthTo(ring: CutRing, at: ChordEnd): number {
  if (at.vertex) return ring.length[at.side]!
  const s = ring.sides[at.side]!
  return ring.length[at.side]! + (s.sweep === 0 ? at.along : s.r * at.along)
}

function spanCross(region: CutRegion, from: ChordEnd, to: ChordEnd): number {
  const ring = region.rings[from.ring]!
  const d = crossTo(ring, to, region.ox, region.oy) - crossTo(ring, from, region.ox, region.oy)
  return isWrapped(from, to) ? d + ring.cross[ring.sides.length]! : d
}

function spanLength(region: CutRegion, from: ChordEnd, to: ChordEnd): number {
  const ring = region.rings[from.ring]!
  const d = lengthTo(ring, to) - lengthTo(ring, from)
  return isWrapped(from, to) ? d + ring.length[ring.sides.length]! : d
}

const chordCross = (region: CutRegion, a: ChordEnd, b: ChordEnd): number =>
  (a.x - region.ox) * (b.y - region.oy) - (a.y - region.oy) * (b.x - region.ox)

/**
 * 1 when a ray from (px, py) to +x crosses the side an odd number of times, else 0: the ray against the chord, toggled
 * when the point lies between the chord and its arc.
 */
function crossesRay(s: Side, ex: number, ey: number, px: number, py: number): number {
  let odd = 0
  if (s.y > py !== ey > py && px < ((ex - s.x) * (py - s.y)) / (ey - s.y) + s.x) odd = 1
  if (s.sweep !== 0) {
    const dx = px - s.cx
    const dy = py - s.cy
    const side = (ex - s.x) * (py - s.y) - (ey - s.y) * (px - s.x)
    if (dx * dx + dy * dy < s.r * s.r && (s.sweep > 0 ? side < 0 : side > 0)) odd ^= 1
  }
  return odd
}

/** True inside the closed line of the ring, arcs exact. */
export function ringContains(ring: CutRing, px: number, py: number): boolean {
  const n = ring.sides.length
  let odd = 0
  for (let i = 0; i < n; i++) {
    const e = ring.sides[i + 1 === n ? 0 : i + 1]!
    odd ^= crossesRay(ring.sides[i]!, e.x, e.y, px, py)
  }
  return odd === 1
}

export function regionContains(region: CutRegion, px: number, py: number): boolean {
  for (let r = 0; r < region.rings.length; r++) if (ringContains(region.rings[r]!, px, py) !== (r === 0)) return false
  return true
}

/** The part of `side` from `from` (its own start when null) to `to` (its own end when null). */
export function partOf(side: Side, from: ChordEnd | null, to: ChordEnd | null): Side {
  if (!to && (!from || from.vertex)) return side
  if (side.sweep === 0 && (!from || from.vertex)) return side
  const start = from ? from.along : 0
  const cut = from !== null && !from.vertex
  let sweep = 0
  if (side.sweep > 0) sweep = (to ? to.along : side.sweep) - start
  else if (side.sweep < 0) sweep = start - (to ? to.along : -side.sweep)
  const { edgeId, cx, cy, r, joint } = side
  return cut
    ? makeSide(edgeId, from.x, from.y, cx, cy, r, sweep, joint, 0)
    : makeSide(edgeId, side.x, side.y, cx, cy, r, sweep, joint, side.slabDeg)
}

/** The sides of a ring from one end forward to another. */
function pushSpan(region: CutRegion, from: ChordEnd, to: ChordEnd, out: Side[]): void {
  const { sides } = region.rings[from.ring]!
  const n = sides.length
  let steps = to.side - from.side
  if (steps < 0 || (steps === 0 && isWrapped(from, to))) steps += n
  for (let k = 0; k <= steps; k++) {
    const side = sides[(from.side + k) % n]!
    if (k === steps && to.vertex) break
    out.push(partOf(side, k === 0 ? from : null, k === steps ? to : null))
  }
}

const jointSide = (region: CutRegion, a: ChordEnd, joint: number): Side =>
  makeSide('', a.x, a.y, 0, 0, 0, 0, joint, a.vertex ? region.rings[a.ring]!.sides[a.side]!.slabDeg : 0)

function upLoop(region: CutRegion, chain: Chain, joint: number): CutRing {
  const sides: Side[] = []
  chain.forEach((chord, i) => {
    sides.push(jointSide(region, chord.a, joint + i))
    pushSpan(region, chord.b, chain[(i + 1) % chain.length]!.a, sides)
  })
  return makeRing(sides, region.ox, region.oy)
}

function lowLoop(region: CutRegion, chain: Chain, joint: number): CutRing {
  const sides: Side[] = []
  for (let i = chain.length - 1; i >= 0; i--) {
    sides.push(jointSide(region, chain[i]!.b, joint + i))
    pushSpan(region, chain[i]!.a, chain[(i + chain.length - 1) % chain.length]!.b, sides)
  }
  return makeRing(sides, region.ox, region.oy)
}

const none: number[] = []

function touches(chain: Chain, ring: number): boolean {
  for (let i = 0; i < chain.length; i++) if (chain[i]!.b.ring === ring) return true
  return false
}

/**
 * Areas and perimeters of the two faces from prefix sums. `line` tells that the chain is all of one line's crossing
 * with the region, so that the side of the line places every other ring without a look at the boundary.
 */
export function measureCut(
  region: CutRegion,
  chain: Chain,
  line?: { readonly ux: number; readonly uy: number; readonly offset: number },
): CutMeasure | null {
  let cross = 0
  let perimeter = 0
  let chords = 0
  for (let i = 0; i < chain.length; i++) {
    const { a, b, lengthM } = chain[i]!
    const next = chain[i + 1 === chain.length ? 0 : i + 1]!.a
    cross += chordCross(region, a, b) + spanCross(region, b, next)
    perimeter += lengthM + spanLength(region, b, next)
    chords += lengthM
  }
  const onHole = chain[0]!.a.ring !== 0
  const loop = onHole ? (cross > 0 ? 'up' : 'low') : 'both'
  if (loop === 'low') {
    // The loop on the left bounds a hole: measure the pocket on the right instead.
    let touched = 0
    let around = 0
    for (const { b } of chain) {
      touched += 2 * ringArea(region.rings[b.ring]!)
      around += ringLength(region.rings[b.ring]!)
    }
    cross = touched - cross
    perimeter = around + 2 * chords - perimeter
    if (cross < 0) return null
  }
  let area = cross / 2
  let inside = none
  let outside = none
  if (region.rings.length > 1) {
    inside = []
    outside = []
    let loopRing: CutRing | null = null
    for (let r = onHole ? 0 : 1; r < region.rings.length; r++) {
      if (touches(chain, r)) continue
      const ring = region.rings[r]!
      const p = ring.sides[0]!
      let within = false
      if (r !== 0)
        if (line && !onHole) within = -line.uy * p.x + line.ux * p.y > line.offset
        else {
          loopRing ??= loop === 'low' ? lowLoop(region, chain, 0) : upLoop(region, chain, 0)
          within = ringContains(loopRing, p.x, p.y)
        }
      if (within) {
        inside.push(r)
        area += ringArea(ring)
        perimeter += ringLength(ring)
      } else outside.push(r)
    }
  }
  const rest = region.areaM2 - area
  const restPerimeter = region.perimeterM + 2 * chords - perimeter
  return loop === 'low'
    ? {
        upAreaM2: rest,
        upPerimeterM: restPerimeter,
        lowAreaM2: area,
        lowPerimeterM: perimeter,
        upRings: outside,
        lowRings: inside,
        loop,
      }
    : {
        upAreaM2: area,
        upPerimeterM: perimeter,
        lowAreaM2: rest,
        lowPerimeterM: restPerimeter,
        upRings: inside,
        lowRings: outside,
        loop,
      }
}

/** Traces both faces; they share the chords' end points exactly. Joints are numbered from `joint` along the chain. */
export function splitAtCut(
  region: CutRegion,
  chain: Chain,
  measure: CutMeasure,
  joint: number,
): { readonly up: CutRegion; readonly low: CutRegion } {
  const face = (loop: CutRing, others: readonly number[]): CutRegion => {
    const rings = others.map(r => region.rings[r]!)
    // A loop around a hole joins the holes of the face that keeps the outer ring.
    return makeRegion(others[0] === 0 ? [...rings, loop] : [loop, ...rings], region.ox, region.oy)
  }
  return {
    up: face(upLoop(region, chain, joint), measure.upRings),
    low: face(lowLoop(region, chain, joint), measure.lowRings),
  }
}
