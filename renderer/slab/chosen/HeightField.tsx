import { changeCaster } from '../../../core/document/commands/changeEntity'
import type { Building, Tree, Wall } from '../../../shared/document/caster'
import type { UnitSystem } from '../../../shared/document/site'
import { MeasureField } from '../MeasureField'
import { useRun } from '../useRun'

/** How far something stands above the ground it stands on: of a building its eave. */
export function HeightField({
  caster,
  units,
}: {
  readonly caster: Building | Tree | Wall
  readonly units: UnitSystem
}) {
  const run = useRun()
  const { id, baseM } = caster
  const isBuilding = caster.kind === 'building'
  return (
    <MeasureField
      label={isBuilding ? 'Eave above ground' : 'Height'}
      lengthM={(isBuilding ? caster.eaveM : caster.topM) - baseM}
      units={units}
      onSet={to =>
        to > 0
          ? run('height', changeCaster(id, isBuilding ? { eaveM: baseM + to } : { topM: baseM + to }))
          : 'Type a height greater than zero.'
      }
    />
  )
}
