import type { CurveEdge, CurveRegion, CurveRing } from './curve'

const sameEdge = (a: CurveEdge, b: CurveEdge): boolean =>
  a === b ||
  (a.edgeId === b.edgeId &&
    a.from[0] === b.from[0] &&
    a.from[1] === b.from[1] &&
    a.to[0] === b.to[0] &&
    a.to[1] === b.to[1] &&
    a.arc?.sweepRad === b.arc?.sweepRad &&
    a.arc?.radiusM === b.arc?.radiusM &&
    a.arc?.center[0] === b.arc?.center[0] &&
    a.arc?.center[1] === b.arc?.center[1])

const sameRing = (a: CurveRing, b: CurveRing): boolean =>
  a === b || (a.length === b.length && a.every((edge, i) => sameEdge(edge, b[i]!)))

/** True where regions are the same edge by edge, to the last bit: whatever is worked out of them is the same too. */
export const sameRegions = (a: readonly CurveRegion[], b: readonly CurveRegion[]): boolean =>
  a === b ||
  (a.length === b.length &&
    a.every(({ outer, holes }, i) => {
      const other = b[i]!
      return (
        sameRing(outer, other.outer) &&
        holes.length === other.holes.length &&
        holes.every((hole, k) => sameRing(hole, other.holes[k]!))
      )
    }))
