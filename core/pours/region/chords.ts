/** The chords in which a line crosses a region. */
import type { CutRegion, Side } from './cutRegion'

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

/** Where the line meets a vertex, or (side −1) only touches an arc. */
interface Touch {
  readonly t: number
  readonly ring: number
  readonly side: number
}

/**
 * What becomes of a chord with a boundary point strictly inside: it is left out, broken at its vertices, or broken with
 * the pieces along an edge left out.
 */
export type AtTouch = 'drop' | 'break' | 'inside'

/** Work done so far, in sides visited: the unit of every budget. */
export interface Work {
  done: number
}

/**
 * Crossings of the line under way, kept apart from the chords to spare the collector: most lines are looked at once and
 * forgotten. Filled and read within one call of findChords.
 */
const crossings = {
  count: 0,
  /** True when a vertex lay on the line. */
  onVertex: false,
  t: [] as number[],
  enters: [] as boolean[],
  ring: [] as number[],
  side: [] as number[],
  /** x, y and the place along the side; −1 along marks a vertex. */
  x: [] as number[],
  y: [] as number[],
  along: [] as number[],
  /** The crossings as they are paired. */
  order: [] as number[],
}

function put(t: number, enters: boolean, ring: number, side: number, x: number, y: number, along: number): void {
  // Kept in order of t: lines cross few sides.
  let i = crossings.count++
  for (; i > 0 && crossings.t[i - 1]! > t; i--) {
    crossings.t[i] = crossings.t[i - 1]!
    crossings.enters[i] = crossings.enters[i - 1]!
    crossings.ring[i] = crossings.ring[i - 1]!
    crossings.side[i] = crossings.side[i - 1]!
    crossings.x[i] = crossings.x[i - 1]!
    crossings.y[i] = crossings.y[i - 1]!
    crossings.along[i] = crossings.along[i - 1]!
  }
  crossings.t[i] = t
  crossings.enters[i] = enters
  crossings.ring[i] = ring
  crossings.side[i] = side
  crossings.x[i] = x
  crossings.y[i] = y
  crossings.along[i] = along
}

function putVertex(sides: readonly Side[], ring: number, side: number, ux: number, uy: number, enters: boolean): void {
  const s = sides[side]!
  put(ux * s.x + uy * s.y, enters, ring, side, s.x, s.y, -1)
}

/** A crossing inside side i, or at the vertex it all but coincides with. */
function putOnSide(
  sides: readonly Side[],
  ring: number,
  i: number,
  x: number,
  y: number,
  ux: number,
  uy: number,
  enters: boolean,
): void {
  const s = sides[i]!
  const next = i + 1 === sides.length ? 0 : i + 1
  const e = sides[next]!
  if (Math.abs(x - s.x) < snapM && Math.abs(y - s.y) < snapM) {
    putVertex(sides, ring, i, ux, uy, enters)
    return
  }
  if (Math.abs(x - e.x) < snapM && Math.abs(y - e.y) < snapM) {
    putVertex(sides, ring, next, ux, uy, enters)
    return
  }
  let along: number
  if (s.sweep === 0) along = Math.sqrt((x - s.x) * (x - s.x) + (y - s.y) * (y - s.y))
  else {
    const ax = s.x - s.cx
    const ay = s.y - s.cy
    const bx = x - s.cx
    const by = y - s.cy
    along = Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by))
  }
  put(ux * x + uy * y, enters, ring, i, x, y, along)
}

/** Where a rising or falling arc crosses the line; `dc` is the signed distance of its center. */
function putOnArc(
  sides: readonly Side[],
  ring: number,
  i: number,
  ux: number,
  uy: number,
  offset: number,
  dc: number,
  goesUp: boolean,
): void {
  const s = sides[i]!
  const half = Math.sqrt(Math.max(0, s.r * s.r - dc * dc))
  const t = ux * s.cx + uy * s.cy + (goesUp === s.sweep > 0 ? half : -half)
  putOnSide(sides, ring, i, ux * t - uy * offset, uy * t + ux * offset, ux, uy, !goesUp)
}

/**
 * The chords of the line {p : n·p = offset}, n = (−uy, ux), in order along (ux, uy). Vertices on the line count as
 * above it when `onIsAbove`, else as below: the two answers are the limits from either side. No chord ends where the
 * line only touches an arc.
 */
