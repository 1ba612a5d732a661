/** The retarder in hand: the product with its label, and how much of it is on hand. */
import type { Material } from '../../../shared/document/materials'
import type { Id } from '../../../shared/document/primitives'
import { applyPatch, type Patch } from './changeEntity'
import { type Command, editSite, missing } from './editSite'

type Product = Pick<Material, 'name' | 'unit' | 'packageSize' | 'label'>

export const addRetarder =
  (product: Product): Command =>
  site =>
    editSite(site, (draft, edit) => {
      draft.materials = [...(draft.materials ?? []), { id: edit.make('m'), kind: 'retarder', ...product }]
      return undefined
    })

/** The count of packages on hand stays what it is when their size is typed over. */
export const changeRetarder =
  (id: Id, patch: Patch<Material, keyof Product>): Command =>
  site =>
    editSite(site, draft => {
      const product = draft.materials?.find(each => each.id === id && each.kind === 'retarder')
      if (!product) return missing('material', id)
      const resized = (patch.packageSize ?? product.packageSize) / product.packageSize
      const row = draft.stock?.find(({ materialId }) => materialId === id)
      if (row) row.onHand *= resized
      applyPatch<Material>(product, patch)
      return undefined
    })

/** In the unit of the material; undefined takes its stock away. */
export const setOnHand =
  (materialId: Id, onHand: number | undefined): Command =>
  site =>
    editSite(site, draft => {
      if (!draft.materials?.some(({ id }) => id === materialId)) return missing('material', materialId)
      const rows = draft.stock ?? []
      const others = rows.filter(row => row.materialId !== materialId)
      const own = rows.find(row => row.materialId === materialId)
      const stock = onHand === undefined ? others : [...others, { ...own, materialId, onHand }]
      if (stock.length > 0) draft.stock = stock
      else delete draft.stock
      return undefined
    })
