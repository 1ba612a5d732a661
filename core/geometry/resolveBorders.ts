import type { Path } from '../../shared/document/path'
import type { Border } from '../../shared/document/slab'
import type { Finding } from '../../shared/problem'
import { distanceToEdge } from './contains'
import type { CurveRegion, CurveRing } from './curve'
import { clipCurveRings } from './curveBoolean'
import { pointAt } from './edgeAt'
import { edgeLength } from './edgeLength'
import { edgeOwners } from './edgeOwners'
import { edgeStrips, type StripEdge } from './edgeStrips'

/** A ring of the slab with the material on its left, and the path it came from. */
export interface BorderRing {
  readonly path: Path
  readonly ring: CurveRing
}

/** A border before the claims of insets, bands and earlier borders are taken off it. */
export interface BorderShape {
  readonly border: Border
  readonly regions: readonly CurveRegion[]
  readonly outerLengthM: number
  readonly innerLengthM: number
  readonly centerLengthM: number
  readonly chordsKept: boolean
}

/** Length of the boundary that carries the given name and does not run along the slab's own edge. */
function lengthNamed(regions: readonly CurveRegion[], name: string, net: readonly CurveRegion[]): number {
  const own = net.flatMap(r => [r.outer, ...r.holes]).flat()
  let sum = 0
  for (const { outer, holes } of regions)
    for (const edge of [outer, ...holes].flat()) {
      if (edge.edgeId !== name) continue
      const middle = pointAt(edge, 0.5)
      if (!own.some(e => distanceToEdge(e, middle) < 1e-6)) sum += edgeLength(edge)
    }
  return sum
}

/**
 * The borders' bands, in document order (outermost first), clipped to the slab. Each band reaches from its ring to its
 * inner side, so it still contains the borders outside it; whoever claims first keeps the ground.
 * A border that leaves no inner side inside the slab is wider than the slab: a `stop`, and no shape.
 */
export function resolveBorders(
  borders: readonly Border[],
  rings: readonly BorderRing[],
  net: readonly CurveRegion[],
): { shapes: BorderShape[]; findings: Finding[] } {
  const findings: Finding[] = []
  const shapes: BorderShape[] = []
  const taken = new Map<string, number>()
  for (const border of borders) {
    const home = rings.find(r => r.path.id === border.pathId)
    if (!home) continue
    const owners = edgeOwners(home.path)
    const wanted = border.edges === 'all' ? undefined : new Set(border.edges)
    const covered = (id: string) => !wanted || (owners.get(id) ?? []).some(o => wanted.has(o))
    const edges = home.ring.filter(e => covered(e.edgeId))
    const outerLengthM = edges.reduce((sum, e) => sum + edgeLength(e), 0)
    const chainAt = (share: number): StripEdge[] =>
      home.ring.map(edge => ({
        edge,
        depthM: covered(edge.edgeId) ? (taken.get(edge.edgeId) ?? 0) + border.widthM * share : 0,
      }))
    const names = { inner: border.id, cut: `${border.id}|` }
    const shapeAt = (share: number) => clipCurveRings(edgeStrips(chainAt(share), true, names), net)
    const { regions, chordsKept } = shapeAt(1)
    const innerLengthM = lengthNamed(regions, border.id, net)
    if (edges.length > 0 && innerLengthM < 1e-6) {
      findings.push({
        code: 'borderTooWide',
        severity: 'stop',
        values: { widthM: border.widthM },
        at: { entityId: border.id, point: edges[0]!.from },
      })
      shapes.push({ border, regions: [], outerLengthM: 0, innerLengthM: 0, centerLengthM: 0, chordsKept: false })
      continue
    }
    const centerLengthM = lengthNamed(shapeAt(0.5).regions, border.id, net)
    shapes.push({ border, regions, outerLengthM, innerLengthM, centerLengthM, chordsKept })
    for (const e of edges) taken.set(e.edgeId, (taken.get(e.edgeId) ?? 0) + border.widthM)
  }
  return { shapes, findings }
}
