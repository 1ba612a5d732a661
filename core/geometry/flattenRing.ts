import type { Pt } from '../../shared/document/primitives'
import type { CurveEdge, CurveRegion, CurveRing, Region, Ring } from './curve'
import { angleFrom, onCircle } from './edgeAt'

/** 1/16 in: the coarsest chord a drawing, a raster or a printed ring may show. */
export const drawingSagittaM = 0.0015875

/**
 * Number of equal chords whose sagitta is at most `sagittaM`: ceil(θ / (2 acos(1 − t/R))).
 * The sagitta of a chord is R(1 − cos(half its angle)).
 */
export function chordCount(radiusM: number, sweepRad: number, sagittaM: number): number {
  const step = sagittaM >= radiusM ? Math.PI / 2 : 2 * Math.acos(1 - sagittaM / radiusM)
  return Math.max(1, Math.ceil(Math.abs(sweepRad) / Math.min(step, Math.PI / 2) - 1e-9))
}

/** The edge's points from its start up to, but not including, its end. */
export function flattenEdge(edge: CurveEdge, sagittaM: number = drawingSagittaM): Pt[] {
  const points: Pt[] = [edge.from]
  if (!edge.arc) return points
  const { center, radiusM, sweepRad } = edge.arc
  const n = chordCount(radiusM, sweepRad, sagittaM)
  const start = angleFrom(center, edge.from)
  for (let i = 1; i < n; i++) points.push(onCircle(edge.arc, start + (sweepRad * i) / n))
  return points
}

/** A flat ring whose points lie on the curve, chords at most `sagittaM` (default 1/16 in) away from it. */
export function flattenRing(ring: CurveRing, sagittaM: number = drawingSagittaM): Ring {
  return ring.flatMap(edge => flattenEdge(edge, sagittaM))
}

export function flattenRegion(region: CurveRegion, sagittaM: number = drawingSagittaM): Region {
  return { ring: flattenRing(region.outer, sagittaM), holes: region.holes.map(h => flattenRing(h, sagittaM)) }
}
