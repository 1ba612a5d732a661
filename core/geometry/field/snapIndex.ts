/** What a pointer can catch on: the corners, edges and centers of a site, each with everything it belongs to. */
import type { Path } from '../../../shared/document/path'
import type { Anchor, End } from '../../../shared/document/pours'
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { type Box, edgeBounds } from '../bounds'
import { circleCenter } from '../circleCenter'
import type { CurveEdge } from '../curve'
import { linePointId } from '../linePointId'
import { edgeFromRise, resolvePath } from '../resolvePath'

export interface SnapCorner {
  readonly at: Pt
  /** A corner, unless a line ends there, or a circle has none. */
  readonly words?: 'end' | 'quarter point'
  /** Its own id, those of its edges, path, part and slab, and of what it follows: excluded with any of them. */
  readonly owners: readonly Id[]
}

export interface SnapEdge {
  readonly edge: CurveEdge
  readonly box: Box
  /** Corner to corner, before rounding: what its middle is the middle of. Null of a circle, which has none. */
  readonly whole: CurveEdge | null
  readonly owners: readonly Id[]
}

/** What stands on one point, or a circle. */
export interface SnapCenter {
  readonly at: Pt
  /** What is there: a trunk stands, a truck has its spot. */
  readonly words: 'center' | 'trunk' | 'spot' | 'middle'
  /** Its own id, and those of what it is the center of. */
  readonly owners: readonly Id[]
}

export interface SnapIndex {
  readonly corners: readonly SnapCorner[]
  readonly centers: readonly SnapCenter[]
  readonly edges: readonly SnapEdge[]
}

interface Owned {
  readonly path: Path
  readonly owners: readonly Id[]
}

const pathsOf = (site: Site): readonly Owned[] => [
  ...site.slabs.flatMap(slab => [
    { path: slab.outline, owners: [slab.id] },
    ...slab.openings.map(({ id, path }) => ({ path, owners: [slab.id, id] })),
    ...slab.bands.map(({ id, line }) => ({ path: line, owners: [slab.id, id] })),
    ...slab.insets.map(({ id, path }) => ({ path, owners: [slab.id, id] })),
  ]),
  ...site.casters.flatMap((caster): readonly Owned[] => {
    if (caster.kind === 'cover') return [{ path: caster.outline, owners: [caster.id] }]
    if (caster.kind !== 'building') return []
    return [caster.footprint, ...(caster.courtyards ?? [])].map(path => ({ path, owners: [caster.id] }))
  }),
  ...(site.access?.noGo ?? []).map(path => ({ path, owners: [] })),
  ...site.wishes.flatMap(wish =>
    wish.kind === 'forbiddenArea' ? [{ path: wish.path, owners: [wish.id, wish.slabId] }] : [],
  ),
]

class Collector {
  /** Of each corner and edge of a path. */
  private readonly ownersOf = new Map<Id, readonly Id[]>()
  readonly corners: SnapCorner[] = []
  readonly centers: SnapCenter[] = []
  readonly edges: SnapEdge[] = []

  edge(edge: CurveEdge, whole: CurveEdge | null, owners: readonly Id[]): void {
    const long = Math.hypot(edge.to[0] - edge.from[0], edge.to[1] - edge.from[1]) > 1e-9
    if (long) this.edges.push({ edge, whole, box: edgeBounds(edge), owners })
  }

