import { changeBand, changeBorder, changeInset } from '../../../core/document/commands/changeEntity'
import type { Entity } from '../../../core/document/commands/siteEntities'
import { restackBorder } from '../../../core/document/commands/slabParts'
import type { Site } from '../../../shared/document/site'
import { ChoiceField } from '../ChoiceField'
import { placedChoices } from '../choices'
import { MeasureField } from '../MeasureField'
import { useRun } from '../useRun'
import { FinishField } from './FinishField'
import { GoToPart } from './GoTo'
import { NameField } from './NameField'

const strips = {
  border: { word: 'Border', change: changeBorder },
  band: { word: 'Band', change: changeBand },
  inset: { word: 'Inset', change: changeInset },
} as const

/** A border, a band or an inset: part of a slab in another finish. */
export function StripPanel({
  site,
  strip,
}: {
  readonly site: Site
  readonly strip: Extract<Entity, { kind: 'border' | 'band' | 'inset' }>
}) {
  const run = useRun()
  const { kind, row } = strip
  const { id, name, finishId, placed } = row
  const { word, change } = strips[kind]
  const path = kind === 'band' ? strip.row.line : kind === 'inset' ? strip.row.path : null
  return (
    <>
      <header>
        <h2>{name ?? word}</h2>
      </header>
      <div className="fields">
        <NameField name={name} set={to => change(id, { name: to })} />
        {'widthM' in row ? (
          <MeasureField
            label="Width"
            size={kind === 'band' ? 'band' : 'border'}
            lengthM={row.widthM}
            units={site.units}
            onSet={widthM => run(`${kind} width`, (kind === 'band' ? changeBand : changeBorder)(id, { widthM }))}
          />
        ) : null}
        <FinishField site={site} finishId={finishId} set={to => change(id, { finishId: to })} />
        <ChoiceField
          label="Placed"
          value={placed}
          choices={placedChoices}
          onSet={to => run(`${kind} method`, change(id, { placed: to }))}
        />
        {kind === 'border' ? <Stacking strip={strip} /> : null}
        {path ? <GoToPart site={site} path={path} value={id} /> : null}
      </div>
    </>
  )
}

/** Of borders side by side, one place farther out; the outermost has nowhere to go. */
function Stacking({ strip: { row, owner } }: { readonly strip: Extract<Entity, { kind: 'border' }> }) {
  const run = useRun()
  const place = owner.borders.findIndex(({ id }) => id === row.id)
  return place > 0 ? (
    <button
      type="button"
      className="btn"
      onClick={() => run('border order', restackBorder(owner.id, row.id, place - 1))}
    >
      Move outward
    </button>
  ) : null
}
