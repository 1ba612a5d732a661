import { useEffect, useId, useState } from 'react'
import { setPlace } from '../../../core/document/commands/setSite'
import type { Site } from '../../../shared/document/site'
import { Fault } from '../Fault'
import { useRun } from '../useRun'
import { countryName, type FoundPlace, findPlaces, type PlaceList } from './findPlaces'
import { keptHours } from './keptHours'
import { loadPlaces, zoneAt } from './loadPlaces'
import { OfferAct } from './OfferAct'

export const placeWords = ({ name, region, country }: FoundPlace): string =>
  [name, region, country === 'US' && region !== '' ? '' : countryName(country)].filter(Boolean).join(', ')

export const coordinateWords = (latDeg: number, lonDeg: number): string =>
  `${Math.abs(latDeg).toFixed(3)}° ${latDeg < 0 ? 'south' : 'north'}, ${Math.abs(lonDeg).toFixed(3)}° ${lonDeg < 0 ? 'west' : 'east'}`

interface Offered {
  readonly place: FoundPlace
  readonly zone: string | undefined
}

/** A town by its name, without a network: its coordinates and its time zone are offered, and set when accepted. */
export function PlaceSearch({ site }: { readonly site: Site }) {
  const run = useRun()
  const [text, setText] = useState('')
  const [list, setList] = useState<PlaceList | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  const [offered, setOffered] = useState<Offered | null>(null)
  const id = useId()
  const isAsking = text.trim().length >= 2
  useEffect(() => {
    if (!isAsking || list) return
    let isGone = false
    loadPlaces().then(
      read => {
        if (!isGone) setList(read)
      },
      () => {
        if (!isGone) setFault('The place list could not be read. Type the coordinates below.')
      },
    )
    return () => {
      isGone = true
    }
  }, [isAsking, list])
  const found = list && isAsking ? findPlaces(list, text) : []
  const offer = async (place: FoundPlace) => {
    setOffered({ place, zone: await zoneAt(place.latDeg, place.lonDeg) })
  }
  const accept = ({ place, zone }: Offered) => {
    const { latDeg, lonDeg } = place
    const refused = run(
      'place',
      setPlace({ name: placeWords(place), latDeg, lonDeg, ...(zone === undefined ? {} : { zone }) }),
    )
    setFault(refused)
    if (refused === null) {
      setOffered(null)
      setText('')
    }
  }
  return (
    <div className="place-search wide">
      <div className="measure wide">
        <label htmlFor={id}>Find a town, like Boise, ID</label>
        <input
          id={id}
          type="search"
          autoComplete="off"
          value={text}
          aria-describedby={`${id}-count`}
          onChange={event => {
            setText(event.target.value)
            setOffered(null)
            setFault(null)
          }}
          onKeyDown={event => {
            if (event.key === 'Enter' && found[0]) void offer(found[0])
          }}
        />
      </div>
      {offered === null && found.length > 0 ? (
        <ul className="place-list" aria-label="Towns found">
          {found.map(place => (
            <li key={`${place.name} ${place.latDeg} ${place.lonDeg}`}>
              <button type="button" onClick={() => void offer(place)}>
                <b>{placeWords(place)}</b> <span>{coordinateWords(place.latDeg, place.lonDeg)}</span>
              </button>
            </li>
          ))}
        </ul>
      ) : null}
      {offered ? (
        <div className="offer">
          <p>
            <b>{placeWords(offered.place)}</b>, {coordinateWords(offered.place.latDeg, offered.place.lonDeg)}.{' '}
            {offered.zone === undefined
              ? 'No time zone is known there: choose it below.'
              : `Time zone ${offered.zone}. ${offered.zone === site.place.zone ? '' : keptHours(site)}`}
          </p>
          <div className="offer-acts">
            <OfferAct isMain takesFocus onAct={() => accept(offered)}>
              Use this place
            </OfferAct>
            <OfferAct onAct={() => setOffered(null)}>Leave it</OfferAct>
          </div>
        </div>
      ) : null}
      <p className="told" id={`${id}-count`} role="status">
        {isAsking && list && found.length === 0
          ? 'No town by that name in the list. Try the next larger one, or type the coordinates.'
          : 'Place data: GeoNames, CC BY 4.0. The town is enough for the sun; the site’s own coordinates are better.'}
      </p>
      <Fault words={fault} />
    </div>
  )
}
