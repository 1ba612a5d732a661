/** The chords in which a line crosses a region. */
import type { CutRegion, CutRing, Side } from './cutRegion'

/** A vertex closer than this to the line lies on it (m). */
export const onLineM = 1e-7
/** An end point closer than this to a vertex is that vertex (m). */
const snapM = 1e-6

export interface ChordEnd {
  readonly ring: number
  readonly side: number
  /** True when the end is the start point of `side`. */
  readonly vertex: boolean
  readonly x: number
  readonly y: number
  /** From the start of the side: meters on a line, radians (unsigned) on an arc. */
  readonly along: number
}

/** Runs from a to b; the material of a cut's upper part lies on its left. */
export interface Chord {
  readonly a: ChordEnd
  readonly b: ChordEnd
  readonly lengthM: number
  /** Positions of the ends along the line. */
  readonly t0: number
  readonly t1: number
}

interface Crossing {
  readonly t: number
  readonly enters: boolean
  readonly end: ChordEnd
}

/** Work done so far, in sides visited: the unit of every budget. */
export interface Work {
  done: number
}

function endAtVertex(rings: readonly CutRing[], ring: number, side: number): ChordEnd {
  const s = rings[ring]!.sides[side]!
  return { ring, side, vertex: true, x: s.x, y: s.y, along: 0 }
}

/** An end inside side i, or the vertex it all but coincides with. */
function endOnSide(rings: readonly CutRing[], ring: number, i: number, x: number, y: number): ChordEnd {
  const sides = rings[ring]!.sides
  const s = sides[i]!
  const next = i + 1 === sides.length ? 0 : i + 1
  const e = sides[next]!
  if (Math.abs(x - s.x) < snapM && Math.abs(y - s.y) < snapM) return endAtVertex(rings, ring, i)
  if (Math.abs(x - e.x) < snapM && Math.abs(y - e.y) < snapM) return endAtVertex(rings, ring, next)
  if (s.sweep === 0) return { ring, side: i, vertex: false, x, y, along: Math.hypot(x - s.x, y - s.y) }
  const ax = s.x - s.cx
  const ay = s.y - s.cy
  const bx = x - s.cx
  const by = y - s.cy
  return { ring, side: i, vertex: false, x, y, along: Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) }
}

/**
 * The chords of the line {p : n·p = offset}, n = (−uy, ux), in order along (ux, uy). Vertices on the line count as
 * above it when `onIsAbove`, else as below: the two answers are the limits from either side. A chord with a boundary
 * point strictly inside is dropped, and no chord ends where the line only touches an arc.
 */
export function findChords(
  region: CutRegion,
  ux: number,
  uy: number,
  offset: number,
  onIsAbove: boolean,
  work: Work,
): Chord[] {
  const crossings: Crossing[] = []
  const touching: number[] = []
  const { rings } = region
  const push = (end: ChordEnd, enters: boolean): void => {
    crossings.push({ t: ux * end.x + uy * end.y, enters, end })
  }
  const pushOnArc = (r: number, i: number, s: Side, dc: number, goesUp: boolean): void => {
    const half = Math.sqrt(Math.max(0, s.r * s.r - dc * dc))
    const t = ux * s.cx + uy * s.cy + (goesUp === s.sweep > 0 ? half : -half)
    push(endOnSide(rings, r, i, ux * t - uy * offset, uy * t + ux * offset), !goesUp)
  }
  for (let r = 0; r < rings.length; r++) {
    const sides = rings[r]!.sides
    const n = sides.length
    work.done += n
    let i = n - 1
    let s = sides[i]!
    let d0 = -uy * s.x + ux * s.y - offset
    if (d0 < onLineM && d0 > -onLineM) d0 = 0
    let up0 = onIsAbove ? d0 >= 0 : d0 > 0
    for (let k = 0; k < n; k++) {
      const e = sides[k]!
      let d1 = -uy * e.x + ux * e.y - offset
      if (d1 < onLineM && d1 > -onLineM) d1 = 0
      const up1 = onIsAbove ? d1 >= 0 : d1 > 0
      if (d1 === 0) touching.push(ux * e.x + uy * e.y)
      if (s.sweep === 0) {
        if (up0 !== up1) {
          if (d1 === 0) push(endAtVertex(rings, r, k), !up1)
          else if (d0 === 0) push(endAtVertex(rings, r, i), !up1)
          else {
            const f = d0 / (d0 - d1)
            push(endOnSide(rings, r, i, s.x + f * (e.x - s.x), s.y + f * (e.y - s.y)), !up1)
          }
        }
      } else {
        const dc = -uy * s.cx + ux * s.cy - offset
        const tc = ux * s.cx + uy * s.cy
        const turn = s.sweep > 0 ? 1 : -1
        // d rises where the travel goes towards +n; a change of sign means that d turns around inside the arc.
        const rise0 = turn * (ux * s.x + uy * s.y - tc)
        const rise1 = turn * (ux * e.x + uy * e.y - tc)
        const dTop = rise0 * rise1 < 0 ? dc + (rise0 > 0 ? s.r : -s.r) : 0
        if (dTop > onLineM || dTop < -onLineM) {
          const upTop = dTop > 0
          if (up0 !== upTop) {
            if (d0 === 0) push(endAtVertex(rings, r, i), !upTop)
            else pushOnArc(r, i, s, dc, upTop)
          }
          if (upTop !== up1) {
            if (d1 === 0) push(endAtVertex(rings, r, k), !up1)
            else pushOnArc(r, i, s, dc, up1)
          }
        } else {
          if (rise0 * rise1 < 0) touching.push(tc)
          if (up0 !== up1) {
            if (d1 === 0) push(endAtVertex(rings, r, k), !up1)
            else if (d0 === 0) push(endAtVertex(rings, r, i), !up1)
            else pushOnArc(r, i, s, dc, up1)
          }
        }
      }
      i = k
      s = e
      d0 = d1
      up0 = up1
    }
  }
  return pairCrossings(crossings, touching)
}

/** At equal positions a crossing that leaves is taken first when inside, one that enters when outside. */
function pairCrossings(crossings: Crossing[], touching: readonly number[]): Chord[] {
  const chords: Chord[] = []
  if (crossings.length < 2) return chords
  crossings.sort((p, q) => p.t - q.t)
  let open: Crossing | null = null
  for (let i = 0; i < crossings.length; i++) {
    const wantsEnter: boolean = open === null
    for (let j = i; j < crossings.length && crossings[j]!.t - crossings[i]!.t < snapM; j++)
      if (crossings[j]!.enters === wantsEnter) {
        if (j !== i) {
          const moved = crossings[j]!
          crossings[j] = crossings[i]!
          crossings[i] = moved
        }
        break
      }
    const at = crossings[i]!
    if (at.enters) open = at
    else if (open) {
      const from: Crossing = open
      if (at.t - from.t > 10 * snapM && !touching.some(t => t > from.t + snapM && t < at.t - snapM))
        chords.push({
          a: from.end,
          b: at.end,
          lengthM: Math.hypot(at.end.x - from.end.x, at.end.y - from.end.y),
          t0: from.t,
          t1: at.t,
        })
      open = null
    }
  }
  return chords
}
