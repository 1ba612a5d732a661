import type { Path } from '../../../shared/document/path'
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Furnishing } from '../../../shared/document/shown'
import type { Site } from '../../../shared/document/site'
import { type Box, joinBounds, pointBounds, ringBounds } from '../../geometry/bounds'
import { resolvePath } from '../../geometry/resolvePath'
import { type Command, editSite, nothingChosen } from './editSite'
import { findVertex, isClosed } from './findPath'
import { moveEntities } from './moveEntities'
import { shiftBy } from './rigidMotion'
import { chosenEntities, type Entity } from './siteEntities'

const pathBox = (path: Path): Box => {
  const { ring } = resolvePath(path, path.id, isClosed(path))
  return ring.length > 0 ? ringBounds(ring) : pointBounds(path.vertices.map(({ at }) => at))
}

const furnishingBox = ({ at: [x, y], turnDeg, widthM, depthM }: Furnishing): Box => {
  const [cos, sin] = [Math.abs(Math.cos((turnDeg * Math.PI) / 180)), Math.abs(Math.sin((turnDeg * Math.PI) / 180))]
  const [w, h] = [(widthM * cos + depthM * sin) / 2, (widthM * sin + depthM * cos) / 2]
  return { minX: x - w, minY: y - h, maxX: x + w, maxY: y + h }
}

const entityBox = (entity: Entity): Box | undefined => {
  switch (entity.kind) {
    case 'slab':
      return pathBox(entity.row.outline)
    case 'opening':
    case 'inset':
      return pathBox(entity.row.path)
    case 'band':
      return pathBox(entity.row.line)
    case 'noGo':
      return pathBox(entity.row)
    case 'caster': {
      const { row } = entity
      if (row.kind === 'building') return pathBox(row.footprint)
      if (row.kind === 'cover') return pathBox(row.outline)
      if (row.kind === 'wall') return pointBounds(row.line)
      const [x, y] = row.at
      const r = row.crownRadiusM
      return { minX: x - r, minY: y - r, maxX: x + r, maxY: y + r }
    }
    case 'wish':
      if (entity.row.kind === 'forbiddenArea') return pathBox(entity.row.path)
      return entity.row.kind === 'forbiddenLine' ? pointBounds(entity.row.line) : undefined
    case 'furnishing':
      return furnishingBox(entity.row)
    case 'tape':
      return pointBounds(entity.row.ends.map(({ last }) => last))
    case 'obstacle':
    case 'note':
    case 'spot':
    case 'way':
    case 'point':
      return pointBounds([entity.row.at])
    case 'border':
    case 'steps':
      return undefined
  }
}

/** The box around what an id names, arcs included; undefined for what has no place of its own. */
export const boxOf = (site: Site, id: Id): Box | undefined => {
  const [entity] = chosenEntities(site, [id])
  if (entity !== undefined) return entityBox(entity)
  const corner = findVertex(site, id)
  return corner === undefined ? undefined : pointBounds([corner.path.vertices[corner.index]!.at])
}

/** The box around all that is chosen; undefined where nothing has a place. */
export const selectionBox = (site: Site, ids: readonly Id[]): Box | undefined => {
  const boxes = ids.flatMap(id => boxOf(site, id) ?? [])
  return boxes.length === 0 ? undefined : joinBounds(boxes)
}

export type LineUpSide = 'left' | 'right' | 'top' | 'bottom' | 'middleAcross' | 'middleUp'

const offset = (side: LineUpSide, to: Box, box: Box): Pt => {
  switch (side) {
    case 'left':
      return [to.minX - box.minX, 0]
    case 'right':
      return [to.maxX - box.maxX, 0]
    case 'bottom':
      return [0, to.minY - box.minY]
    case 'top':
      return [0, to.maxY - box.maxY]
    case 'middleAcross':
      return [(to.minX + to.maxX - box.minX - box.maxX) / 2, 0]
    case 'middleUp':
      return [0, (to.minY + to.maxY - box.minY - box.maxY) / 2]
  }
}

const tooFew = nothingChosen('lined up')

/** Lines the chosen entities and corners up with the first of them, each moved as a whole. */
export const lineUp =
  (ids: readonly Id[], side: LineUpSide): Command =>
  site =>
    editSite(site, (draft, edit) => {
      const [first, ...rest] = ids
      const to = first === undefined ? undefined : boxOf(site, first)
      if (to === undefined || rest.length === 0) return tooFew
      let moved = 0
      for (const id of rest) {
        const box = boxOf(site, id)
        if (box === undefined) continue
        const by = offset(side, to, box)
        moved += 1
        if (by[0] !== 0 || by[1] !== 0) moveEntities(draft, edit, [id], shiftBy(by), 'lined up')
      }
      return moved === 0 ? tooFew : undefined
    })

/** Puts corners onto the straight line from the first to the last of them, each square to it. */
export const lineUpCorners =
  (vertexIds: readonly Id[]): Command =>
  site =>
    editSite(site, draft => {
      const corners = vertexIds.flatMap(id => {
        const found = findVertex(draft, id)
        return found === undefined ? [] : [found.path.vertices[found.index]!]
      })
      const a = corners[0]?.at
      const b = corners.at(-1)?.at
      const length = a === undefined || b === undefined ? 0 : Math.hypot(b[0] - a[0], b[1] - a[1])
      if (a === undefined || b === undefined || corners.length < 3 || length === 0) return tooFew
      const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
      for (const vertex of corners.slice(1, -1)) {
        const run = (vertex.at[0] - a[0]) * ux + (vertex.at[1] - a[1]) * uy
        vertex.at = [a[0] + run * ux, a[1] + run * uy]
      }
      return undefined
    })
