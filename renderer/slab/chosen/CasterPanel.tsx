import { changeCaster } from '../../../core/document/commands/changeEntity'
import type { Caster, Cover, Wall } from '../../../shared/document/caster'
import type { Site } from '../../../shared/document/site'
import { ChoiceField } from '../ChoiceField'
import { lightChoices } from '../choices'
import { MeasureField } from '../MeasureField'
import { NumberField } from '../NumberField'
import { HeightByShadow } from '../north/HeightByShadow'
import { useRun } from '../useRun'
import { BuildingFields } from './BuildingFields'
import { GoToPart, GoToPoint } from './GoTo'
import { HeightField } from './HeightField'
import { NeededNameField } from './NameField'
import { TreeFields } from './TreeFields'

/** Anything that throws a shadow. */
export function CasterPanel({ site, caster }: { readonly site: Site; readonly caster: Caster }) {
  return (
    <>
      <header>
        <h2>{caster.name}</h2>
      </header>
      <div className="fields">
        <NeededNameField name={caster.name} set={name => changeCaster(caster.id, { name })} />
        {caster.kind === 'building' ? <BuildingFields site={site} building={caster} /> : null}
        {caster.kind === 'wall' ? <WallFields site={site} wall={caster} /> : null}
        {caster.kind === 'tree' ? <TreeFields site={site} tree={caster} /> : null}
        {caster.kind === 'cover' ? <CoverFields site={site} cover={caster} /> : null}
      </div>
      {caster.kind === 'cover' ? null : <HeightByShadow key={caster.id} site={site} caster={caster} />}
    </>
  )
}

function WallFields({ site, wall }: { readonly site: Site; readonly wall: Wall }) {
  const run = useRun()
  return (
    <>
      <HeightField caster={wall} units={site.units} />
      <NumberField
        label="Solid"
        unit="%"
        value={Math.round(wall.solidity * 100)}
        min={0}
        max={100}
        onSet={to => run('fence', changeCaster(wall.id, { solidity: to / 100 }))}
      />
      <GoToPoint site={site} lineId={wall.id} />
    </>
  )
}

/** A cover stays as thick as it is, wherever its underside goes. */
function CoverFields({ site, cover }: { readonly site: Site; readonly cover: Cover }) {
  const run = useRun()
  const { id, undersideM, topM, light } = cover
  return (
    <>
      <MeasureField
        label="Underside above the site mark"
        lengthM={undersideM}
        units={site.units}
        onSet={to => run('cover', changeCaster(id, { undersideM: to, topM: to + topM - undersideM }))}
      />
      {typeof light === 'string' ? (
        <ChoiceField
          label="Light"
          value={light}
          choices={lightChoices}
          onSet={to => run('light', changeCaster(id, { light: to }))}
        />
      ) : null}
      <GoToPart site={site} path={cover.outline} value={id} />
    </>
  )
}
