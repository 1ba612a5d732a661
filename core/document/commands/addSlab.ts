import type { Id } from '../../../shared/document/primitives'
import type { Slab } from '../../../shared/document/slab'
import { drawShape, type Shape } from './drawShape'
import { type Command, editSite } from './editSite'

export interface NewSlab {
  readonly outline: Shape
  readonly name: string
  /** Without one the site's first finish, which is made where there is none. */
  readonly finishId?: Id
  readonly levelM?: number
  readonly thicknessM?: number
  readonly baseDepthM?: number
}

/** 4 in of concrete on 4 in of base: common practice, no source. */
const fourInchesM = 0.1016

export const addSlab =
  ({ outline, name, finishId, levelM = 0, thicknessM = fourInchesM, baseDepthM = fourInchesM }: NewSlab): Command =>
  site =>
    editSite(site, (draft, edit) => {
      const id = edit.make('s')
      const own = finishId ?? draft.finishes[0]?.id ?? edit.mint('f')
      if (draft.finishes.length === 0)
        draft.finishes.push({ id: own, name: 'Broom finish', pattern: 'broom', color: '#c8c4bb' })
      const slab: Slab = {
        id,
        name,
        levelM,
        outline: drawShape(edit, outline, 'counterClockwise'),
        openings: [],
        thicknessM,
        thickened: [],
        baseDepthM,
        finishId: own,
        borders: [],
        bands: [],
        insets: [],
        steps: [],
        obstacles: [],
        againstExisting: [],
      }
      draft.slabs.push(slab)
      return undefined
    })
