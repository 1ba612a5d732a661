/** Which pours touch along a joint, and how much of each pour's edge is open to the outside. */

import type { CurveRegion } from '../geometry/curve'
import { type CutRegion, type Side, toCutRegion } from './region/cutRegion'

export interface PourAdjacency {
  readonly pairs: readonly { readonly a: string; readonly b: string; readonly lengthM: number }[]
  /** Length of each pour's edges that no other pour shares, m. */
  readonly openM: ReadonlyMap<string, number>
}

/** Edges this close to one line touch (m): slabs within 0.1 mm share a joint. */
const touchM = 1.5e-4
const leastSharedM = 0.01

interface Line {
  readonly ax: number
  readonly ay: number
  readonly bx: number
  readonly by: number
}

const linesOf = (region: CutRegion): Line[] =>
  region.rings.flatMap(({ sides }) =>
    sides.flatMap((s: Side, i) => {
      if (s.sweep !== 0) return []
      const e = sides[(i + 1) % sides.length]!
      return [{ ax: s.x, ay: s.y, bx: e.x, by: e.y }]
    }),
  )

interface ArcSide {
  readonly cx: number
  readonly cy: number
  readonly r: number
  /** Counter-clockwise from `from`, radians. */
  readonly from: number
  readonly sweep: number
}

const arcsOf = (region: CutRegion): ArcSide[] =>
  region.rings.flatMap(({ sides }) =>
    sides.flatMap((s: Side, i) => {
      if (s.sweep === 0) return []
      const e = sides[(i + 1) % sides.length]!
      const start = s.sweep > 0 ? s : e
      return [
        { cx: s.cx, cy: s.cy, r: s.r, from: Math.atan2(start.y - s.cy, start.x - s.cx), sweep: Math.abs(s.sweep) },
      ]
    }),
  )

/** Common length of two arcs of one circle; each is at most 45°. */
function arcOverlap(a: ArcSide, b: ArcSide): number {
  if (Math.abs(a.cx - b.cx) > touchM || Math.abs(a.cy - b.cy) > touchM || Math.abs(a.r - b.r) > touchM) return 0
  const turn = 2 * Math.PI
  let d = b.from - a.from
  d -= turn * Math.round(d / turn)
  return a.r * Math.max(0, Math.min(a.sweep, d + b.sweep) - Math.max(0, d))
}

function overlap(s: Line, o: Line): number {
  const length = Math.hypot(s.bx - s.ax, s.by - s.ay)
  if (length < 1e-9) return 0
  const ux = (s.bx - s.ax) / length
  const uy = (s.by - s.ay) / length
  const off = (x: number, y: number) => Math.abs(-(x - s.ax) * uy + (y - s.ay) * ux)
  if (off(o.ax, o.ay) > touchM || off(o.bx, o.by) > touchM) return 0
  const ta = (o.ax - s.ax) * ux + (o.ay - s.ay) * uy
  const tb = (o.bx - s.ax) * ux + (o.by - s.ay) * uy
  return Math.max(0, Math.min(length, Math.max(ta, tb)) - Math.max(0, Math.min(ta, tb)))
}

interface Extent {
  readonly x0: number
  readonly y0: number
  readonly x1: number
  readonly y1: number
}

const extentOf = (lines: readonly Line[], arcs: readonly ArcSide[]): Extent => {
  let x0 = Number.POSITIVE_INFINITY
  let y0 = Number.POSITIVE_INFINITY
  let x1 = Number.NEGATIVE_INFINITY
  let y1 = Number.NEGATIVE_INFINITY
  for (const l of lines) {
    x0 = Math.min(x0, l.ax, l.bx)
    y0 = Math.min(y0, l.ay, l.by)
    x1 = Math.max(x1, l.ax, l.bx)
    y1 = Math.max(y1, l.ay, l.by)
  }
  for (const { cx, cy, r } of arcs) {
    x0 = Math.min(x0, cx - r)
    y0 = Math.min(y0, cy - r)
    x1 = Math.max(x1, cx + r)
    y1 = Math.max(y1, cy + r)
  }
  return { x0, y0, x1, y1 }
}

const isApart = (a: Extent, b: Extent): boolean =>
  a.x0 > b.x1 + touchM || b.x0 > a.x1 + touchM || a.y0 > b.y1 + touchM || b.y0 > a.y1 + touchM

export function pourAdjacency(pours: readonly { readonly id: string; readonly region: CurveRegion }[]): PourAdjacency {
  const cut = pours.map(p => toCutRegion(p.region))
  const lines = cut.map(linesOf)
  const arcs = cut.map(arcsOf)
  const extents = lines.map((own, i) => extentOf(own, arcs[i]!))
  const open = cut.map(region => region.perimeterM)
  const pairs: { a: string; b: string; lengthM: number }[] = []
  for (let i = 0; i < pours.length; i++)
    for (let j = i + 1; j < pours.length; j++) {
      if (isApart(extents[i]!, extents[j]!)) continue
      let lengthM = 0
      for (const s of lines[i]!) for (const o of lines[j]!) lengthM += overlap(s, o)
      for (const s of arcs[i]!) for (const o of arcs[j]!) lengthM += arcOverlap(s, o)
      if (lengthM < leastSharedM) continue
      pairs.push({ a: pours[i]!.id, b: pours[j]!.id, lengthM })
      open[i]! -= lengthM
      open[j]! -= lengthM
    }
  return { pairs, openM: new Map(pours.map((p, i) => [p.id, Math.max(0, open[i]!)])) }
}
