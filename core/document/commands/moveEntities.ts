/** Carries chosen entities along on a draft. */
import type { Path } from '../../../shared/document/path'
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { Slab } from '../../../shared/document/slab'
import type { Finding } from '../../../shared/problem'
import { readLinePointId } from '../../geometry/linePointId'
import { isCorner } from './carryCorners'
import { type Edit, nothingChosen } from './editSite'
import { findEdge, findVertex } from './findPath'
import { placeLinePoint } from './linePoints'
import { reversePath } from './reversePath'
import { type RigidMotion, turned, turnedEitherWay } from './rigidMotion'
import { chosenEntities, type Entity } from './siteEntities'

class Mover {
  /** What has been carried already: a part chosen together with its slab goes once. */
  private readonly gone = new Set<Id>()

  constructor(
    private readonly site: Site,
    private readonly edit: Edit,
    private readonly motion: RigidMotion,
  ) {}

  get count(): number {
    return this.gone.size
  }

  private once(id: Id): boolean {
    if (this.gone.has(id)) return false
    this.gone.add(id)
    return true
  }

  private place(row: { id: Id; at: Pt }): void {
    if (this.once(row.id)) row.at = this.motion.at(row.at)
  }

  private path(path: Path): void {
    if (!this.once(path.id)) return
    for (const vertex of path.vertices) this.place(vertex)
    if (this.motion.mirrored) reversePath(this.site, path, 'mirrored', this.edit)
  }

  /** Clockwise from drawing-up, as falls are given. */
  private heading(deg: number): number {
    return (450 - turned(this.motion, 90 - deg)) % 360
  }

  private slab(slab: Slab): Finding | undefined {
    if (!this.once(slab.id)) return undefined
    for (const part of this.site.accepted) {
      if (part.slabId !== slab.id) continue
      for (const { poured, number } of part.pours) {
        if (poured === undefined) continue
        if (this.motion.mirrored)
          return {
            code: 'pouredFrozen',
            severity: 'stop',
            values: { number, done: 'mirrored' },
            at: { entityId: slab.id },
          }
        for (const path of [poured.outline, ...poured.holes]) this.path(path)
      }
    }
    this.edit.carried.set(slab.id, at => this.motion.at(at))
    this.path(slab.outline)
    for (const opening of slab.openings) this.opening(opening)
    for (const band of slab.bands) this.band(band)
    for (const inset of slab.insets) this.inset(inset)
    for (const obstacle of slab.obstacles) this.place(obstacle)
    for (const reading of slab.baseDepths?.points ?? []) reading.at = this.motion.at(reading.at)
    if (slab.slope !== undefined) slab.slope.towardDeg = this.heading(slab.slope.towardDeg)
    for (const point of this.site.points) if (point.slabId === slab.id) this.place(point)
    for (const wish of this.site.wishes) if (wish.slabId === slab.id) this.wish(wish)
    return undefined
  }

  private opening(row: Extract<Entity, { kind: 'opening' }>['row']): void {
    if (this.once(row.id)) this.path(row.path)
  }

  private band(row: Extract<Entity, { kind: 'band' }>['row']): void {
    if (this.once(row.id)) this.path(row.line)
  }

  private inset(row: Extract<Entity, { kind: 'inset' }>['row']): void {
    if (this.once(row.id)) this.path(row.path)
  }

  private caster(row: Extract<Entity, { kind: 'caster' }>['row']): void {
    if (row.kind === 'tree') {
      this.place(row)
      return
    }
    if (!this.once(row.id)) return
    if (row.kind === 'wall') row.line = row.line.map(at => this.motion.at(at))
    else if (row.kind === 'cover') this.path(row.outline)
    else for (const path of [row.footprint, ...(row.courtyards ?? [])]) this.path(path)
  }

