/** What is spread on the slab or dosed into the drum: rate, package, waste, price, and how much of it is on hand. */
import { Material } from '../../../shared/document/materials'
import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { Finding } from '../../../shared/problem'
import { applyPatch, type Patch } from './changeEntity'
import { type Command, editSite, missing } from './editSite'
import { firstFault } from './firstFault'
import { removeRow } from './siteEntities'

/** Undefined where the row may stand as it is; else what is wrong with it, by its place in the list. */
function refuse(site: Site, row: Material): Finding | undefined {
  const { id, name } = row
  const field = `/materials/${site.materials?.findIndex(each => each.id === id) ?? 0}`
  if (name.trim() === '') return { code: 'missingField', severity: 'stop', values: {}, field: `${field}/name` }
  if (row.unit.trim() === '') return { code: 'missingField', severity: 'stop', values: {}, field: `${field}/unit` }
  return firstFault(Material, row, field)
}

export const addMaterial =
  (material: Omit<Material, 'id'>): Command =>
  site =>
    editSite(site, (draft, edit) => {
      const row = { id: edit.make('m'), ...material }
      draft.materials = [...(draft.materials ?? []), row]
      return refuse(draft, row)
    })

/**
 * The count of packages on hand stays what it is when their size is typed over; where the unit changes with the size, a
 * package covers what it covered before.
 */
export const changeMaterial =
  (id: Id, patch: Patch<Material, Exclude<keyof Material, 'id'>>): Command =>
  site =>
    editSite(site, draft => {
      const row = draft.materials?.find(each => each.id === id)
      if (!row) return missing('material', id)
      const before = { unit: row.unit, packageSize: row.packageSize }
      applyPatch<Material>(row, patch)
      const refusal = refuse(draft, row)
      if (refusal !== undefined) return refusal
      const resized = row.packageSize / before.packageSize
      const stock = draft.stock?.find(({ materialId }) => materialId === id)
      if (stock) stock.onHand *= resized
      if (row.unit !== before.unit && row.ratePerM2 !== undefined && patch.ratePerM2 === undefined)
        row.ratePerM2 *= resized
      return undefined
    })

/** With its stock; refused where the log tells how much of it was used. */
export const removeMaterial =
  (id: Id): Command =>
  site =>
    editSite(site, draft => {
      const { materials = [] } = draft
      const row = materials.find(each => each.id === id)
      if (!row) return missing('material', id)
      const count = (draft.log ?? []).filter(({ used }) => used.some(({ materialId }) => materialId === id)).length
      if (count > 0)
        return { code: 'materialInUse', severity: 'stop', values: { name: row.name, count }, at: { entityId: id } }
      removeRow(materials, id)
      if (materials.length === 0) delete draft.materials
      draft.stock = draft.stock?.filter(({ materialId }) => materialId !== id) ?? []
      if (draft.stock.length === 0) delete draft.stock
      return undefined
    })

/** In the unit of the material; undefined takes its stock away. */
export const setOnHand =
  (materialId: Id, onHand: number | undefined): Command =>
  site =>
    editSite(site, draft => {
      if (!draft.materials?.some(({ id }) => id === materialId)) return missing('material', materialId)
      if (onHand !== undefined && !(onHand >= 0 && Number.isFinite(onHand)))
        return { code: 'badMeasure', severity: 'stop', values: { found: onHand, what: 'amount on hand' } }
      const rows = draft.stock ?? []
      const others = rows.filter(row => row.materialId !== materialId)
      const own = rows.find(row => row.materialId === materialId)
      const stock = onHand === undefined ? others : [...others, { ...own, materialId, onHand }]
      if (stock.length > 0) draft.stock = stock
      else delete draft.stock
      return undefined
    })
