/** What the pointer catches: computed in the drawing, in words, never on what is being moved. */
import type { Id, Pt } from '../../../shared/document/primitives'
import { pointAt, tangentAt } from '../edgeAt'
import { edgeLength } from '../edgeLength'
import { intersectEdges } from '../intersectEdges'
import { nearestOnEdge } from '../nearestOnEdge'
import type { SnapEdge, SnapIndex } from './snapIndex'

export type SnapKind =
  | 'corner'
  | 'center'
  | 'crossing'
  | 'middle'
  | 'onEdge'
  | 'inLine'
  | 'squareTo'
  | 'alongside'
  | 'grid'

/** In the order in which they win over each other. */
export const snapKinds: readonly SnapKind[] = [
  'corner',
  'center',
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
  center: 'center',
  crossing: 'crossing',
  middle: 'middle',
  onEdge: 'on edge',
  inLine: 'in line',
  squareTo: 'square to',
  alongside: 'alongside',
  grid: 'grid',
}

/** What holds the pointer, and how. */
export interface SnapHold {
  readonly words: string
  /** Of the corner or edge and what it belongs to. */
  readonly ids: readonly Id[]
}

export interface Snap {
  readonly kind: SnapKind
  /** "corner"; "in line, square to" where two guides meet. */
  readonly words: string
  readonly at: Pt
  readonly distanceM: number
  /** Two where edges cross, guides meet, and where two things share the place. */
  readonly holds: readonly SnapHold[]
}

export interface SnapOptions {
  /** Where the line being drawn starts: gives "square to" and "alongside". */
  readonly from?: Pt
  /** First corner and first edge of an outline being drawn: gives "square at" the first corner. */
  readonly began?: { readonly at: Pt; readonly along: Pt }
  readonly gridM?: number
}

const hold = (kind: SnapKind, { owners }: { readonly owners: readonly Id[] }): SnapHold => ({
  words: snapWords[kind],
  ids: owners,
})

/** A line the pointer may be held on. */
interface Guide {
  readonly kind: SnapKind
  /** Unless the kind says it. */
  readonly words?: string
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

/** The same of two things, as corners of slabs that meet. */
const isShared = (a: Snap, b: Snap): boolean =>
  a.holds.length === 1 && b.holds.length === 1 && a.kind === b.kind && a.words === b.words

class Catcher {
  private readonly snaps: Snap[] = []

  constructor(
    private readonly cursor: Pt,
    private readonly radiusM: number,
  ) {}

  offer(kind: SnapKind, at: Pt, ...holds: readonly SnapHold[]): void {
    const distanceM = apart(this.cursor, at)
    if (distanceM > this.radiusM) return
    const words = [...new Set(holds.map(each => each.words))].join(', ')
    this.snaps.push({ kind, words, at, distanceM, holds })
  }

  /** Best first; a place caught twice is told once, by the kind that wins, with the other thing that has it too. */
  sorted(): readonly Snap[] {
    // Two guides that meet pin the pointer down: they come before anything that only holds it on a line.
    const rank = ({ kind, holds }: Snap) =>
      snapKinds.indexOf(holds.length > 1 && kind !== 'crossing' ? 'onEdge' : kind) - (holds.length > 1 ? 0.5 : 0)
    const order = this.snaps.sort((a, b) => rank(a) - rank(b) || a.distanceM - b.distanceM)
    const told: Snap[] = []
    for (const snap of order) {
      const same = told.findIndex(other => apart(other.at, snap.at) < 1e-9)
      const first = told[same]
      if (first === undefined) told.push(snap)
      else if (isShared(first, snap)) told[same] = { ...first, holds: [...first.holds, ...snap.holds] }
    }
    return told
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

/** The prolongation of straight edges, and lines from `from` square to or alongside them, near the cursor; and the line
 * on which an outline closes squarely. */
const guidesNear = (
  cursor: Pt,
  edges: readonly SnapEdge[],
  radiusM: number,
  { from, began }: SnapOptions,
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
  if (began) {
    const [x, y] = began.along
    const closing: Guide = { kind: 'squareTo', words: 'square at', through: began.at, along: [-y, x], ids: [], rank: 0 }
    if (apart(footOn(closing, cursor), cursor) <= radiusM) lists.squareTo.push(closing)
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
  options: SnapOptions = {},
): readonly Snap[] {
  const { from, gridM } = options
  const catcher = new Catcher(cursor, radiusM)
  const isFree = ({ owners }: { readonly owners: readonly Id[] }) => !owners.some(id => exclude.has(id))
  for (const corner of index.corners)
    if (apart(corner.at, cursor) <= radiusM && isFree(corner))
      catcher.offer('corner', corner.at, { words: corner.words ?? snapWords.corner, ids: corner.owners })
  for (const center of index.centers)
    if (isFree(center)) catcher.offer('center', center.at, { words: center.words, ids: center.owners })
  const free = exclude.size === 0 ? index.edges : index.edges.filter(isFree)
  const [x, y] = cursor
  const near = free.filter(
    ({ box }) =>
      box.minX - radiusM <= x && x <= box.maxX + radiusM && box.minY - radiusM <= y && y <= box.maxY + radiusM,
  )
  for (const each of near)
    if (each.whole && edgeLength(each.whole) > 0)
      catcher.offer('middle', pointAt(each.whole, 0.5), hold('middle', each))
  for (const [i, each] of near.entries()) {
    const { edge } = each
    catcher.offer('onEdge', nearestOnEdge(edge, cursor).at, hold('onEdge', each))
    // Where the line being drawn would meet the edge squarely.
    if (from !== undefined && !edge.arc) {
      const foot = footOn({ through: edge.from, along: tangentAt(edge, 0) }, from)
      if (apart(nearestOnEdge(edge, foot).at, foot) < 1e-9 && apart(foot, from) > 1e-9)
        catcher.offer('squareTo', foot, hold('onEdge', each), hold('squareTo', each))
    }
    for (const other of near.slice(i + 1))
      for (const at of intersectEdges(edge, other.edge))
        if (!isEndOf(edge, at) || !isEndOf(other.edge, at))
          catcher.offer('crossing', at, hold('crossing', each), hold('crossing', other))
  }
  const guides = guidesNear(cursor, free, radiusM, options)
  const held = ({ kind, words = snapWords[kind], ids }: Guide): SnapHold => ({ words, ids })
  for (const guide of guides) catcher.offer(guide.kind, footOn(guide, cursor), held(guide))
  for (const [i, a] of guides.entries()) {
    for (const b of guides.slice(i + 1)) {
      const at = meetGuides(a, b)
      // Square to one thing and to another meet where the line itself starts.
      if (at && !(from && apart(at, from) < 1e-9)) catcher.offer(a.kind, at, held(a), held(b))
    }
    for (const each of near) {
      const { edge } = each
      if (edge.arc) continue
      const at = meetGuides(a, { ...a, through: edge.from, along: tangentAt(edge, 0) })
      if (at && apart(nearestOnEdge(edge, at).at, at) < 1e-9) catcher.offer('onEdge', at, hold('onEdge', each), held(a))
    }
  }
  if (gridM !== undefined && gridM > 0)
    catcher.offer('grid', [Math.round(x / gridM) * gridM, Math.round(y / gridM) * gridM], { words: 'grid', ids: [] })
  return catcher.sorted()
}
