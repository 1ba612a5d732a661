import { setTapeMeasured } from '../../../core/document/commands/addShown'
import { changeFurnishing, changeNote } from '../../../core/document/commands/changeEntity'
import type { Entity } from '../../../core/document/commands/siteEntities'
import { tapeLength } from '../../../core/document/tapeEnds'
import { tapeWords } from '../../../core/reports/tapeWords'
import { printMeasures } from '../../../core/units/printMeasures'
import type { Site } from '../../../shared/document/site'
import { furnitureKinds } from '../../editor/actions/actions'
import { ChoiceField } from '../ChoiceField'
import { furnitureChoices } from '../choices'
import { MeasureField } from '../MeasureField'
import { NumberField } from '../NumberField'
import { TextField } from '../TextField'
import { useRun } from '../useRun'
import { GoToPoint } from './GoTo'
import { NameField } from './NameField'
import { PlaceFields } from './PlaceFields'

/** A piece of furniture, a note, or a tape dimension. */
export function ShownPanel({
  site,
  entity,
}: {
  readonly site: Site
  readonly entity: Extract<Entity, { kind: 'furnishing' | 'note' | 'tape' }>
}) {
  const run = useRun()
  const { units } = site
  if (entity.kind === 'note') {
    const { id, text } = entity.row
    return (
      <>
        <header>
          <h2>Note</h2>
        </header>
        <div className="fields">
          <TextField
            label="Words"
            value={text}
            onSet={to => (to.trim() === '' ? 'Write something.' : run('note', changeNote(id, { text: to.trim() })))}
          />
          <PlaceFields site={site} id={id} at={entity.row.at} />
        </div>
      </>
    )
  }
  if (entity.kind === 'tape') {
    const { id, measuredM } = entity.row
    const [, field] = tapeWords(entity.row, printMeasures(units))
    return (
      <>
        <header>
          <h2>Tape, {printMeasures(units).length(tapeLength(entity.row))}</h2>
        </header>
        <div className="fields">
          <MeasureField
            label="Measured in the field"
            lengthM={measuredM ?? 0}
            units={units}
            onSet={to => run('field length', setTapeMeasured(id, to > 0 ? to : undefined))}
          />
          <GoToPoint site={site} lineId={id} />
          <p className="told">{field ?? '0 = not measured yet.'}</p>
        </div>
      </>
    )
  }
  const { id, name, kind, turnDeg, widthM, depthM } = entity.row
  return (
    <>
      <header>
        <h2>{name ?? furnitureKinds[kind]}</h2>
      </header>
      <div className="fields">
        <NameField name={name} set={to => changeFurnishing(id, { name: to })} />
        <ChoiceField
          label="Kind"
          value={kind}
          choices={furnitureChoices}
          onSet={to => run('furniture', changeFurnishing(id, { kind: to }))}
        />
        <MeasureField
          label="Width"
          lengthM={widthM}
          units={units}
          onSet={to => run('furniture', changeFurnishing(id, { widthM: to }))}
        />
        <MeasureField
          label="Depth"
          lengthM={depthM}
          units={units}
          onSet={to => run('furniture', changeFurnishing(id, { depthM: to }))}
        />
        <NumberField
          label="Turned by"
          unit="° left"
          value={Number(turnDeg.toFixed(1))}
          min={-360}
          max={360}
          step={15}
          onSet={to => run('turn', changeFurnishing(id, { turnDeg: to }))}
        />
        <PlaceFields site={site} id={id} at={entity.row.at} />
      </div>
    </>
  )
}
