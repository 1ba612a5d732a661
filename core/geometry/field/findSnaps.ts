/** What the pointer catches: computed in the drawing, in words, never on what is being moved. */
import type { Id, Pt } from '../../../shared/document/primitives'
import { pointAt, tangentAt } from '../edgeAt'
import { edgeLength } from '../edgeLength'
import { intersectEdges } from '../intersectEdges'
import { nearestOnEdge } from '../nearestOnEdge'
import type { SnapEdge, SnapIndex } from './snapIndex'

export type SnapKind = 'corner' | 'crossing' | 'middle' | 'onEdge' | 'inLine' | 'squareTo' | 'alongside' | 'grid'

/** In the order in which they win over each other. */
export const snapKinds: readonly SnapKind[] = [
  'corner',
  'crossing',
  'middle',
  'onEdge',
  'inLine',
  'squareTo',
  'alongside',
  'grid',
]

export const snapWords: Readonly<Record<SnapKind, string>> = {
  corner: 'corner',
  crossing: 'crossing',
  middle: 'middle',
  onEdge: 'on edge',
  inLine: 'in line',
  squareTo: 'square to',
  alongside: 'alongside',
  grid: 'grid',
}

export interface Snap {
  readonly kind: SnapKind
  /** "corner"; "in line, square to" where two guides meet. */
  readonly words: string
  readonly at: Pt
  readonly distanceM: number
  /** What was caught: corners, edges and what they belong to. */
  readonly ids: readonly Id[]
}

export interface SnapOptions {
  /** Where the line being drawn starts: gives "square to" and "alongside". */
  readonly from?: Pt
  readonly gridM?: number
}

/** A line the pointer may be held on. */
interface Guide {
  readonly kind: SnapKind
  readonly through: Pt
  /** Unit. */
  readonly along: Pt
  readonly ids: readonly Id[]
  readonly rank: number
}

/** Guides kept of each kind, nearest edges first: more would catch everything everywhere. */
const mostGuides = 6
/** Edges as parallel as this give one guide (sine). */
const sameDirection = 1e-6

const apart = (a: Pt, b: Pt): number => Math.hypot(b[0] - a[0], b[1] - a[1])

const isEndOf = ({ from, to }: SnapEdge['edge'], p: Pt): boolean => apart(from, p) < 1e-6 || apart(to, p) < 1e-6

const footOn = ({ through, along }: Pick<Guide, 'through' | 'along'>, p: Pt): Pt => {
  const t = (p[0] - through[0]) * along[0] + (p[1] - through[1]) * along[1]
  return [through[0] + t * along[0], through[1] + t * along[1]]
}

class Catcher {
  private readonly snaps: Snap[] = []

  constructor(
    private readonly cursor: Pt,
    private readonly radiusM: number,
  ) {}

  offer(kind: SnapKind, at: Pt, ids: readonly Id[], words: string = snapWords[kind]): void {
    const distanceM = apart(this.cursor, at)
    if (distanceM <= this.radiusM) this.snaps.push({ kind, words, at, distanceM, ids })
  }

  /** Best first; a place caught twice is told once, by the kind that wins. */
  sorted(): readonly Snap[] {
    // Two guides that meet pin the pointer down: they come before anything that only holds it on a line.
    const rank = ({ kind, words }: Snap) => (words === snapWords[kind] ? snapKinds.indexOf(kind) : 2.5)
    const order = this.snaps.sort((a, b) => rank(a) - rank(b) || a.distanceM - b.distanceM)
    return order.filter((snap, i) => !order.slice(0, i).some(other => apart(other.at, snap.at) < 1e-9))
  }
}

const takeGuides = (guides: Guide[]): readonly Guide[] => {
  const kept: Guide[] = []
  for (const guide of guides.sort((a, b) => a.rank - b.rank)) {
    if (kept.length === mostGuides) break
    const same = kept.some(
      ({ along, through }) =>
        Math.abs(along[0] * guide.along[1] - along[1] * guide.along[0]) < sameDirection &&
        apart(footOn(guide, through), through) < 1e-6,
    )
    if (!same) kept.push(guide)
  }
  return kept
}

