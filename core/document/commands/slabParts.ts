/** What is drawn on a slab: openings, borders, bands, insets, steps, obstacles. */
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Border, Obstacle, Opening, Placed, PoolEdge, Slab, Steps } from '../../../shared/document/slab'
import { drawLine, drawShape, type Shape, type ShapeCorner } from './drawShape'
import { type Command, type Edit, editSite, missing } from './editSite'

const onSlab =
  (slabId: Id, add: (slab: Slab, edit: Edit) => void): Command =>
  site =>
    editSite(site, (draft, edit) => {
      const slab = draft.slabs.find(({ id }) => id === slabId)
      if (slab === undefined) return missing('slab', slabId)
      add(slab, edit)
      return undefined
    })

const nameOf = (name: string | undefined): { name?: string } => (name === undefined ? {} : { name })

export interface NewOpening {
  readonly shape: Shape
  readonly kind: Opening['kind']
  readonly name?: string
  readonly pool?: PoolEdge
}

export const addOpening = (slabId: Id, { shape, kind, name, pool }: NewOpening): Command =>
  onSlab(slabId, (slab, edit) => {
    const id = edit.make('o')
    const path = drawShape(edit, shape, 'clockwise')
    slab.openings.push({ id, kind, path, ...nameOf(name), ...(pool === undefined ? {} : { pool }) })
  })

export interface NewBorder {
  /** The outline or an opening's path. */
  readonly pathId: Id
  readonly edges: 'all' | readonly Id[]
  readonly widthM: number
  readonly finishId: Id
  readonly placed: Placed
  readonly name?: string
}

/** The new border lies inside those already on the same edges. */
export const addBorder = (slabId: Id, { pathId, edges, widthM, finishId, placed, name }: NewBorder): Command =>
  onSlab(slabId, (slab, edit) => {
    const border: Border = {
      id: edit.make('b'),
      ...nameOf(name),
      pathId,
      edges: edges === 'all' ? 'all' : [...edges],
      widthM,
      finishId,
      placed,
    }
    slab.borders.push(border)
  })

/** Puts a border to another place in the stack; 0 = outermost. */
export const restackBorder = (slabId: Id, borderId: Id, place: number): Command =>
  onSlab(slabId, slab => {
    const from = slab.borders.findIndex(({ id }) => id === borderId)
    const [border] = from < 0 ? [] : slab.borders.splice(from, 1)
    if (border !== undefined) slab.borders.splice(place, 0, border)
  })

export interface NewBand {
  readonly line: { readonly corners: readonly ShapeCorner[] } | Shape
  readonly widthM: number
  readonly finishId: Id
  readonly placed: Placed
  readonly name?: string
}

/** A band about an open line (`{ corners }`) or a closed shape. */
export const addBand = (slabId: Id, { line, widthM, finishId, placed, name }: NewBand): Command =>
  onSlab(slabId, (slab, edit) => {
    const id = edit.make('d')
    const path = 'kind' in line ? drawShape(edit, line, 'counterClockwise') : drawLine(edit, line.corners)
    slab.bands.push({ id, ...nameOf(name), line: path, widthM, finishId, placed })
  })

export interface NewInset {
  readonly shape: Shape
  readonly finishId: Id
  readonly placed: Placed
  readonly name?: string
}

export const addInset = (slabId: Id, { shape, finishId, placed, name }: NewInset): Command =>
  onSlab(slabId, (slab, edit) => {
    const id = edit.make('i')
    slab.insets.push({ id, ...nameOf(name), path: drawShape(edit, shape, 'counterClockwise'), finishId, placed })
  })

export const addSteps = (slabId: Id, steps: Omit<Steps, 'id'>): Command =>
  onSlab(slabId, (slab, edit) => {
    slab.steps.push({ ...steps, id: edit.make('k') })
  })

export const addObstacle = (slabId: Id, { kind, at, name }: Omit<Obstacle, 'id'>): Command =>
  onSlab(slabId, (slab, edit) => {
    slab.obstacles.push({ id: edit.make('q'), kind, at: [at[0], at[1]], ...nameOf(name) })
  })

/** Depth of the base below the slab, read from a string line; an empty list goes back to the one typed depth. */
export const setBaseReadings = (slabId: Id, points: readonly { readonly at: Pt; readonly depthM: number }[]): Command =>
  onSlab(slabId, slab => {
    if (points.length === 0) delete slab.baseDepths
    else slab.baseDepths = { points: points.map(({ at, depthM }) => ({ at: [at[0], at[1]], depthM })) }
  })

/** Thickens edges, in place of what they were; `null` takes the thickening away from them. */
export const setThickened = (
  slabId: Id,
  edgeIds: readonly Id[],
  size: { readonly depthM: number; readonly widthM: number } | null,
): Command =>
  onSlab(slabId, slab => {
    const rest = slab.thickened
      .map(part => ({ ...part, edges: part.edges.filter(id => !edgeIds.includes(id)) }))
      .filter(({ edges }) => edges.length > 0)
    const same = rest.find(({ depthM, widthM }) => depthM === size?.depthM && widthM === size.widthM)
    if (same !== undefined) same.edges.push(...edgeIds)
    else if (size !== null && edgeIds.length > 0)
      rest.push({ edges: [...edgeIds], depthM: size.depthM, widthM: size.widthM })
    slab.thickened = rest
  })

/** Says of edges that they meet existing work (isolation joint), or that they stand free. */
export const setAgainstExisting = (slabId: Id, edgeIds: readonly Id[], against: boolean): Command =>
  onSlab(slabId, slab => {
    const others = slab.againstExisting.filter(id => !edgeIds.includes(id))
    slab.againstExisting = against ? [...others, ...edgeIds] : others
  })
