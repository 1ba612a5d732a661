import { moveSelection } from '../../../core/document/commands/moveSelection'
import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { MeasureField } from '../MeasureField'
import { farthestM } from '../placeLimit'
import { useRun } from '../useRun'

/** Several things moved together, typed from where they stand: to the right and up; less than zero is left and down. */
export function MoveBy({ site, ids }: { readonly site: Site; readonly ids: readonly Id[] }) {
  const run = useRun()
  return (
    <div className="fields">
      <fieldset className="place-fields">
        <legend>Move all of them by</legend>
        {(['Right', 'Up'] as const).map((side, axis) => (
          <MeasureField
            key={`${ids.join(' ')} ${side}`}
            label={side}
            lengthM={0}
            units={site.units}
            minM={-farthestM}
            onSet={byM => run('move', moveSelection(ids, axis === 0 ? [byM, 0] : [0, byM]))}
          />
        ))}
      </fieldset>
    </div>
  )
}
