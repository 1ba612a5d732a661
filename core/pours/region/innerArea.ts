/** How much of a region lies farther from all of its edges than a finisher reaches. */
import type { CutRegion } from './cutRegion'
import { type Box, extentOf } from './minimumBox'

/** Straight pieces an arc of ≤ 45° is looked at as: off by 0.5 % of its radius at most. */
const arcPieces = 4
/** An edge that rises less than this runs along the lines the area is summed over (m). */
const alongM = 0.02
/** Lines between two such edges: at the points of Gauss's rule of two in every stretch of this length (m). */
const stretchM = 1.5
/** With more such edges (an outline traced in hundreds of short sides) only those apart by a share of the height split. */
const mostBreaks = 400
const tracedStretches = 40
const gauss = 0.5 - Math.sqrt(3) / 6

/** Pieces of the edges along and across the box; of one line its crossings and what is near an edge. Kept for reuse. */
const scratch = {
  pieces: 0,
  t: [] as number[],
  s: [] as number[],
  endT: [] as number[],
  endS: [] as number[],
  breaks: [] as number[],
  crossings: [] as number[],
  covers: 0,
  joinedFrom: Number.POSITIVE_INFINITY,
  joinedTo: Number.NEGATIVE_INFINITY,
  from: [] as number[],
  to: [] as number[],
}

function putPiece(t0: number, s0: number, t1: number, s1: number, low: number, high: number, reachM: number): void {
  const i = scratch.pieces++
  scratch.t[i] = t0
  scratch.s[i] = s0
  scratch.endT[i] = t1
  scratch.endS[i] = s1
  if (s1 - s0 > alongM || s0 - s1 > alongM) return
  const middle = (s0 + s1) / 2
  if (middle - reachM > low && middle - reachM < high) scratch.breaks.push(middle - reachM)
  if (middle + reachM > low && middle + reachM < high) scratch.breaks.push(middle + reachM)
}

function putEdges(region: CutRegion, ux: number, uy: number, low: number, high: number, reachM: number): void {
  for (const { sides } of region.rings)
    for (let i = 0; i < sides.length; i++) {
      const side = sides[i]!
      const end = sides[i + 1 === sides.length ? 0 : i + 1]!
      let t = ux * side.x + uy * side.y
      let s = -uy * side.x + ux * side.y
      const endT = ux * end.x + uy * end.y
      const endS = -uy * end.x + ux * end.y
      if (side.sweep !== 0) {
        const ct = ux * side.cx + uy * side.cy
        const cs = -uy * side.cx + ux * side.cy
        const c = Math.cos(side.sweep / arcPieces)
        const d = Math.sin(side.sweep / arcPieces)
        for (let k = 1; k < arcPieces; k++) {
          const nextT = ct + c * (t - ct) - d * (s - cs)
          const nextS = cs + d * (t - ct) + c * (s - cs)
          putPiece(t, s, nextT, nextS, low, high, reachM)
          t = nextT
          s = nextS
        }
      }
      putPiece(t, s, endT, endS, low, high, reachM)
    }
}

/** Leaves out what lies too near the one before; the last stays. `breaks` rise. */
function thinBreaks(breaks: number[], leastM: number): void {
  const last = breaks.at(-1)!
  let kept = 0
  for (const at of breaks) if (kept === 0 || at - breaks[kept - 1]! >= leastM) breaks[kept++] = at
  breaks[kept - 1] = last
  breaks.length = kept
}

/** Covers what of the line at `s` lies within `reachM` of a piece: that is convex, so one stretch. */
function coverNear(piece: number, s: number, reachM: number): void {
  const t0 = scratch.t[piece]!
  const t1 = scratch.endT[piece]!
  const d0 = s - scratch.s[piece]!
  const d1 = s - scratch.endS[piece]!
  if ((d0 > reachM && d1 > reachM) || (d0 < -reachM && d1 < -reachM)) return
  let from = Number.POSITIVE_INFINITY
  let to = Number.NEGATIVE_INFINITY
  if (d0 < reachM && d0 > -reachM) {
    const half = Math.sqrt(reachM * reachM - d0 * d0)
    from = t0 - half
    to = t0 + half
  }
  if (d1 < reachM && d1 > -reachM) {
    const half = Math.sqrt(reachM * reachM - d1 * d1)
    if (t1 - half < from) from = t1 - half
    if (t1 + half > to) to = t1 + half
  }
  const dt = t1 - t0
  const ds = d0 - d1
  if (ds > 1e-9 || ds < -1e-9) {
    // Within reach of the piece's own line, between the perpendiculars at its ends.
    const l2 = dt * dt + ds * ds
    const middle = t0 + (d0 * dt) / ds
    const half = (reachM * Math.sqrt(l2)) / Math.abs(ds)
    let low = middle - half
    let high = middle + half
    if (dt > 1e-9 || dt < -1e-9) {
      const a = t0 - (d0 * ds) / dt
      const b = a + l2 / dt
      low = Math.max(low, Math.min(a, b))
      high = Math.min(high, Math.max(a, b))
    } else if (d0 * d1 > 0) high = low
    if (high > low) {
      if (low < from) from = low
      if (high > to) to = high
    }
  }
  if (to > from) joinCover(from, to)
}

