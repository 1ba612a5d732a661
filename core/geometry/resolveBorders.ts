import type { Path } from '../../shared/document/path'
import type { Border } from '../../shared/document/slab'
import type { Finding } from '../../shared/problem'
import { ringContains } from './contains'
import type { CurveEdge, CurveRegion, CurveRing } from './curve'
import { clipCurveRings } from './curveBoolean'
import { edgeOwners } from './edgeOwners'
import { edgeStrips, type StripEdge } from './edgeStrips'
import { offsetRing, ringsClear } from './offsetRing'
import { reverseRing } from './reverseRing'
import { ringLength } from './ringLength'
import { runsAlong } from './runsAlong'

/** A ring of the slab with the material on its left, and the path it came from. */
export interface BorderRing {
  readonly path: Path
  readonly ring: CurveRing
}

/** Where the borders that run all around a ring, one inside the other, have come to. */
export interface Front {
  readonly ring: CurveRing
  readonly front: CurveRing
  readonly borderIds: readonly string[]
}

/** A border before the claims of insets, bands and earlier borders are taken off it. */
export interface BorderShape {
  readonly border: Border
  readonly regions: readonly CurveRegion[]
  /** What it starts from: the bordered edges, or the inner sides of the borders outside it. */
  readonly outerSide: readonly CurveEdge[]
  readonly innerLengthM: number
  readonly centerLengthM: number
  readonly chordsKept: boolean
  /** Borders it is clear of by construction. */
  readonly clearOf: readonly string[]
}

/** The boundary that carries the given name and does not run along the slab's own edge. */
function sideNamed(regions: readonly CurveRegion[], name: string, net: readonly CurveRegion[]): CurveEdge[] {
  const onOwn = runsAlong(net.flatMap(r => [r.outer, ...r.holes]).flat())
  return regions
    .flatMap(({ outer, holes }) => [outer, ...holes].flat())
    .filter(edge => edge.edgeId === name && !onOwn(edge))
}

/**
 * The parallel of a ring at a depth, if it keeps clear of every ring of the slab and has none of them on its wrong side.
 */
function plainFront(ring: CurveRing, depthM: number, id: string, net: CurveRegion): CurveRing | undefined {
  const isOuter = ring === net.outer
  // where openings meet the outline or each other the slab's rings are new ones
  if (!isOuter && !net.holes.includes(ring)) return undefined
  const front = offsetRing(ring, depthM, id)
  const start = front?.[0]?.from
  if (!front || !start || !ringsClear(front, ring)) return undefined
  if (!isOuter && !(ringsClear(front, net.outer) && ringContains(net.outer, start))) return undefined
  for (const hole of net.holes) {
    if (hole === ring) continue
    if (!ringsClear(front, hole) || ringContains(front, hole[0]!.from) !== isOuter) return undefined
  }
  return front
}

/**
 * The borders' bands, in document order (outermost first), clipped to the slab. Whoever claims first keeps the ground.
 * A border that leaves no inner side inside the slab is wider than the slab: a `stop`, and no shape.
 * All around a ring, where nothing is in the way, the band lies between two parallels and needs no boolean (`fronts`:
 * how far such borders have come); else it is cut out by edgeStrips, and then still contains the borders outside it.
 */
export function resolveBorders(
  borders: readonly Border[],
  rings: readonly BorderRing[],
  net: readonly CurveRegion[],
): { shapes: BorderShape[]; fronts: Front[]; findings: Finding[] } {
  const findings: Finding[] = []
  const shapes: BorderShape[] = []
  const taken = new Map<string, number>()
  const fronts = new Map<CurveRing, Front>()
  const shared = new Set<CurveRing>()
  const only = net.length === 1 ? net[0] : undefined
  for (const border of borders) {
    const home = rings.find(r => r.path.id === border.pathId)
    if (!home) continue
    const { ring } = home
    const owners = edgeOwners(home.path)
    const wanted = border.edges === 'all' ? undefined : new Set(border.edges)
    const covered = (id: string) => !wanted || (owners.get(id) ?? []).some(o => wanted.has(o))
    const edges = ring.filter(e => covered(e.edgeId))
    const depthTo = (edge: CurveEdge, share: number) => (taken.get(edge.edgeId) ?? 0) + border.widthM * share
    const whole = edges.length === ring.length && !shared.has(ring)
    const deep = (share: number) => depthTo(ring[0]!, share)
    const take = () => {
      for (const e of edges) taken.set(e.edgeId, depthTo(e, 1))
    }

    const front = whole && only && plainFront(ring, deep(1), border.id, only)
    const center = front && offsetRing(ring, deep(0.5), border.id)
    if (front && center) {
      const last = fronts.get(ring) ?? { ring, front: ring, borderIds: [] }
      shapes.push({
        border,
        regions: [
          ring === only.outer
            ? { outer: last.front, holes: [reverseRing(front)] }
            : { outer: reverseRing(front), holes: [last.front] },
        ],
        outerSide: last.front,
        innerLengthM: ringLength(front),
        centerLengthM: ringLength(center),
        chordsKept: false,
        clearOf: last.borderIds,
      })
      fronts.set(ring, { ring, front, borderIds: [...last.borderIds, border.id] })
      take()
      continue
    }

    shared.add(ring)
    const names = { inner: border.id, cut: `${border.id}|` }
    const shapeAt = (share: number) => {
      const chain = ring.map((edge): StripEdge => ({ edge, depthM: covered(edge.edgeId) ? depthTo(edge, share) : 0 }))
      return clipCurveRings(edgeStrips(chain, true, names), net)
    }
    const { regions, chordsKept } = shapeAt(1)
    const innerLengthM = ringLength(sideNamed(regions, border.id, net))
    if (edges.length > 0 && innerLengthM < 1e-6) {
      findings.push({
        code: 'borderTooWide',
        severity: 'stop',
        values: { widthM: border.widthM },
        at: { entityId: border.id, point: edges[0]!.from },
      })
      shapes.push({
        border,
        regions: [],
        outerSide: [],
        innerLengthM: 0,
        centerLengthM: 0,
        chordsKept: false,
        clearOf: [],
      })
      continue
    }
    const centerLengthM = ringLength(sideNamed(shapeAt(0.5).regions, border.id, net))
    const free = edges.filter(e => !taken.has(e.edgeId))
    const outerSide = free.length === edges.length ? free : [...free, ...sideNamed(shapeAt(0).regions, border.id, net)]
    shapes.push({ border, regions, outerSide, innerLengthM, centerLengthM, chordsKept, clearOf: [] })
    take()
  }
  return { shapes, fronts: [...fronts.values()], findings }
}

/**
 * The slab inside its fronts: what its plain all-around borders leave. Undefined where fronts of different rings meet,
 * or one holds the other.
 */
export function insideFronts(net: CurveRegion, fronts: readonly Front[]): CurveRegion | undefined {
  const frontOf = (ring: CurveRing) => fronts.find(f => f.ring === ring)?.front ?? ring
  const outer = frontOf(net.outer)
  const holes = net.holes.map(frontOf)
  for (const [i, hole] of holes.entries()) {
    if (!ringContains(outer, hole[0]!.from) || !ringsClear(outer, hole)) return undefined
    for (const other of holes.slice(0, i)) {
      const nested = ringContains(hole, other[0]!.from) || ringContains(other, hole[0]!.from)
      if (nested || !ringsClear(hole, other)) return undefined
    }
  }
  return { outer, holes }
}
