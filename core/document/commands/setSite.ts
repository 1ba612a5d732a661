/** What holds for the whole site: place, picture, capacity, crew, mix, calendar, conditions, settings. */

import type * as z from 'zod/mini'
import type { Finish } from '../../../shared/document/materials'
import type { Asset, Picture, Place, Site } from '../../../shared/document/site'
import type { SettingName } from '../../../shared/settings'
import type { Coordinates } from '../../units/parseCoordinates'
import { applyPatch, type Patch } from './changeEntity'
import { type Command, editSite } from './editSite'

const setField =
  <K extends keyof Site>(key: K) =>
  (value: Site[K]): Command =>
  site =>
    editSite(site, draft => {
      if (value === undefined) delete draft[key]
      else draft[key] = value
      return undefined
    })

export const setName = setField('name')
export const setUnits = setField('units')
export const setCapacity = setField('capacity')
export const setCrew = setField('crew')
export const setMix = setField('mix')
export const setCalendar = setField('calendar')
export const setConditions = setField('conditions')

export const setPlace =
  (patch: Patch<Place, Exclude<keyof Place, 'picture'>>): Command =>
  site =>
    editSite(site, draft => {
      applyPatch<object>(draft.place, patch)
      return undefined
    })

/** A town's name says where a site lies to about this many degrees of a great circle: 30 km. */
const namedWithinDeg = 0.27

/** How far apart two places are, in degrees of a great circle, as good as exact over so short a way. */
const apartDeg = (a: Coordinates, b: Coordinates): number => {
  const aroundDeg = Math.abs(a.lonDeg - b.lonDeg) % 360
  const eastDeg = Math.min(aroundDeg, 360 - aroundDeg) * Math.cos((((a.latDeg + b.latDeg) / 2) * Math.PI) / 180)
  return Math.hypot(a.latDeg - b.latDeg, eastDeg)
}

/** More than 30 km away: what was told of the one place does not hold at the other. */
export const isElsewhere = (from: Coordinates, to: Coordinates): boolean => apartDeg(from, to) > namedWithinDeg

/** Other coordinates; the name of the place goes with the place it names, once that lies more than 30 km away. */
export const setCoordinates =
  (to: Coordinates): Command =>
  site =>
    setPlace({ ...to, ...(isElsewhere(site.place, to) ? { name: undefined } : {}) })(site)

/** `northDeg` = clockwise angle from drawing-up to true north, kept within 0 ≤ … < 360. */
export const setNorth = (northDeg: number): Command => setPlace({ northDeg: ((northDeg % 360) + 360) % 360 })

/** Takes out of the file what a picture was drawn from. */
const dropAsset = (draft: Site, assetId: string): void => {
  if (draft.assets !== undefined) delete draft.assets[assetId]
  if (Object.keys(draft.assets ?? {}).length === 0) delete draft.assets
}

/** A picture under the plan, in place of the one there was; `asset` where it is new, keyed by its hash. */
export const setPicture =
  (picture: z.infer<typeof Picture>, asset?: z.infer<typeof Asset>): Command =>
  site =>
    editSite(site, draft => {
      const before = draft.place.picture?.assetId
      if (before !== undefined && before !== picture.assetId) dropAsset(draft, before)
      if (asset !== undefined) draft.assets = { ...draft.assets, [picture.assetId]: asset }
      draft.place.picture = { ...picture }
      return undefined
    })

export const removePicture: Command = site =>
  editSite(site, draft => {
    const { picture } = draft.place
    if (picture === undefined) return undefined
    delete draft.place.picture
    dropAsset(draft, picture.assetId)
    return undefined
  })

/** Undefined goes back to the default. */
export const setSetting =
  (name: SettingName, value: number | undefined): Command =>
  site =>
    editSite(site, draft => {
      const settings = { ...draft.settings }
      if (value === undefined) delete settings[name]
      else settings[name] = value
      if (Object.keys(settings).length === 0) delete draft.settings
      else draft.settings = settings
      return undefined
    })

export const addFinish =
  (finish: Omit<Finish, 'id'>): Command =>
  site =>
    editSite(site, (draft, edit) => {
      draft.finishes.push({ ...finish, id: edit.make('f') })
      return undefined
    })
