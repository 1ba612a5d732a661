import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { Opening, Slab } from '../../../shared/document/slab'
import type { Finding } from '../../../shared/problem'
import { removeVertex } from './deleteVertex'
import { edgeLists } from './edgeLists'
import { type Command, type Edit, editSite, missing, nothingChosen } from './editSite'
import { findVertex } from './findPath'
import { findLinePoint, removeLinePoint } from './linePoints'
import { chosenEntities, type Entity, removeRow } from './siteEntities'

const removeSlab = (site: Site, edit: Edit, slab: Slab): Finding | undefined => {
  const parts = site.accepted.filter(({ slabId }) => slabId === slab.id)
  const pours = parts.flatMap(part => part.pours)
  const logged = new Set(site.log?.map(({ pourId }) => pourId))
  const frozen = pours.find(pour => pour.poured !== undefined || logged.has(pour.id))
  if (frozen !== undefined)
    return {
      code: 'pouredFrozen',
      severity: 'stop',
      values: { number: frozen.number, done: 'deleted' },
      at: { entityId: slab.id },
    }
  const joints = parts.flatMap(part => part.joints).length
  if (pours.length + joints > 0) edit.tell('acceptedRemoved', 'check', slab.id, { pours: pours.length, joints })
  for (const { id, slabId } of site.points)
    if (slabId === slab.id) edit.tell('removedWith', 'note', id, { what: 'marked point', id })
  for (const { id, slabId } of site.wishes)
    if (slabId === slab.id) edit.tell('removedWith', 'note', id, { what: 'joint line', id })
  site.accepted = site.accepted.filter(({ slabId }) => slabId !== slab.id)
  site.points = site.points.filter(({ slabId }) => slabId !== slab.id)
  site.wishes = site.wishes.filter(({ slabId }) => slabId !== slab.id)
  removeRow(site.slabs, slab.id)
  return undefined
}

const removeOpening = (edit: Edit, slab: Slab, { id, path }: Opening): void => {
  const edges = new Set(path.edges.map(edge => edge.id))
  for (const gone of [...edges, ...path.vertices.map(vertex => vertex.id)]) edit.successors.set(gone, [])
  removeRow(slab.openings, id)
  for (const border of slab.borders.filter(({ pathId }) => pathId === path.id)) {
    edit.tell('removedWith', 'note', border.id, { what: 'border', id: border.id })
    removeRow(slab.borders, border.id)
  }
  for (const steps of slab.steps.filter(({ edgeId }) => edges.has(edgeId))) {
    edit.tell('removedWith', 'note', steps.id, { what: 'flight of steps', id: steps.id })
    removeRow(slab.steps, steps.id)
  }
  for (const { ids, write } of edgeLists(slab)) {
    const left = ids.filter(edgeId => !edges.has(edgeId))
    if (left.length < ids.length) write(left)
  }
  slab.thickened = slab.thickened.filter(part => part.edges.length > 0)
}

const removeEntity = (site: Site, edit: Edit, entity: Entity): Finding | undefined => {
  if (entity.kind === 'slab') return removeSlab(site, edit, entity.row)
  if (entity.kind === 'opening') removeOpening(edit, entity.owner, entity.row)
  else removeRow(entity.list, entity.row.id)
  return undefined
}

const removeFinish = (site: Site, id: Id): Finding | undefined => {
  const finish = site.finishes.find(each => each.id === id)
  if (finish === undefined) return missing('finish', id)
  if (site.finishes.length === 1) return { code: 'lastFinish', severity: 'stop', values: {}, at: { entityId: id } }
  const uses = [
    ...site.slabs.flatMap(slab => [slab, ...slab.borders, ...slab.bands, ...slab.insets]),
    ...(site.prices ?? []),
  ].filter(({ finishId }) => finishId === id).length
  if (uses > 0)
    return {
      code: 'finishInUse',
      severity: 'stop',
      values: { name: finish.name, count: uses },
      at: { entityId: id },
    }
  removeRow(site.finishes, id)
  return undefined
}

/** An unused finish. */
export const deleteFinish =
  (id: Id): Command =>
  site =>
    editSite(site, draft => removeFinish(draft, id))

/**
 * Deletes what is chosen, corners and points of lines included, and what cannot stand without it; each of those is
 * told. Slabs with poured or logged pours are refused.
 */
export const deleteSelection =
  (ids: readonly Id[]): Command =>
  site =>
    editSite(site, (draft, edit) => {
      const entities = chosenEntities(draft, ids)
      for (const entity of entities) {
        const refusal = removeEntity(draft, edit, entity)
        if (refusal !== undefined) return refusal
      }
      const corners = ids.filter(id => findVertex(draft, id) !== undefined)
      for (const id of corners) {
        const refusal = removeVertex(draft, edit, id)
        if (refusal !== undefined) return refusal
      }
      // From the last to the first: those before keep their places.
      const points = ids
        .filter(id => findLinePoint(draft, id) !== undefined)
        .toSorted((a, b) => b.localeCompare(a, 'en', { numeric: true }))
      for (const id of points) {
        const refusal = removeLinePoint(draft, id)
        if (refusal !== undefined) return refusal
      }
      return entities.length + corners.length + points.length === 0 ? nothingChosen('deleted') : undefined
    })
