import { changeCaster } from '../../../core/document/commands/changeEntity'
import type { Tree } from '../../../shared/document/caster'
import type { Site } from '../../../shared/document/site'
import { ChoiceField } from '../ChoiceField'
import { densityChoices } from '../choices'
import { MeasureField } from '../MeasureField'
import { useRun } from '../useRun'
import { HeightField } from './HeightField'
import { PlaceFields } from './PlaceFields'

/** Height, crown and leaves. */
export function TreeFields({ site, tree }: { readonly site: Site; readonly tree: Tree }) {
  const run = useRun()
  const { id, baseM, trunkM, crownRadiusM, density, leaves } = tree
  return (
    <>
      <HeightField caster={tree} units={site.units} />
      <MeasureField
        label="Lowest leaves"
        lengthM={trunkM - baseM}
        units={site.units}
        onSet={to => run('lowest leaves', changeCaster(id, { trunkM: baseM + to }))}
      />
      <MeasureField
        label="Crown radius"
        lengthM={crownRadiusM}
        units={site.units}
        onSet={to => run('crown', changeCaster(id, { crownRadiusM: to }))}
      />
      <ChoiceField
        label="Leaves"
        value={density}
        choices={densityChoices}
        onSet={to => run('leaves', changeCaster(id, { density: to }))}
      />
      <ChoiceField
        label="In winter"
        value={leaves === 'evergreen' ? 'green' : 'bare'}
        choices={[
          ['bare', 'Bare'],
          ['green', 'Green'],
        ]}
        onSet={to =>
          run('leaves', changeCaster(id, { leaves: to === 'green' ? 'evergreen' : { from: '04-15', to: '10-31' } }))
        }
      />
      <PlaceFields site={site} id={id} at={tree.at} />
    </>
  )
}