/** The prolongation of straight edges, and lines from `from` square to or alongside them, near the cursor. */
const guidesNear = (
  cursor: Pt,
  edges: readonly SnapEdge[],
  radiusM: number,
  from: Pt | undefined,
): readonly Guide[] => {
  const lists: Record<'inLine' | 'squareTo' | 'alongside', Guide[]> = { inLine: [], squareTo: [], alongside: [] }
  const offer = (kind: keyof typeof lists, through: Pt, along: Pt, ids: readonly Id[], rank: number) => {
    const guide = { kind, through, along, ids, rank }
    if (apart(footOn(guide, cursor), cursor) <= radiusM) lists[kind].push(guide)
  }
  for (const { edge, owners } of edges) {
    if (edge.arc) continue
    const along = tangentAt(edge, 0)
    const rank = apart(nearestOnEdge(edge, cursor).at, cursor)
    // On the edge itself "on edge" says it better.
    if (rank > radiusM) offer('inLine', edge.from, along, owners, rank)
    if (from === undefined) continue
    offer('squareTo', from, [-along[1], along[0]], owners, rank)
    offer('alongside', from, along, owners, rank)
  }
  return [...takeGuides(lists.inLine), ...takeGuides(lists.squareTo), ...takeGuides(lists.alongside)]
}

const meetGuides = (a: Guide, b: Guide): Pt | undefined => {
  const sine = a.along[0] * b.along[1] - a.along[1] * b.along[0]
  if (Math.abs(sine) < 1e-3) return undefined
  const t = ((b.through[0] - a.through[0]) * b.along[1] - (b.through[1] - a.through[1]) * b.along[0]) / sine
  return [a.through[0] + t * a.along[0], a.through[1] + t * a.along[1]]
}

/**
 * Places within `radiusM` of the cursor that a pointer would want, best first. Nothing that belongs to an id in
 * `exclude` is caught: what is being moved never holds itself.
 */
export function findSnaps(
  cursor: Pt,
  index: SnapIndex,
  radiusM: number,
  exclude: ReadonlySet<Id>,
  { from, gridM }: SnapOptions = {},
): readonly Snap[] {
  const catcher = new Catcher(cursor, radiusM)
  const isFree = ({ owners }: { readonly owners: readonly Id[] }) => !owners.some(id => exclude.has(id))
  for (const corner of index.corners)
    if (apart(corner.at, cursor) <= radiusM && isFree(corner)) catcher.offer('corner', corner.at, corner.owners)
  const free = exclude.size === 0 ? index.edges : index.edges.filter(isFree)
  const [x, y] = cursor
  const near = free.filter(
    ({ box }) =>
      box.minX - radiusM <= x && x <= box.maxX + radiusM && box.minY - radiusM <= y && y <= box.maxY + radiusM,
  )
  for (const { whole, owners } of near) if (edgeLength(whole) > 0) catcher.offer('middle', pointAt(whole, 0.5), owners)
  for (const [i, { edge, owners }] of near.entries()) {
    catcher.offer('onEdge', nearestOnEdge(edge, cursor).at, owners)
    // Where the line being drawn would meet the edge squarely.
    if (from !== undefined && !edge.arc) {
      const foot = footOn({ through: edge.from, along: tangentAt(edge, 0) }, from)
      if (apart(nearestOnEdge(edge, foot).at, foot) < 1e-9 && apart(foot, from) > 1e-9)
        catcher.offer('squareTo', foot, owners, 'on edge, square to')
    }
    for (const other of near.slice(i + 1))
      for (const at of intersectEdges(edge, other.edge))
        if (!isEndOf(edge, at) || !isEndOf(other.edge, at)) catcher.offer('crossing', at, [...owners, ...other.owners])
  }
  const guides = guidesNear(cursor, free, radiusM, from)
  for (const guide of guides) catcher.offer(guide.kind, footOn(guide, cursor), guide.ids)
  for (const [i, a] of guides.entries()) {
    for (const b of guides.slice(i + 1)) {
      const at = meetGuides(a, b)
      const words = a.kind === b.kind ? `${snapWords[a.kind]} twice` : `${snapWords[a.kind]}, ${snapWords[b.kind]}`
      if (at) catcher.offer(a.kind, at, [...a.ids, ...b.ids], words)
    }
    for (const { edge, owners } of near) {
      if (edge.arc) continue
      const at = meetGuides(a, { ...a, through: edge.from, along: tangentAt(edge, 0) })
      if (at && apart(nearestOnEdge(edge, at).at, at) < 1e-9)
        catcher.offer('onEdge', at, [...owners, ...a.ids], `on edge, ${snapWords[a.kind]}`)
    }
  }
  if (gridM !== undefined && gridM > 0)
    catcher.offer('grid', [Math.round(x / gridM) * gridM, Math.round(y / gridM) * gridM], [])
  return catcher.sorted()
}
