import { setCoordinates, setPlace } from '../../../core/document/commands/setSite'
import { isKnownZone } from '../../../core/document/isKnownZone'
import { type Coordinates, parseCoordinates } from '../../../core/units/parseCoordinates'
import type { Site } from '../../../shared/document/site'
import { NumberField } from '../NumberField'
import { TextField } from '../TextField'
import { useRun } from '../useRun'
import { HeightAboveSea } from './HeightAboveSea'
import { keptHours } from './keptHours'
import { PlaceSearch } from './PlaceSearch'
import { ZoneOffer } from './ZoneOffer'

const coordinateText = (latDeg: number, lonDeg: number): string =>
  [latDeg, lonDeg].map(deg => String(Number(deg.toFixed(6))).replace('-', '−')).join(', ')

/** A millionth of a degree is 4 in. */
const rounded = ({ latDeg, lonDeg }: Coordinates): Coordinates => ({
  latDeg: Number(latDeg.toFixed(6)),
  lonDeg: Number(lonDeg.toFixed(6)),
})

/** Where the site lies: a town out of the list, or coordinates; and whose clock it keeps. */
export function PlaceForm({ site }: { readonly site: Site }) {
  const run = useRun()
  const { name = '', latDeg, lonDeg, zone } = site.place
  const hours = keptHours(site)
  return (
    <div className="fields">
      <PlaceSearch site={site} />
      <TextField
        label="Name of the place"
        value={name}
        onSet={to => run('place name', setPlace({ name: to === '' ? undefined : to }))}
      />
      <TextField
        label="Coordinates, like 43.615, −116.202 or 43°36′54″ N 116°12′8″ W"
        value={coordinateText(latDeg, lonDeg)}
        onSet={text => {
          const read = parseCoordinates(text)
          return read.ok ? run('place', setCoordinates(rounded(read.value))) : read.error.message
        }}
      />
      <NumberField
        label="Latitude"
        unit="° north"
        value={latDeg}
        min={-90}
        max={90}
        step={0.0001}
        onSet={to => run('place', setCoordinates({ latDeg: to, lonDeg }))}
      />
      <NumberField
        label="Longitude"
        unit="° east, west is minus"
        value={lonDeg}
        min={-180}
        max={180}
        step={0.0001}
        onSet={to => run('place', setCoordinates({ latDeg, lonDeg: to }))}
      />
      <ZoneOffer site={site} />
      <TextField
        label="Time zone, like America/Boise"
        value={zone}
        onSet={to =>
          isKnownZone(to) ? run('time zone', setPlace({ zone: to })) : `“${to}” is no time zone this computer knows.`
        }
      />
      {hours === '' ? null : <p className="told wide">{hours}</p>}
      <HeightAboveSea key={site.id} site={site} />
    </div>
  )
}
