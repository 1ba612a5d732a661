/** Where contraction joints are sawn or tooled: straight lines that divide each pour into panels. */
import type { Pt } from '../../shared/document/primitives'
import type { CurveRegion } from '../geometry/curve'
import { reentrantAboveDeg } from '../pours/pourCost'
import { findChords } from '../pours/region/chords'
import { type CutRegion, interiorDegs, toCutRegion } from '../pours/region/cutRegion'
import { extentOf, minimumBox } from '../pours/region/minimumBox'

export interface ContractionLine {
  readonly pourId: string
  readonly from: Pt
  readonly to: Pt
  readonly lengthM: number
}

export interface JointedPour {
  readonly id: string
  readonly region: CurveRegion
}

/** Panels narrower than this share of the spacing are not made for the sake of a line's place. */
const leastPanel = 0.4
/** Lines shorter than this are not sawn (m): 2 ft. */
const leastLineM = 0.6096
/** Lines this close to a joint or an edge that runs along them are that joint (m): 1 ft. */
const besideM = 0.3048
/** A line snaps to one of a neighbor's within this share of the spacing. */
const snapShare = 0.25

interface Axis {
  readonly ux: number
  readonly uy: number
}

const offsetOf = ({ ux, uy }: Axis, x: number, y: number): number => -uy * x + ux * y

/** Offsets of corners that need a line: re-entrant ones of the pour's edges and openings. */
function cornerOffsets(pour: CutRegion, axis: Axis): number[] {
  return pour.rings.flatMap(ring => {
    const degs = interiorDegs(ring)
    return ring.sides.flatMap((side, i) => (degs[i]! > reentrantAboveDeg ? [offsetOf(axis, side.x, side.y)] : []))
  })
}

/** Middles of openings without corners: a round opening cracks from its sides. */
function roundOpenings(pour: CutRegion, axis: Axis): number[] {
  return pour.rings.slice(1).flatMap(ring => {
    if (interiorDegs(ring).some(deg => deg > reentrantAboveDeg)) return []
    const [low, high] = extentOf(ring, -axis.uy, axis.ux)
    return [(low + high) / 2]
  })
}

/**
 * Offsets of the lines along one axis: first those of corners, then the gaps between them in equal panels no wider than
 * the spacing, each moved to a line of a pour beside it where that is near.
 */
function offsetsAlong(pour: CutRegion, axis: Axis, spacingM: number, beside: readonly number[]): number[] {
  const [low, high] = extentOf(pour.rings[0]!, -axis.uy, axis.ux)
  const least = leastPanel * spacingM
  const fixed = [low, high]
  const isFree = (at: number): boolean => fixed.every(other => Math.abs(other - at) >= least)
  for (const at of [...cornerOffsets(pour, axis), ...roundOpenings(pour, axis)]) if (isFree(at)) fixed.push(at)
  fixed.sort((a, b) => a - b)
  const lines: number[] = []
  for (let i = 1; i < fixed.length; i++) {
    const [from, to] = [fixed[i - 1]!, fixed[i]!]
    const panels = Math.ceil((to - from) / spacingM - 1e-6)
    let last = from
    for (let k = 1; k < panels; k++) {
      const even = from + ((to - from) * k) / panels
      const near = beside
        .filter(at => Math.abs(at - even) <= snapShare * spacingM && at - last <= spacingM + 1e-6)
        .filter(at => to - at <= (panels - k) * spacingM + 1e-6)
        .sort((a, b) => Math.abs(a - even) - Math.abs(b - even))[0]
      last = near ?? even
      lines.push(last)
    }
    if (i + 1 < fixed.length) lines.push(to)
  }
  return lines
}

/** True where an edge or joint of the pour runs along the line close by for most of it. */
function isAlongEdge(pour: CutRegion, axis: Axis, offset: number, t0: number, t1: number): boolean {
  let shared = 0
  for (const { sides } of pour.rings)
    for (const [i, s] of sides.entries()) {
      if (s.sweep !== 0) continue
      const e = sides[(i + 1) % sides.length]!
      if (
        Math.abs(offsetOf(axis, s.x, s.y) - offset) > besideM ||
        Math.abs(offsetOf(axis, e.x, e.y) - offset) > besideM
      )
        continue
      const a = axis.ux * s.x + axis.uy * s.y
      const b = axis.ux * e.x + axis.uy * e.y
      shared += Math.max(0, Math.min(t1, Math.max(a, b)) - Math.max(t0, Math.min(a, b)))
    }
  return shared > (t1 - t0) / 2
}

/**
 * Lines of contraction joint in each pour of a slab, along and across the slab's least box, from edge to edge of the
 * pour (construction joints and openings are edges too), so that none ends on another. Pours of a slab take up each
 * other's lines where they can.
 * @param spacingM most distance between joints, > 0
 */
export function contractionLines(pours: readonly JointedPour[], spacingM: number): ContractionLine[] {
  const cut = pours.map(({ id, region }) => ({ id, pour: toCutRegion(region) }))
  const largest = cut.reduce<CutRegion | null>(
    (most, { pour }) => (most && most.areaM2 >= pour.areaM2 ? most : pour),
    null,
  )
  if (!largest) return []
  const { ux, uy } = minimumBox(largest.rings[0]!)
  const axes: readonly Axis[] = [
    { ux, uy },
    { ux: -uy, uy: ux },
  ]
  const lines: ContractionLine[] = []
  for (const axis of axes) {
    const placed: number[] = []
    for (const { id, pour } of cut) {
      const own = offsetsAlong(pour, axis, spacingM, placed)
      placed.push(...own)
      for (const offset of own)
        for (const { a, b, lengthM, t0, t1 } of findChords(pour, axis.ux, axis.uy, offset, true, { done: 0 }, 'break'))
          if (lengthM >= leastLineM && !isAlongEdge(pour, axis, offset, t0, t1))
            lines.push({ pourId: id, from: [a.x, a.y], to: [b.x, b.y], lengthM })
    }
  }
  return lines
}