  path({ path, owners }: Owned): void {
    const { vertices, edges } = path
    const n = vertices.length
    const closed = edges.length === n
    const own = [...owners, path.id]
    const { ring } = resolvePath(path, path.id, closed)
    const center = closed ? circleCenter(ring) : undefined
    const words = (i: number): Pick<SnapCorner, 'words'> =>
      center && n === 4 ? { words: 'quarter point' } : !closed && (i === 0 || i === n - 1) ? { words: 'end' } : {}
    vertices.forEach(({ id, at }, i) => {
      const around = [edges[i], closed ? edges[(i + n - 1) % n] : edges[i - 1]].flatMap(edge => (edge ? [edge.id] : []))
      const corner = [...own, id, ...around]
      this.ownersOf.set(id, corner)
      this.corners.push({ at, owners: corner, ...words(i) })
    })
    const whole = new Map(
      edges.map((edge, i): [Id, { readonly edge: CurveEdge; readonly ends: readonly Id[] }] => {
        const [from, to] = [vertices[i]!, vertices[(i + 1) % n]!]
        return [edge.id, { edge: edgeFromRise(edge.id, from.at, to.at, edge.riseM), ends: [from.id, to.id] }]
      }),
    )
    if (center) this.center('center', center, [...own, ...vertices.map(({ id }) => id), ...edges.map(({ id }) => id)])
    for (const edge of ring) {
      const from = whole.get(edge.edgeId)
      const along = from
        ? [...own, edge.edgeId, ...from.ends]
        : // The arc of a rounded corner.
          this.ownersOf.get(edge.edgeId.slice(0, -1))!
      this.ownersOf.set(edge.edgeId, along)
      this.edge(edge, center ? null : (from?.edge ?? edge), along)
    }
  }

  center(words: SnapCenter['words'], at: Pt, owners: readonly Id[]): void {
    this.centers.push({ words, at, owners })
  }

  line(points: readonly Pt[], owners: readonly [Id, ...Id[]]): void {
    const pointIds = points.map((_, i) => linePointId(owners[0], i))
    points.forEach((at, i) => {
      const isEnd = i === 0 || i === points.length - 1
      this.corners.push({ at, owners: [...owners, pointIds[i]!], ...(isEnd ? { words: 'end' } : {}) })
    })
    points.slice(1).forEach((to, i) => {
      const edge = { edgeId: owners[0], from: points[i]!, to }
      this.edge(edge, edge, [...owners, pointIds[i]!, pointIds[i + 1]!])
    })
  }

  /** A joint goes with the corners and edges it ends on. */
  joint(ends: readonly [End, End], owners: readonly [Id, ...Id[]]): void {
    const followed = ends.flatMap(({ anchor }) => this.ownersOf.get(heldId(anchor)) ?? [])
    this.line([ends[0].last, ends[1].last], [...owners, ...new Set(followed)])
  }
}

const heldId = (anchor: Anchor): Id =>
  anchor.on === 'edge' ? anchor.edgeId : anchor.on === 'vertex' ? anchor.vertexId : ''

const known = new WeakMap<Site, SnapIndex>()

/** Built once for each document: during a gesture the committed one stays the same. */
export function snapIndex(site: Site): SnapIndex {
  const ready = known.get(site)
  if (ready) return ready
  const collector = new Collector()
  for (const path of pathsOf(site)) collector.path(path)
  for (const caster of site.casters) if (caster.kind === 'wall') collector.line(caster.line, [caster.id])
  for (const wish of site.wishes)
    if (wish.kind === 'forbiddenLine') collector.line(wish.line, [wish.id, wish.slabId])
    else if (wish.kind === 'required') collector.joint(wish.line, [wish.id, wish.slabId])
  for (const part of site.accepted) for (const { id, ends } of part.joints) collector.joint(ends, [id, part.slabId])
  for (const { id, obstacles } of site.slabs)
    for (const obstacle of obstacles) collector.center('center', obstacle.at, [id, obstacle.id])
  for (const caster of site.casters) if (caster.kind === 'tree') collector.center('trunk', caster.at, [caster.id])
  const { truckSpots = [], pumpSpots = [], washouts = [], ways = [] } = site.access ?? {}
  for (const { id, at } of [...truckSpots, ...pumpSpots, ...washouts]) collector.center('spot', at, [id])
  for (const { id, at } of ways) collector.center('middle', at, [id])
  const { corners, centers, edges } = collector
  const index = { corners, centers, edges }
  known.set(site, index)
  return index
}