export function findChords(
  region: CutRegion,
  ux: number,
  uy: number,
  offset: number,
  onIsAbove: boolean,
  work: Work,
  atTouch: AtTouch = 'drop',
): Chord[] {
  crossings.count = 0
  crossings.onVertex = false
  let touching: Touch[] | null = null
  const { rings } = region
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
      if (d1 === 0) {
        crossings.onVertex = true
        touching ??= []
        touching.push({ t: ux * e.x + uy * e.y, ring: r, side: k })
      }
      if (s.sweep === 0) {
        if (up0 !== up1) {
          if (d1 === 0) putVertex(sides, r, k, ux, uy, !up1)
          else if (d0 === 0) putVertex(sides, r, i, ux, uy, !up1)
          else {
            const f = d0 / (d0 - d1)
            putOnSide(sides, r, i, s.x + f * (e.x - s.x), s.y + f * (e.y - s.y), ux, uy, !up1)
          }
        }
      } else {
        const dc = -uy * s.cx + ux * s.cy - offset
        const tc = ux * s.cx + uy * s.cy
        const turn = s.sweep > 0 ? 1 : -1
        // d rises where the travel goes toward +n; a change of sign means that d turns around inside the arc.
        const rise0 = turn * (ux * s.x + uy * s.y - tc)
        const rise1 = turn * (ux * e.x + uy * e.y - tc)
        const dTop = rise0 * rise1 < 0 ? dc + (rise0 > 0 ? s.r : -s.r) : 0
        if (dTop > onLineM || dTop < -onLineM) {
          const upTop = dTop > 0
          if (up0 !== upTop) {
            if (d0 === 0) putVertex(sides, r, i, ux, uy, !upTop)
            else putOnArc(sides, r, i, ux, uy, offset, dc, upTop)
          }
          if (upTop !== up1) {
            if (d1 === 0) putVertex(sides, r, k, ux, uy, !up1)
            else putOnArc(sides, r, i, ux, uy, offset, dc, up1)
          }
        } else {
          if (rise0 * rise1 < 0) {
            touching ??= []
            touching.push({ t: tc, ring: r, side: -1 })
          }
          if (up0 !== up1) {
            if (d1 === 0) putVertex(sides, r, k, ux, uy, !up1)
            else if (d0 === 0) putVertex(sides, r, i, ux, uy, !up1)
            else putOnArc(sides, r, i, ux, uy, offset, dc, up1)
          }
        }
      }
      i = k
      s = e
      d0 = d1
      up0 = up1
    }
  }
  return pairCrossings(rings, touching, atTouch)
}

const endAt = (i: number): ChordEnd => ({
  ring: crossings.ring[i]!,
  side: crossings.side[i]!,
  vertex: crossings.along[i]! < 0,
  x: crossings.x[i]!,
  y: crossings.y[i]!,
  along: Math.max(0, crossings.along[i]!),
})

function pushChord(chords: Chord[], a: ChordEnd, b: ChordEnd, t0: number, t1: number): void {
  const lengthM = Math.sqrt((b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y))
  chords.push({ a, b, lengthM, t0, t1 })
}

/** The chord between two ends is a straight edge of the region. */
function isEdge(rings: CutRegion['rings'], a: ChordEnd, b: ChordEnd): boolean {
  if (!a.vertex || !b.vertex || a.ring !== b.ring) return false
  const { sides } = rings[a.ring]!
  const n = sides.length
  return (
    ((a.side + 1) % n === b.side && sides[a.side]!.sweep === 0) ||
    ((b.side + 1) % n === a.side && sides[b.side]!.sweep === 0)
  )
}

/** Puts the chord between two crossings, broken at what it touches in between. */
function pushBroken(
  chords: Chord[],
  rings: CutRegion['rings'],
  from: number,
  to: number,
  inside: readonly Touch[],
  atTouch: AtTouch,
): void {
  const put = (a: ChordEnd, b: ChordEnd, ta: number, tb: number): void => {
    if (atTouch === 'break' || !isEdge(rings, a, b)) pushChord(chords, a, b, ta, tb)
  }
  let a = endAt(from)
  let ta = crossings.t[from]!
  for (const { t, ring, side } of inside) {
    if (side < 0 || t - ta < 10 * snapM) continue
    const { x, y } = rings[ring]!.sides[side]!
    const vertex: ChordEnd = { ring, side, vertex: true, x, y, along: 0 }
    put(a, vertex, ta, t)
    a = vertex
    ta = t
  }
  put(a, endAt(to), ta, crossings.t[to]!)
}

/** At equal positions a crossing that leaves is taken first when inside, one that enters when outside. */
function pairCrossings(rings: CutRegion['rings'], touching: readonly Touch[] | null, atTouch: AtTouch): Chord[] {
  const chords: Chord[] = []
  const { count, t, enters, order } = crossings
  for (let i = 0; i < count; i++) order[i] = i
  let open = -1
  for (let i = 0; i < count; i++) {
    for (let j = i; j < count && t[order[j]!]! - t[order[i]!]! < snapM; j++)
      if (enters[order[j]!] === open < 0) {
        const moved = order[j]!
        order[j] = order[i]!
        order[i] = moved
        break
      }
    const at = order[i]!
    if (enters[at]) open = at
    else if (open >= 0) {
      const t0 = t[open]!
      const t1 = t[at]!
      if (t1 - t0 > 10 * snapM) {
        const inside = touching?.filter(p => p.t > t0 + snapM && p.t < t1 - snapM)
        if (!inside || inside.length === 0) pushChord(chords, endAt(open), endAt(at), t0, t1)
        else if (atTouch !== 'drop')
          pushBroken(
            chords,
            rings,
            open,
            at,
            inside.sort((p, q) => p.t - q.t),
            atTouch,
          )
      }
      open = -1
    }
  }
  return chords
}

/** The chords seen from both sides of the line; most lines pass no vertex and look the same from either. */
export function findChordsOfBoth(
  region: CutRegion,
  ux: number,
  uy: number,
  offset: number,
  work: Work,
  atTouch: AtTouch,
): Chord[] {
  const chords = findChords(region, ux, uy, offset, true, work, atTouch)
  return crossings.onVertex ? [...chords, ...findChords(region, ux, uy, offset, false, work, atTouch)] : chords
}
