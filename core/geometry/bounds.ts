import type { Pt } from '../../shared/document/primitives'
import type { Arc, CurveEdge, CurveRing, Ring } from './curve'
import { angleFrom } from './edgeAt'

export interface Box {
  readonly minX: number
  readonly minY: number
  readonly maxX: number
  readonly maxY: number
}

/** The box around points; of none: an empty box (min > max). */
export function pointBounds(points: readonly Pt[]): Box {
  let minX = Infinity
  let minY = Infinity
  let maxX = -Infinity
  let maxY = -Infinity
  for (const p of points) {
    const x = p[0]
    const y = p[1]
    if (x < minX) minX = x
    if (x > maxX) maxX = x
    if (y < minY) minY = y
    if (y > maxY) maxY = y
  }
  return { minX, minY, maxX, maxY }
}

export const flatBounds = (ring: Ring): Box => pointBounds(ring)

/** True where the arc's sweep from its start passes `angleRad`. */
export function sweepCovers(startRad: number, sweepRad: number, angleRad: number): boolean {
  const turn = 2 * Math.PI
  const d = sweepRad >= 0 ? angleRad - startRad : startRad - angleRad
  return d - Math.floor(d / turn) * turn <= Math.abs(sweepRad)
}

/** Arcs and rings never change; a slab's are asked for their boxes many times. */
const knownArcs = new WeakMap<CurveEdge, Box>()
const knownRings = new WeakMap<CurveRing, Box>()

/** The exact box around one edge, the bulge of an arc included. */
export function edgeBounds(edge: CurveEdge): Box {
  const { from, to, arc } = edge
  // Comparing four numbers takes less than looking them up.
  if (!arc)
    return {
      minX: Math.min(from[0], to[0]),
      minY: Math.min(from[1], to[1]),
      maxX: Math.max(from[0], to[0]),
      maxY: Math.max(from[1], to[1]),
    }
  const known = knownArcs.get(edge)
  if (known) return known
  const box = arcBounds(from, to, arc)
  knownArcs.set(edge, box)
  return box
}

function arcBounds(from: Pt, to: Pt, { center: [cx, cy], radiusM, sweepRad }: Arc): Box {
  const start = angleFrom([cx, cy], from)
  const box = pointBounds([from, to])
  return {
    minX: sweepCovers(start, sweepRad, Math.PI) ? Math.min(box.minX, cx - radiusM) : box.minX,
    minY: sweepCovers(start, sweepRad, -Math.PI / 2) ? Math.min(box.minY, cy - radiusM) : box.minY,
    maxX: sweepCovers(start, sweepRad, 0) ? Math.max(box.maxX, cx + radiusM) : box.maxX,
    maxY: sweepCovers(start, sweepRad, Math.PI / 2) ? Math.max(box.maxY, cy + radiusM) : box.maxY,
  }
}

export function joinBounds(boxes: Iterable<Box>): Box {
  let minX = Infinity
  let minY = Infinity
  let maxX = -Infinity
  let maxY = -Infinity
  for (const b of boxes) {
    minX = Math.min(minX, b.minX)
    minY = Math.min(minY, b.minY)
    maxX = Math.max(maxX, b.maxX)
    maxY = Math.max(maxY, b.maxY)
  }
  return { minX, minY, maxX, maxY }
}

/** The exact box around a ring. */
export function ringBounds(ring: CurveRing): Box {
  const known = knownRings.get(ring)
  if (known) return known
  const box = joinBounds(ring.map(edgeBounds))
  knownRings.set(ring, box)
  return box
}

/** As `boxesMeet` for the box around an edge, which is not made of a straight one. */
export function edgeMeets(edge: CurveEdge, box: Box, marginM = 0): boolean {
  if (edge.arc) return boxesMeet(edgeBounds(edge), box, marginM)
  const { from, to } = edge
  return (
    Math.min(from[0], to[0]) <= box.maxX + marginM &&
    box.minX <= Math.max(from[0], to[0]) + marginM &&
    Math.min(from[1], to[1]) <= box.maxY + marginM &&
    box.minY <= Math.max(from[1], to[1]) + marginM
  )
}

/** True where two boxes are nearer than `marginM` to each other, or overlap. */
export function boxesMeet(a: Box, b: Box, marginM = 0): boolean {
  return (
    a.minX <= b.maxX + marginM && b.minX <= a.maxX + marginM && a.minY <= b.maxY + marginM && b.minY <= a.maxY + marginM
  )
}
