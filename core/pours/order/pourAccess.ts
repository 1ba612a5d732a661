/** Where the slab can be stepped on: open ground along its outline, and the ways in and out that end at it. */
import type { Caster } from '../../../shared/document/caster'
import type { Path } from '../../../shared/document/path'
import type { Id, Pt } from '../../../shared/document/primitives'
import { type Box, pointBounds } from '../../geometry/bounds'
import { distanceToEdge, flatRingContains, ringContains } from '../../geometry/contains'
import type { CurveRegion, CurveRing, Ring } from '../../geometry/curve'
import { pointAt, tangentAt } from '../../geometry/edgeAt'
import { edgeLength } from '../../geometry/edgeLength'
import { flattenRing } from '../../geometry/flattenRing'
import { resolvePath } from '../../geometry/resolvePath'

/** How far beyond an edge somebody stands (m): 1 ft. */
const standM = 0.3048
/** Edges are looked at every so far (m): 1 ft. */
const stepM = 0.3048
/** Slabs that touch leave no ground between them (m). */
const touchM = 2e-3
/** A way farther than this from the slab does not end at it (m): own choice. */
const wayReachM = 1.5
const frontSteps = 8

export interface Surroundings {
  readonly outlines: readonly CurveRing[]
  readonly casters: readonly Caster[]
  readonly noGo: readonly Path[]
}

interface Blocked {
  readonly rings: readonly { readonly ring: Ring; readonly box: Box }[]
  readonly walls: readonly (readonly [Pt, Pt])[]
}

function findBlocked({ casters, noGo }: Surroundings): Blocked {
  const paths = [...noGo, ...casters.flatMap(caster => (caster.kind === 'building' ? [caster.footprint] : []))]
  const rings = paths.map(path => {
    const ring = flattenRing(resolvePath(path, path.id).ring)
    return { ring, box: pointBounds(ring) }
  })
  const walls = casters.flatMap(caster =>
    caster.kind === 'wall' ? caster.line.slice(1).map((to, i): readonly [Pt, Pt] => [caster.line[i]!, to]) : [],
  )
  return { rings, walls }
}

const inBox = (box: Box, [x, y]: Pt): boolean => x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY

function isGround(at: Pt, blocked: Blocked): boolean {
  if (blocked.rings.some(({ ring, box }) => inBox(box, at) && flatRingContains(ring, at))) return false
  return !blocked.walls.some(([from, to]) => distanceToEdge({ edgeId: '', from, to }, at) < standM)
}

/** Length of each pour's edge from which somebody on open ground can step onto it (m). */
export function openGround(regions: readonly CurveRegion[], around: Surroundings): number[] {
  const blocked = findBlocked(around)
  return regions.map(({ outer }) => {
    let lengthM = 0
    for (const edge of outer) {
      const length = edgeLength(edge)
      const steps = Math.max(1, Math.ceil(length / stepM))
      for (let i = 0; i < steps; i++) {
        const t = (i + 0.5) / steps
        const [x, y] = pointAt(edge, t)
        const [dx, dy] = edge.arc
          ? normalOfArc(edge.arc.center, [x, y], edge.arc.sweepRad)
          : outward(tangentAt(edge, 0))
        const beside: Pt = [x + touchM * dx, y + touchM * dy]
        if (around.outlines.some(ring => ringContains(ring, beside))) continue
        if (isGround([x + standM * dx, y + standM * dy], blocked)) lengthM += length / steps
      }
    }
    return lengthM
  })
}

const outward = ([x, y]: Pt): Pt => [y, -x]

function normalOfArc(center: Pt, at: Pt, sweepRad: number): Pt {
  const r = Math.hypot(at[0] - center[0], at[1] - center[1])
  const sign = sweepRad > 0 ? 1 : -1
  return [(sign * (at[0] - center[0])) / r, (sign * (at[1] - center[1])) / r]
}

export interface WayFront {
  readonly wayId: Id
  readonly fronts: readonly { readonly pour: number; readonly widthM: number }[]
}

const nearestOf = (regions: readonly CurveRegion[], at: Pt): { readonly pour: number; readonly distanceM: number } => {
  let pour = -1
  let distanceM = Number.POSITIVE_INFINITY
  for (const [i, { outer }] of regions.entries())
    for (const edge of outer) {
      const d = distanceToEdge(edge, at)
      if (d < distanceM - 1e-9) {
        distanceM = d
        pour = i
      }
    }
  return { pour, distanceM }
}

/** The pours right in front of each way that ends at a slab, with the width each takes of it. */
export function wayFronts(
  regions: readonly CurveRegion[],
  outlines: readonly CurveRing[],
  ways: readonly { readonly id: Id; readonly at: Pt; readonly widthM: number }[],
): WayFront[] {
  return ways.flatMap(({ id, at, widthM }) => {
    const edges = outlines.flat().map(edge => ({ edge, distanceM: distanceToEdge(edge, at) }))
    const nearest = edges.reduce<(typeof edges)[number] | null>(
      (a, b) => (a && a.distanceM <= b.distanceM ? a : b),
      null,
    )
    if (!nearest || nearest.distanceM > wayReachM) return []
    const { edge } = nearest
    const [tx, ty] = edge.arc ? turned(normalOfArc(edge.arc.center, at, 1)) : tangentAt(edge, 0)
    const widths = new Map<number, number>()
    for (let i = 0; i < frontSteps; i++) {
      const along = ((i + 0.5) / frontSteps - 0.5) * widthM
      const { pour, distanceM } = nearestOf(regions, [at[0] + along * tx, at[1] + along * ty])
      if (pour >= 0 && distanceM <= wayReachM) widths.set(pour, (widths.get(pour) ?? 0) + widthM / frontSteps)
    }
    if (widths.size === 0) return []
    return [{ wayId: id, fronts: [...widths].map(([pour, own]) => ({ pour, widthM: own })) }]
  })
}

const turned = ([x, y]: Pt): Pt => [-y, x]
