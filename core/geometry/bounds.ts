import type { Pt } from '../../shared/document/primitives'
import type { CurveEdge, CurveRing, Ring } from './curve'
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

/** Edges and rings never change; a slab's are asked for their boxes many times. */
const knownEdges = new WeakMap<CurveEdge, Box>()
const knownRings = new WeakMap<CurveRing, Box>()

/** The exact box around one edge, the bulge of an arc included. */
export function edgeBounds(edge: CurveEdge): Box {
  const known = knownEdges.get(edge)
  if (known) return known
  const box = findEdgeBounds(edge)
  knownEdges.set(edge, box)
  return box
}

function findEdgeBounds({ from, to, arc }: CurveEdge): Box {
  let minX = Math.min(from[0], to[0])
  let maxX = Math.max(from[0], to[0])
  let minY = Math.min(from[1], to[1])
  let maxY = Math.max(from[1], to[1])
  if (arc) {
    const start = angleFrom(arc.center, from)
    const [cx, cy] = arc.center
    if (sweepCovers(start, arc.sweepRad, 0)) maxX = Math.max(maxX, cx + arc.radiusM)
    if (sweepCovers(start, arc.sweepRad, Math.PI / 2)) maxY = Math.max(maxY, cy + arc.radiusM)
    if (sweepCovers(start, arc.sweepRad, Math.PI)) minX = Math.min(minX, cx - arc.radiusM)
    if (sweepCovers(start, arc.sweepRad, -Math.PI / 2)) minY = Math.min(minY, cy - arc.radiusM)
  }
  return { minX, minY, maxX, maxY }
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

/** True where two boxes are nearer than `marginM` to each other, or overlap. */
export function boxesMeet(a: Box, b: Box, marginM = 0): boolean {
  return (
    a.minX <= b.maxX + marginM && b.minX <= a.maxX + marginM && a.minY <= b.maxY + marginM && b.minY <= a.maxY + marginM
  )
}
