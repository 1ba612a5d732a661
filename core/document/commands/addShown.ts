/** Furniture at scale, notes, tape dimensions. */
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Furnishing } from '../../../shared/document/shown'
import { endAt } from '../tapeEnds'
import { type Command, editSite, missing } from './editSite'

const foot = 0.3048

/** Usual sizes across and deep: common practice, no source. A car with its mirrors fits 7 × 16 ft. */
export const usualFurnishing: Readonly<
  Record<Furnishing['kind'], { readonly widthM: number; readonly depthM: number }>
> = {
  chair: { widthM: 2 * foot, depthM: 2 * foot },
  lounge: { widthM: 2.25 * foot, depthM: 6.5 * foot },
  table: { widthM: 6 * foot, depthM: 3 * foot },
  roundTable: { widthM: 4 * foot, depthM: 4 * foot },
  grill: { widthM: 5 * foot, depthM: 2 * foot },
  car: { widthM: 7 * foot, depthM: 16 * foot },
}

export const addFurnishing =
  (kind: Furnishing['kind'], at: Pt, turnDeg: number): Command =>
  site =>
    editSite(site, (draft, edit) => {
      draft.furnishings ??= []
      draft.furnishings.push({ id: edit.make('h'), kind, at: [at[0], at[1]], turnDeg, ...usualFurnishing[kind] })
      return undefined
    })

export const addNote =
  (at: Pt, text: string): Command =>
  site =>
    editSite(site, (draft, edit) => {
      draft.notes ??= []
      draft.notes.push({ id: edit.make('m'), at: [at[0], at[1]], text })
      return undefined
    })

/** A tape from place to place; each end holds on to the corner or the edge it lies on. */
export const addTape =
  (from: Pt, to: Pt): Command =>
  site =>
    editSite(site, (draft, edit) => {
      if (!(Math.hypot(to[0] - from[0], to[1] - from[1]) > 0))
        return { code: 'badMeasure', severity: 'stop', values: { foundM: 0, what: 'length of a tape' } }
      draft.tapes ??= []
      draft.tapes.push({ id: edit.make('j'), ends: [endAt(site, from), endAt(site, to)] })
      return undefined
    })

/** What the tape said in the field; undefined takes it away. */
export const setTapeMeasured =
  (id: Id, measuredM: number | undefined): Command =>
  site =>
    editSite(site, draft => {
      const tape = draft.tapes?.find(each => each.id === id)
      if (tape === undefined) return missing('tape dimension', id)
      if (measuredM === undefined) delete tape.measuredM
      else tape.measuredM = measuredM
      return undefined
    })
