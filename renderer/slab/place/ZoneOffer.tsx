import { useEffect, useState } from 'react'
import { setPlace } from '../../../core/document/commands/setSite'
import type { Site } from '../../../shared/document/site'
import { useRun } from '../useRun'
import { keptHours } from './keptHours'
import { zoneAt } from './loadPlaces'
import { OfferAct } from './OfferAct'

/** Where the coordinates lie in another time zone than the site says, that one is offered. */
export function ZoneOffer({ site }: { readonly site: Site }) {
  const run = useRun()
  const { latDeg, lonDeg, zone } = site.place
  const [found, setFound] = useState<string | null>(null)
  const [kept, setKept] = useState<string | null>(null)
  useEffect(() => {
    let isGone = false
    void zoneAt(latDeg, lonDeg).then(at => {
      if (!isGone) setFound(at ?? null)
    })
    return () => {
      isGone = true
    }
  }, [latDeg, lonDeg])
  if (found === null || found === zone || kept === `${found} ${zone}`) return null
  return (
    <div className="offer wide" role="status">
      <p>
        These coordinates lie in <b>{found}</b>; the site keeps the time of {zone}. {keptHours(site)}
      </p>
      <div className="offer-acts">
        <OfferAct isMain onAct={() => run('time zone', setPlace({ zone: found }))}>
          Use {found}
        </OfferAct>
        <OfferAct onAct={() => setKept(`${found} ${zone}`)}>Keep {zone}</OfferAct>
      </div>
    </div>
  )
}
