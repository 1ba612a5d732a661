import type { Finding } from '../../shared/problem'
import { boxesMeet, edgeBounds, ringBounds } from './bounds'
import { ringContains } from './contains'
import type { CurveRing } from './curve'
import { intersectCurves, subtractCurves } from './curveBoolean'
import { gridOf } from './edgeGrid'
import { intersectEdges } from './intersectEdges'
import type { ResolvedOpening } from './resolvedSlab'
import { reverseRing } from './reverseRing'
import { curveArea } from './ringArea'

/** Rings nearer than this touch. */
const touchM = 1e-4
/** Overlaps below 1 cm² are touches. */
const smallAreaM2 = 1e-4

/** The first point where two rings come within touching distance. */
function meetingPoint(a: CurveRing, b: CurveRing) {
  if (!boxesMeet(ringBounds(a), ringBounds(b), touchM)) return undefined
  const grid = gridOf(a)
  for (const edge of b)
    for (const i of grid.near(edgeBounds(edge), touchM)) {
      const p = intersectEdges(a[i]!, edge, touchM)[0]
      if (p) return p
    }
  return undefined
}

export interface CheckedOpenings {
  readonly findings: readonly Finding[]
  /** Ids of openings that lie wholly outside: they take no part. */
  readonly left: ReadonlySet<string>
  /** True where all others lie inside the outline and clear of each other. */
  readonly apart: boolean
}

/**
 * Openings must lie inside the outline, clear of it and of each other. Outside, wholly or in part: `stop`. Touching,
 * or overlapping one another (then the common ground counts once): `check`. `nameOf` tells which is meant: `the
 * pool`, `planter 2`.
 */
export function checkOpenings(
  outline: CurveRing,
  openings: readonly ResolvedOpening[],
  nameOf: (id: string) => string,
): CheckedOpenings {
  const findings: Finding[] = []
  const left = new Set<string>()
  let apart = true
  const solid = (ring: CurveRing) => [{ outer: reverseRing(ring), holes: [] }]
  openings.forEach((opening, i) => {
    const { id, ring } = opening
    const meet = meetingPoint(outline, ring)
    if (!meet && !ringContains(outline, ring[0]!.from)) {
      left.add(id)
      findings.push({
        code: 'openingOutside',
        severity: 'stop',
        values: { name: nameOf(id) },
        at: { entityId: id, point: ring[0]!.from },
      })
      return
    }
    if (meet) {
      apart = false
      const outside = curveArea(subtractCurves(solid(ring), [{ outer: outline, holes: [] }]).regions)
      const code = outside > smallAreaM2 ? 'openingOutside' : 'openingTouches'
      findings.push({
        code,
        severity: code === 'openingOutside' ? 'stop' : 'check',
        values: { name: nameOf(id), outsideM2: outside },
        at: { entityId: id, point: meet },
      })
    }
    for (const other of openings.slice(0, i)) {
      if (left.has(other.id)) continue
      const met = meetingPoint(other.ring, ring)
      const within = ringContains(other.ring, ring[0]!.from) || ringContains(ring, other.ring[0]!.from)
      if (!met && !within) continue
      apart = false
      const common = curveArea(intersectCurves(solid(other.ring), solid(ring)).regions)
      findings.push({
        code: common > smallAreaM2 ? 'openingsOverlap' : 'openingTouches',
        severity: 'check',
        values: { name: nameOf(id), otherId: other.id, commonM2: common },
        at: { entityId: id, point: met ?? ring[0]!.from },
      })
    }
  })
  return { findings, left, apart }
}
