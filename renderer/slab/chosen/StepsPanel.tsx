import { changeSteps } from '../../../core/document/commands/changeEntity'
import type { TradeSize } from '../../../core/units/tradeSizes'
import type { Site } from '../../../shared/document/site'
import type { Steps } from '../../../shared/document/slab'
import { MeasureField } from '../MeasureField'
import { NumberField } from '../NumberField'
import { useRun } from '../useRun'
import { NameField } from './NameField'

/** A flight of steps: all that was set when it was drawn. */
export function StepsPanel({ site, steps }: { readonly site: Site; readonly steps: Steps }) {
  const run = useRun()
  const { id, name, widthM, risers, riserM, treadM, nosingM = 0 } = steps
  const measure = (
    label: string,
    key: 'widthM' | 'riserM' | 'treadM' | 'nosingM',
    lengthM: number,
    size?: TradeSize,
  ) => (
    <MeasureField
      label={label}
      size={size}
      lengthM={lengthM}
      units={site.units}
      onSet={to => run('steps', changeSteps(id, { [key]: key === 'nosingM' && to === 0 ? undefined : to }))}
    />
  )
  return (
    <>
      <header>
        <h2>{name ?? 'Steps'}</h2>
      </header>
      <div className="fields">
        <NameField name={name} set={to => changeSteps(id, { name: to })} />
        <NumberField
          label="Risers"
          value={risers}
          min={1}
          max={20}
          onSet={to => run('steps', changeSteps(id, { risers: to }))}
        />
        {measure('Width', 'widthM', widthM)}
        {measure('Riser', 'riserM', riserM, 'riser')}
        {measure('Tread', 'treadM', treadM, 'tread')}
        {measure('Nosing', 'nosingM', nosingM, 'nosing')}
      </div>
    </>
  )
}
