/** Names, sizes and finishes of what is drawn. */
import type { Caster } from '../../../shared/document/caster'
import type { Way } from '../../../shared/document/day'
import type { Finish } from '../../../shared/document/materials'
import type { JointWish } from '../../../shared/document/pours'
import type { Id } from '../../../shared/document/primitives'
import type { Furnishing, Note } from '../../../shared/document/shown'
import type { MarkedPoint, Site } from '../../../shared/document/site'
import type { Band, Border, Inset, Obstacle, Opening, Slab, Steps } from '../../../shared/document/slab'
import { type Command, editSite, missing } from './editSite'
import { leavesAboveTop } from './leavesAboveTop'

/** What may change; `undefined` takes an optional field away. */
export type Patch<T, K extends keyof T> = { readonly [P in K]?: T[P] | undefined }

/** Writes the fields of a patch into a draft. */
export const applyPatch = <T extends object>(row: T, patch: Partial<{ [P in keyof T]: T[P] | undefined }>): void => {
  for (const key of Object.keys(patch) as (keyof T)[]) {
    const value = patch[key]
    if (value === undefined) delete row[key]
    else row[key] = value
  }
}

const change = <T extends { id: Id }, K extends keyof T>(what: string, rowsOf: (site: Site) => readonly T[]) => {
  return (id: Id, patch: Patch<T, K>): Command =>
    site =>
      editSite(site, draft => {
        const row = rowsOf(draft).find(each => each.id === id)
        if (row === undefined) return missing(what, id)
        applyPatch(row, patch as Partial<{ [P in keyof T]: T[P] | undefined }>)
        return undefined
      })
}

export const changeSlab = change<Slab, 'name' | 'levelM' | 'thicknessM' | 'baseDepthM' | 'finishId' | 'slope'>(
  'slab',
  site => site.slabs,
)

export const changeOpening = change<Opening, 'name' | 'kind' | 'pool'>('opening', site =>
  site.slabs.flatMap(({ openings }) => openings),
)

export const changeBorder = change<Border, 'name' | 'edges' | 'widthM' | 'finishId' | 'placed'>('border', site =>
  site.slabs.flatMap(({ borders }) => borders),
)

export const changeBand = change<Band, 'name' | 'widthM' | 'finishId' | 'placed'>('band', site =>
  site.slabs.flatMap(({ bands }) => bands),
)

export const changeInset = change<Inset, 'name' | 'finishId' | 'placed'>('inset', site =>
  site.slabs.flatMap(({ insets }) => insets),
)

export const changeSteps = change<Steps, Exclude<keyof Steps, 'id'>>('flight of steps', site =>
  site.slabs.flatMap(({ steps }) => steps),
)

export const changeObstacle = change<Obstacle, 'name' | 'kind' | 'at'>('obstacle', site =>
  site.slabs.flatMap(({ obstacles }) => obstacles),
)

export const changeFinish = change<Finish, Exclude<keyof Finish, 'id'>>('finish', site => site.finishes)

export const changeMarkedPoint = change<MarkedPoint, 'name' | 'at' | 'slabId'>('marked point', site => site.points)

export const changeDirection = change<Extract<JointWish, { kind: 'direction' }>, 'deg' | 'relativeTo'>(
  'direction of the joints',
  site => site.wishes.filter(wish => wish.kind === 'direction'),
)

export const changeFurnishing = change<Furnishing, 'name' | 'kind' | 'turnDeg' | 'widthM' | 'depthM'>(
  'piece of furniture',
  site => site.furnishings ?? [],
)

export const changeNote = change<Note, 'text'>('note', site => site.notes ?? [])

export const changeWay = change<Way, 'name' | 'at' | 'widthM'>('way in and out', site => site.access?.ways ?? [])

type FieldsOf<T> = T extends Caster ? Patch<T, Exclude<keyof T, 'id' | 'kind'>> : never
/**
 * Fields of a caster of any kind, elevations above the datum; those its kind does not have are refused, and heights of a
 * tree that would put its lowest leaves above its top.
 */
export type CasterPatch = FieldsOf<Caster>

export const changeCaster =
  (id: Id, patch: CasterPatch): Command =>
  site =>
    editSite(site, draft => {
      const caster = draft.casters.find(each => each.id === id)
      if (caster === undefined) return missing('shade caster', id)
      applyPatch<object>(caster, patch)
      return caster.kind === 'tree' && ('topM' in patch || 'trunkM' in patch)
        ? leavesAboveTop(caster.trunkM - caster.baseM, caster.topM - caster.baseM)
        : undefined
    })
