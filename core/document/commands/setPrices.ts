/** The lines of the price list. */
import { Price } from '../../../shared/document/materials'
import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { Finding } from '../../../shared/problem'
import { applyPatch, type Patch } from './changeEntity'
import { type Command, editSite, missing } from './editSite'
import { firstFault } from './firstFault'
import { removeRow } from './siteEntities'

/** Beyond these a sum could not be told to the cent any more. */
const most = { amount: 10_000_000, quantity: 1_000_000 }

/** Undefined where the row may stand as it is; else what is wrong with it, by its place in the list. */
function refuse(site: Site, row: Price): Finding | undefined {
  const field = `/prices/${site.prices?.findIndex(({ id }) => id === row.id) ?? 0}`
  for (const key of ['name', 'per'] as const)
    if (row[key].trim() === '') return { code: 'missingField', severity: 'stop', values: {}, field: `${field}/${key}` }
  for (const key of ['amount', 'quantity'] as const)
    if ((row[key] ?? 0) > most[key])
      return {
        ...{ code: 'outOfRange', severity: 'stop', field: `${field}/${key}` },
        values: { value: row[key]!, max: most[key] },
      }
  return firstFault(Price, row, field)
}

export const addPrice =
  (price: Omit<Price, 'id'>): Command =>
  site =>
    editSite(site, (draft, edit) => {
      const row = { id: edit.make('h'), ...price }
      draft.prices = [...(draft.prices ?? []), row]
      return refuse(draft, row)
    })

export const changePrice =
  (id: Id, patch: Patch<Price, Exclude<keyof Price, 'id'>>): Command =>
  site =>
    editSite(site, draft => {
      const row = draft.prices?.find(each => each.id === id)
      if (!row) return missing('price', id)
      applyPatch<Price>(row, patch)
      return refuse(draft, row)
    })

export const removePrice =
  (id: Id): Command =>
  site =>
    editSite(site, draft => {
      const { prices = [] } = draft
      if (!prices.some(each => each.id === id)) return missing('price', id)
      removeRow(prices, id)
      if (prices.length === 0) delete draft.prices
      return undefined
    })

/** One place up (−1) or down (+1); the first does not go up, nor the last down. */
export const movePrice =
  (id: Id, by: -1 | 1): Command =>
  site =>
    editSite(site, draft => {
      const { prices = [] } = draft
      const from = prices.findIndex(each => each.id === id)
      const [row, other] = [prices[from], prices[from + by]]
      if (!row) return missing('price', id)
      if (other) [prices[from], prices[from + by]] = [other, row]
      return undefined
    })
