import { changeSteps } from '../../../core/document/commands/changeEntity'
import { printMeasures } from '../../../core/units/printMeasures'
import type { TradeSize } from '../../../core/units/tradeSizes'
import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { Steps } from '../../../shared/document/slab'
import { cornerLetter } from '../../editor/cornerNames'
import { ChoiceField } from '../ChoiceField'
import { MeasureField } from '../MeasureField'
import { NumberField } from '../NumberField'
import { useRun } from '../useRun'
import { edgesOfPath } from './GoTo'
import { NameField } from './NameField'
import { roundedEdgeM } from './roundedEdgeM'

/** A flight of steps: all that was set when it was drawn. */
export function StepsPanel({ site, steps }: { readonly site: Site; readonly steps: Steps }) {
  const run = useRun()
  const { id, name, edgeId, fromT, widthM, risers, riserM, treadM, nosingM = 0 } = steps
  const slab = site.slabs.find(each => each.steps.includes(steps))
  const edgeM = (edge: Id): number => (slab ? roundedEdgeM(slab, edge) : 0)
  const corner = slab ? slab.outline.edges.findIndex(each => each.id === edgeId) : -1
  const longM = edgeM(edgeId)
  const print = printMeasures(site.units)
  /** As far from the first corner as before, where the other edge has room for that. */
  const moveTo = (edge: Id) => {
    const otherM = edgeM(edge)
    const fromM = Math.max(0, Math.min(fromT * longM, otherM - widthM))
    run('steps', changeSteps(id, { edgeId: edge, fromT: otherM > 0 ? fromM / otherM : 0 }))
  }
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
        {slab && corner >= 0 ? (
          <>
            <ChoiceField label="Down from" value={edgeId} choices={edgesOfPath(slab.outline)} onSet={moveTo} />
            <MeasureField
              label={`Start from corner ${cornerLetter(corner)}`}
              lengthM={fromT * longM}
              units={site.units}
              onSet={to =>
                to < longM
                  ? run('steps', changeSteps(id, { fromT: to / longM }))
                  : `The edge is only ${print.length(longM)} long.`
              }
            />
          </>
        ) : null}
        {measure('Width', 'widthM', widthM)}
        {measure('Riser', 'riserM', riserM, 'riser')}
        {measure('Tread', 'treadM', treadM, 'tread')}
        {measure('Nosing', 'nosingM', nosingM, 'nosing')}
      </div>
    </>
  )
}
