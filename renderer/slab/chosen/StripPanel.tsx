import { useState } from 'react'
import { changeBand, changeBorder, changeInset } from '../../../core/document/commands/changeEntity'
import type { Entity } from '../../../core/document/commands/siteEntities'
import { restackBorder } from '../../../core/document/commands/slabParts'
import { openingNames } from '../../../core/document/openingNames'
import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { ChoiceField } from '../ChoiceField'
import { placedChoices } from '../choices'
import { Fault } from '../Fault'
import { MeasureField } from '../MeasureField'
import { PartChecks } from '../PartChecks'
import { useRun } from '../useRun'
import { FinishField } from './FinishField'
import { edgesOfPath, GoToPart } from './GoTo'
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
        {kind === 'border' ? <BorderEdges strip={strip} /> : null}
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

/** The edges a border runs along, each by its letters; the last of them stays. */
function BorderEdges({ strip: { row, owner } }: { readonly strip: Extract<Entity, { kind: 'border' }> }) {
  const run = useRun()
  const [fault, setFault] = useState<string | null>(null)
  const opening = owner.openings.find(({ path: { id } }) => id === row.pathId)
  const path = opening?.path ?? (owner.outline.id === row.pathId ? owner.outline : undefined)
  if (!path) return null
  const all = path.edges.map(({ id }) => id)
  const set = (chosen: readonly Id[]) => {
    const edges = all.filter(id => chosen.includes(id))
    setFault(
      edges.length === 0
        ? 'A border runs along one edge at least. To be rid of it, delete it.'
        : run('edges of the border', changeBorder(row.id, { edges: edges.length === all.length ? 'all' : edges })),
    )
  }
  const chosen = row.edges === 'all' ? all : row.edges
  const around = opening ? openingNames(owner.openings).get(opening.id)!.the : owner.name
  return (
    <details className="wide">
      <summary>
        Runs along {chosen.length === all.length ? `all ${all.length}` : `${chosen.length} of ${all.length}`} edges
      </summary>
      <PartChecks name={`Edges of ${around}`} parts={edgesOfPath(path)} chosen={chosen} onSet={set} />
      <Fault words={fault} />
    </details>
  )
}
