/** The place list and the zones are loaded when they are first asked for, from the planner's own files. */

import { type PlaceList, readPlaces } from './findPlaces'
import placesAddress from './places.txt?url'

let list: Promise<PlaceList> | null = null

export function loadPlaces(): Promise<PlaceList> {
  list ??= fetch(placesAddress)
    .then(answer => (answer.ok ? answer.text() : Promise.reject(new Error(answer.statusText))))
    .then(readPlaces)
  // What failed is asked for again.
  list.catch(() => {
    list = null
  })
  return list
}

/** The IANA zone at coordinates; undefined where there is none. */
export async function zoneAt(latDeg: number, lonDeg: number): Promise<string | undefined> {
  const { default: lookUp } = await import('@photostructure/tz-lookup')
  try {
    return lookUp(latDeg, lonDeg)
  } catch {
    return undefined
  }
}
