import { changeOpening } from '../../../core/document/commands/changeEntity'
import { openingNames } from '../../../core/document/openingNames'
import type { Site } from '../../../shared/document/site'
import type { Opening } from '../../../shared/document/slab'
import { ChoiceField } from '../ChoiceField'
import { openingChoices, poolChoices } from '../choices'
import { useRun } from '../useRun'
import { CornerRadii } from './CornerRadius'
import { GoToPart } from './GoTo'
import { NameField } from './NameField'

/** A hole in a slab: its kind, of a pool also its edge. */
export function OpeningPanel({ site, opening }: { readonly site: Site; readonly opening: Opening }) {
  const run = useRun()
  const { id, kind, pool, name, path } = opening
  const owner = site.slabs.find(({ openings }) => openings.includes(opening))
  const { title } = openingNames(owner?.openings ?? [opening]).get(id)!
  return (
    <>
      <header>
        <h2>{title}</h2>
      </header>
      <div className="fields">
        <NameField name={name} set={to => changeOpening(id, { name: to })} />
        <ChoiceField
          label="Kind"
          value={kind}
          choices={openingChoices}
          onSet={to =>
            run('kind of opening', changeOpening(id, { kind: to, pool: to === 'pool' ? 'cantilevered' : undefined }))
          }
        />
        {kind === 'pool' ? (
          <ChoiceField
            label="Pool edge"
            value={pool ?? 'cantilevered'}
            choices={poolChoices}
            onSet={to => run('pool edge', changeOpening(id, { pool: to }))}
          />
        ) : null}
        <GoToPart site={site} path={path} value={id} />
        <CornerRadii path={path} units={site.units} />
      </div>
    </>
  )
}
