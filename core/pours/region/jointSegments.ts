/** Where a joint lies in a region. */
import type { Pt } from '../../../shared/document/primitives'
import { type Chord, findChords } from './chords'
import type { CutRegion } from './cutRegion'
import type { Segment, SegmentEnd } from './traceFaces'

/** An end this close to the boundary or to another joint stays there (m). */
export const nearM = 1e-4

export interface Line {
  readonly a: Pt
  readonly b: Pt
}

/** The pieces of a joint's line in the region: extended or trimmed to the boundary or joint it meets. */
export function jointSegments(region: CutRegion, line: Line, others: readonly Line[], joint: number): Segment[] {
  const length = Math.hypot(line.b[0] - line.a[0], line.b[1] - line.a[1])
  if (length < nearM) return []
  const ux = (line.b[0] - line.a[0]) / length
  const uy = (line.b[1] - line.a[1]) / length
  const offset = -uy * line.a[0] + ux * line.a[1]
  const base = ux * line.a[0] + uy * line.a[1]
  const chords: Chord[] = []
  for (const onIsAbove of [true, false])
    for (const chord of findChords(region, ux, uy, offset, onIsAbove, { done: 0 }, 'break'))
      if (!chords.some(c => Math.abs(c.t0 - chord.t0) < nearM && Math.abs(c.t1 - chord.t1) < nearM)) chords.push(chord)
  // Where other joints cross this line.
  const stops: number[] = []
  for (const o of others) {
    const da = -uy * o.a[0] + ux * o.a[1] - offset
    const db = -uy * o.b[0] + ux * o.b[1] - offset
    const ta = ux * o.a[0] + uy * o.a[1]
    const tb = ux * o.b[0] + uy * o.b[1]
    if (Math.abs(da) <= nearM) stops.push(ta)
    if (Math.abs(db) <= nearM) stops.push(tb)
    if (da * db < 0) stops.push(ta + ((tb - ta) * da) / (da - db))
  }
  const settle = (t: number, outward: number): number => {
    const inside = chords.find(c => t > c.t0 + nearM && t < c.t1 - nearM)
    if (!inside || stops.some(s => Math.abs(s - t) <= nearM)) return t
    let end = outward > 0 ? inside.t1 : inside.t0
    for (const s of stops) if ((s - t) * outward > 0 && (end - s) * outward > 0) end = s
    return end
  }
  const t0 = settle(base, -1)
  const t1 = settle(base + length, 1)
  const at = (t: number, chord: Chord): SegmentEnd => {
    if (Math.abs(t - chord.t0) <= nearM) return { x: chord.a.x, y: chord.a.y, on: chord.a }
    if (Math.abs(t - chord.t1) <= nearM) return { x: chord.b.x, y: chord.b.y, on: chord.b }
    return { x: ux * t - uy * offset, y: uy * t + ux * offset, on: null }
  }
  return chords.flatMap(chord => {
    const from = Math.max(t0, chord.t0)
    const to = Math.min(t1, chord.t1)
    return to - from > nearM ? [{ a: at(from, chord), b: at(to, chord), joint }] : []
  })
}