  private wish(row: Extract<Entity, { kind: 'wish' }>['row']): void {
    if (row.kind === 'required' && row.line.every(({ anchor }) => anchor.on !== 'free')) return
    if (!this.once(row.id)) return
    if (row.kind === 'forbiddenArea') this.path(row.path)
    else if (row.kind === 'forbiddenLine') row.line = row.line.map(at => this.motion.at(at))
    else if (row.kind === 'direction') {
      if (row.relativeTo === 'drawing') row.deg = turnedEitherWay(this.motion, row.deg)
      // What runs left of the pattern runs as far right of it in the mirror.
      else if (this.motion.mirrored) row.deg = 0 - row.deg
    } else if (!this.edit.carried.has(row.slabId))
      // Ends on an edge stay on it; the rest of a carried slab's lines goes with its joints.
      for (const end of row.line) if (end.anchor.on === 'free') end.last = this.motion.at(end.last)
  }

  private furnishing(row: Extract<Entity, { kind: 'furnishing' }>['row']): void {
    if (this.gone.has(row.id)) return
    this.place(row)
    row.turnDeg = turned(this.motion, row.turnDeg)
  }

  /** Ends on a corner or an edge stay on it. */
  private tape(row: Extract<Entity, { kind: 'tape' }>['row']): void {
    // Held at both ends it goes nowhere by itself.
    if (row.ends.every(({ on }) => on.on !== 'free') || !this.once(row.id)) return
    for (const end of row.ends) if (end.on.on === 'free') end.last = this.motion.at(end.last)
  }

  entity(entity: Entity): Finding | undefined {
    switch (entity.kind) {
      case 'slab':
        return this.slab(entity.row)
      case 'opening':
        this.opening(entity.row)
        break
      case 'band':
        this.band(entity.row)
        break
      case 'inset':
        this.inset(entity.row)
        break
      case 'caster':
        this.caster(entity.row)
        break
      case 'wish':
        this.wish(entity.row)
        break
      case 'noGo':
        this.path(entity.row)
        break
      case 'furnishing':
        this.furnishing(entity.row)
        break
      case 'tape':
        this.tape(entity.row)
        break
      case 'obstacle':
      case 'note':
      case 'spot':
      case 'way':
      case 'point':
        this.place(entity.row)
        break
      case 'border':
      case 'steps':
        break
    }
    return undefined
  }

  /** A point of a line that goes along as a whole goes once. */
  linePoint(id: Id): void {
    const lineId = readLinePointId(id)?.lineId
    if (lineId === undefined || this.gone.has(lineId)) return
    if (placeLinePoint(this.site, id, at => this.motion.at(at))) this.once(id)
  }

  corners(id: Id): void {
    const vertex = findVertex(this.site, id)
    if (vertex !== undefined) {
      this.place(vertex.path.vertices[vertex.index]!)
      return
    }
    const edge = findEdge(this.site, id)
    if (edge === undefined) return
    const { path, index } = edge
    for (const at of [index, (index + 1) % path.vertices.length]) this.place(path.vertices[at]!)
  }
}

/**
 * Carries the chosen entities: slabs with all that is drawn on them, parts, casters, access, points, wishes, single
 * corners, edges with both their corners, and points of lines. Borders and steps follow their edges.
 */
export const moveEntities = (
  site: Site,
  edit: Edit,
  ids: readonly Id[],
  motion: RigidMotion,
  done: string,
): Finding | undefined => {
  const mover = new Mover(site, edit, motion)
  const corners = ids.filter(isCorner)
  const points = ids.filter(id => readLinePointId(id))
  // A walk through all entities wakes the whole draft: not for corners and points alone.
  for (const entity of corners.length + points.length === ids.length ? [] : chosenEntities(site, ids)) {
    const refusal = mover.entity(entity)
    if (refusal !== undefined) return refusal
  }
  for (const id of corners) mover.corners(id)
  for (const id of points) mover.linePoint(id)
  return mover.count === 0 ? nothingChosen(done) : undefined
}