/** Goes on with the stretch under way where they overlap, as those of sides next to each other do. */
function joinCover(from: number, to: number): void {
  if (from > scratch.joinedTo || to < scratch.joinedFrom) {
    putJoined()
    scratch.joinedFrom = from
    scratch.joinedTo = to
    return
  }
  if (from < scratch.joinedFrom) scratch.joinedFrom = from
  if (to > scratch.joinedTo) scratch.joinedTo = to
}

/** Puts the stretch under way among the others, in their order. */
function putJoined(): void {
  const { joinedFrom: from, joinedTo: to } = scratch
  scratch.joinedFrom = Number.POSITIVE_INFINITY
  scratch.joinedTo = Number.NEGATIVE_INFINITY
  if (from > to) return
  let i = scratch.covers++
  for (; i > 0 && scratch.from[i - 1]! > from; i--) {
    scratch.from[i] = scratch.from[i - 1]!
    scratch.to[i] = scratch.to[i - 1]!
  }
  scratch.from[i] = from
  scratch.to[i] = to
}

/** Length of the line at `s` between tLow and tHigh that is inside and near no edge. */
function freeLength(s: number, tLow: number, tHigh: number, reachM: number): number {
  const { crossings, from, to } = scratch
  scratch.covers = 0
  crossings.length = 0
  for (let i = 0; i < scratch.pieces; i++) {
    coverNear(i, s, reachM)
    const s0 = scratch.s[i]!
    const s1 = scratch.endS[i]!
    if (s0 > s !== s1 > s) {
      const t0 = scratch.t[i]!
      crossings.push(t0 + ((s - s0) / (s1 - s0)) * (scratch.endT[i]! - t0))
    }
  }
  putJoined()
  crossings.sort((a, b) => a - b)
  let free = 0
  let cover = 0
  let reached = tLow
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    if (crossings[i]! > reached) reached = crossings[i]!
    const end = Math.min(crossings[i + 1]!, tHigh)
    for (; cover < scratch.covers && from[cover]! < end; cover++) {
      if (from[cover]! > reached) free += from[cover]! - reached
      if (to[cover]! > reached) reached = to[cover]!
    }
    if (reached < end) free += end - reached
  }
  return free
}

/**
 * Area (m²) of the region's points farther than `reachM` (m, > 0) from every edge, openings' included; `box` is the
 * least box of its outer ring. Summed over lines along the box, split where an edge runs along them: exact for
 * rectangles, else to a few parts in a hundred.
 */
export function innerArea(region: CutRegion, { ux, uy, longM, shortM }: Box, reachM: number): number {
  if (shortM <= 2 * reachM) return 0
  const isRectangle = region.rings.length === 1 && region.areaM2 > longM * shortM * (1 - 1e-9)
  if (isRectangle) return (longM - 2 * reachM) * (shortM - 2 * reachM)
  const outer = region.rings[0]!
  const [tLow, tHigh] = extentOf(outer, ux, uy)
  const [sLow, sHigh] = extentOf(outer, -uy, ux)
  const low = sLow + reachM
  const high = sHigh - reachM
  scratch.pieces = 0
  const { breaks } = scratch
  breaks.length = 0
  breaks.push(low, high)
  putEdges(region, ux, uy, low, high, reachM)
  breaks.sort((a, b) => a - b)
  if (breaks.length > mostBreaks) thinBreaks(breaks, (high - low) / tracedStretches)
  let areaM2 = 0
  for (let i = 0; i + 1 < breaks.length; i++) {
    const span = breaks[i + 1]! - breaks[i]!
    if (span < 1e-6) continue
    const parts = Math.ceil(span / stretchM)
    const step = span / parts
    for (let k = 0; k < parts; k++)
      for (const share of [gauss, 1 - gauss])
        areaM2 += (step / 2) * freeLength(breaks[i]! + (k + share) * step, tLow + reachM, tHigh - reachM, reachM)
  }
  return areaM2
}
