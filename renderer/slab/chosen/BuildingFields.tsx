import { changeCaster } from '../../../core/document/commands/changeEntity'
import type { Building } from '../../../shared/document/caster'
import type { Site } from '../../../shared/document/site'
import { ChoiceField } from '../ChoiceField'
import { roofChoices } from '../choices'
import { MeasureField } from '../MeasureField'
import { NumberField } from '../NumberField'
import { useRun } from '../useRun'
import { edgesOfPath, GoToPart } from './GoTo'
import { HeightField } from './HeightField'

/** Eave, overhang and roof; its walls are chosen on the plan. */
export function BuildingFields({ site, building }: { readonly site: Site; readonly building: Building }) {
  const run = useRun()
  const { id, roof, footprint, overhangM } = building
  const setRoof = (form: typeof roof.form) =>
    changeCaster(id, {
      roof:
        form === 'flat'
          ? { form }
          : {
              form,
              risePer12: roof.form === 'flat' ? 6 : roof.risePer12,
              ridgeAlongEdge: footprint.edges[0]!.id,
            },
    })
  return (
    <>
      <HeightField caster={building} units={site.units} />
      <MeasureField
        label="Overhang"
        size="overhang"
        lengthM={overhangM}
        units={site.units}
        onSet={to => run('overhang', changeCaster(id, { overhangM: to }))}
      />
      <ChoiceField label="Roof" value={roof.form} choices={roofChoices} onSet={form => run('roof', setRoof(form))} />
      {roof.form === 'flat' ? null : (
        <NumberField
          label="Rise in 12"
          value={roof.risePer12}
          min={0.5}
          max={24}
          step={0.5}
          onSet={risePer12 => run('roof', changeCaster(id, { roof: { ...roof, risePer12 } }))}
        />
      )}
      {roof.form === 'gable' ? (
        <ChoiceField
          label="Ridge runs along"
          value={roof.ridgeAlongEdge}
          choices={edgesOfPath(footprint)}
          onSet={ridgeAlongEdge => run('ridge', changeCaster(id, { roof: { ...roof, ridgeAlongEdge } }))}
        />
      ) : null}
      <GoToPart site={site} path={footprint} value={id} />
    </>
  )
}
