import { useState } from 'react'
import { isElsewhere, setPlace } from '../../../core/document/commands/setSite'
import { feetToMeters, metersToFeet } from '../../../core/units/convert'
import type { Site } from '../../../shared/document/site'
import { NumberField } from '../NumberField'
import { useRun } from '../useRun'
import { OfferAct } from './OfferAct'

/** In whole feet or meters. Where the site came to lie elsewhere and the height stayed, it is asked about. */
export function HeightAboveSea({ site }: { readonly site: Site }) {
  const run = useRun()
  const { place, units } = site
  // The places this height was told of.
  const [told, setTold] = useState([place])
  if (told.some(({ elevationM }) => elevationM !== place.elevationM)) setTold([place])
  const unit = units === 'ftin' ? 'ft' : 'm'
  const inUnit = (meters: number) => Math.round(units === 'ftin' ? metersToFeet(meters) : meters)
  const height = inUnit(place.elevationM) + 0
  const words = `${height.toLocaleString('en-US').replace('-', '−')} ${unit}`
  return (
    <>
      {told.every(each => isElsewhere(each, place)) ? (
        <div className="offer wide" role="status">
          <p>
            The site lies elsewhere now; its height above sea is still <b>{words}</b>. Type the new one below, or keep
            it.
          </p>
          <div className="offer-acts">
            <OfferAct onAct={() => setTold([...told, place])}>Keep {words}</OfferAct>
          </div>
        </div>
      ) : null}
      <NumberField
        label="Height above sea"
        unit={unit}
        value={height}
        min={inUnit(-450)}
        max={inUnit(6000)}
        onSet={to => run('height above sea', setPlace({ elevationM: units === 'ftin' ? feetToMeters(to) : to }))}
      />
    </>
  )
}
