/** Trucks, pump, washout, areas to keep off, ways in and out. */
import type { Way } from '../../../shared/document/day'
import type { Hours, Id, Pt } from '../../../shared/document/primitives'
import type { Access, Site } from '../../../shared/document/site'
import { drawShape, type Shape } from './drawShape'
import { type Command, editSite, missing } from './editSite'

/** 16 ft: reach of a truck's chute, 12 to 20 ft. Common practice, no source. */
const chuteReachM = 4.8768

const accessOf = (draft: Site): Access => {
  draft.access ??= { truckSpots: [], pumpSpots: [], washouts: [], noGo: [], chuteReachM, ways: [] }
  return draft.access
}

const spots = { truck: ['truckSpots', 't'], pump: ['pumpSpots', 'u'], washout: ['washouts', 'w'] } as const

export const addSpot =
  (kind: keyof typeof spots, at: Pt): Command =>
  site =>
    editSite(site, (draft, edit) => {
      const [list, letter] = spots[kind]
      accessOf(draft)[list].push({ id: edit.make(letter), at: [at[0], at[1]] })
      return undefined
    })

export const addNoGo =
  (shape: Shape): Command =>
  site =>
    editSite(site, (draft, edit) => {
      const path = drawShape(edit, shape, 'counterClockwise')
      edit.made.push(path.id)
      accessOf(draft).noGo.push(path)
      return undefined
    })

/** A door or gate to keep usable, with the hours it must be open. */
export const addWay =
  ({ at, widthM, open, name }: Omit<Way, 'id'>): Command =>
  site =>
    editSite(site, (draft, edit) => {
      const id = edit.make('g')
      accessOf(draft).ways.push({
        id,
        at: [at[0], at[1]],
        widthM,
        open: [...open],
        ...(name === undefined ? {} : { name }),
      })
      return undefined
    })

export const setWayHours =
  (wayId: Id, open: readonly Hours[]): Command =>
  site =>
    editSite(site, draft => {
      const way = draft.access?.ways.find(({ id }) => id === wayId)
      if (way === undefined) return missing('way in and out', wayId)
      way.open = [...open]
      return undefined
    })

/** What carries the concrete beyond the chute. */
export const setCarts =
  (carts: NonNullable<Access['carts']>): Command =>
  site =>
    editSite(site, draft => {
      accessOf(draft).carts = carts
      return undefined
    })

export const setChuteReach =
  (reachM: number): Command =>
  site =>
    editSite(site, draft => {
      accessOf(draft).chuteReachM = reachM
      return undefined
    })
