import { setNorth } from '../../../core/document/commands/setSite'
import type { Site } from '../../../shared/document/site'
import { NumberField } from '../NumberField'
import { useRun } from '../useRun'
import { NorthByShadow } from './NorthByShadow'
import { NorthByWall } from './NorthByWall'

/** Which way north is: typed, dragged at the arrow, along a wall, or by a shadow at a known minute. */
export function NorthForm({ site }: { readonly site: Site }) {
  const run = useRun()
  return (
    <div className="fields">
      <p className="told wide">
        Drag the north arrow on the plan, or type it. Better: along a wall with its bearing, or by a plumb line’s
        shadow.
      </p>
      <NumberField
        label="True north, clockwise from up"
        unit="°"
        value={Number(site.place.northDeg.toFixed(2))}
        min={-360}
        max={360}
        step={0.1}
        onSet={to => run('north', setNorth(to))}
      />
      <NorthByWall site={site} />
      <NorthByShadow site={site} />
    </div>
  )
}
