/** What the joints should keep to, and points whose sun is followed. */
import type { End } from '../../../shared/document/pours'
import type { Id, Pt } from '../../../shared/document/primitives'
import { drawShape, type Shape } from './drawShape'
import { type Command, editSite, missing } from './editSite'

export type NewWish =
  | { readonly kind: 'required'; readonly line: readonly [End, End] }
  | { readonly kind: 'forbiddenLine'; readonly line: readonly Pt[] }
  | { readonly kind: 'forbiddenArea'; readonly shape: Shape }
  | { readonly kind: 'direction'; readonly deg: number; readonly relativeTo: 'pattern' | 'drawing' }

export const addWish =
  (slabId: Id, wish: NewWish): Command =>
  site =>
    editSite(site, (draft, edit) => {
      if (!draft.slabs.some(({ id }) => id === slabId)) return missing('slab', slabId)
      const id = edit.make('y')
      if (wish.kind === 'forbiddenArea')
        draft.wishes.push({ id, slabId, kind: wish.kind, path: drawShape(edit, wish.shape, 'counterClockwise') })
      else if (wish.kind === 'required')
        draft.wishes.push({ id, slabId, kind: wish.kind, line: [wish.line[0], wish.line[1]] })
      else if (wish.kind === 'forbiddenLine') draft.wishes.push({ id, slabId, kind: wish.kind, line: [...wish.line] })
      else draft.wishes.push({ id, slabId, ...wish })
      return undefined
    })

export const addMarkedPoint =
  (slabId: Id, name: string, at: Pt): Command =>
  site =>
    editSite(site, (draft, edit) => {
      if (!draft.slabs.some(({ id }) => id === slabId)) return missing('slab', slabId)
      draft.points.push({ id: edit.make('p'), name, at: [at[0], at[1]], slabId })
      return undefined
    })
