import { changeDirection } from '../../../core/document/commands/changeEntity'
import type { DirectionWish } from '../../../core/pours/wishes/wishedDirection'
import type { JointWish } from '../../../shared/document/pours'
import type { Site } from '../../../shared/document/site'
import { wishWords } from '../../outline/outlineOf'
import { ChoiceField } from '../ChoiceField'
import { NumberField } from '../NumberField'
import { useRun } from '../useRun'
import { GoToPart, GoToPoint } from './GoTo'

/** Where joints are wanted, where not, and which way they run. */
export function WishPanel({ site, wish }: { readonly site: Site; readonly wish: JointWish }) {
  return (
    <>
      <header>
        <h2>{wishWords[wish.kind]}</h2>
      </header>
      {wish.kind === 'direction' ? <DirectionFields wish={wish} /> : null}
      <div className="fields">
        {wish.kind === 'forbiddenArea' ? (
          <GoToPart site={site} path={wish.path} value={wish.id} />
        ) : (
          <GoToPoint site={site} lineId={wish.id} />
        )}
      </div>
    </>
  )
}

function DirectionFields({ wish }: { readonly wish: DirectionWish }) {
  const run = useRun()
  const isOfPattern = wish.relativeTo === 'pattern'
  return (
    <div className="fields">
      <NumberField
        label="Direction"
        unit={isOfPattern ? '° left of the pattern' : '° left of the plan’s right'}
        value={wish.deg}
        min={-180}
        max={180}
        step={0.5}
        onSet={deg => run('direction of the joints', changeDirection(wish.id, { deg }))}
      />
      <ChoiceField
        label="Turns with"
        value={wish.relativeTo}
        choices={[
          ['pattern', 'The pattern'],
          ['drawing', 'The plan'],
        ]}
        onSet={relativeTo => run('direction of the joints', changeDirection(wish.id, { relativeTo }))}
      />
    </div>
  )
}
