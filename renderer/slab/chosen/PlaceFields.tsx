import { moveSelection } from '../../../core/document/commands/moveSelection'
import type { Id, Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { cornersOfSite } from '../../editor/cornerNames'
import { MeasureField } from '../MeasureField'
import { farthestM } from '../placeLimit'
import { useRun } from '../useRun'

/** Where one thing stands, typed from the first corner of the site: right of it and above it; less than zero is left and below. */
export function PlaceFields({
  site,
  id,
  at,
  step = 'move',
  placedBy,
  own = [id],
}: {
  readonly site: Site
  readonly id: Id
  readonly at: Pt
  /** Names the undo step. */
  readonly step?: string
  /** The corner a larger thing is placed by: "Corner A". */
  readonly placedBy?: string
  /** Ids of the corners that move along, and so are none to measure from. */
  readonly own?: readonly Id[]
}) {
  const run = useRun()
  const mark = cornersOfSite(site).find(each => !own.includes(each.id))
  if (!mark) return null
  return (
    <fieldset className="place-fields">
      <legend>
        {placedBy === undefined ? 'From' : `${placedBy}, from`} {mark.words}
      </legend>
      {(['Right', 'Up'] as const).map((side, axis) => {
        const farM = at[axis]! - mark.at[axis]!
        return (
          <MeasureField
            key={`${id} ${side}`}
            label={side}
            lengthM={farM}
            units={site.units}
            minM={-farthestM}
            onSet={to => run(step, moveSelection([id], axis === 0 ? [to - farM, 0] : [0, to - farM]))}
          />
        )
      })}
    </fieldset>
  )
}
