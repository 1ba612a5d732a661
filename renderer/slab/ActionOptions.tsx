import { memo, useRef } from 'react'
import { findEdge } from '../../core/document/commands/findPath'
import { leavesAboveTop } from '../../core/document/commands/leavesAboveTop'
import { openingNames } from '../../core/document/openingNames'
import type { TradeSize } from '../../core/units/tradeSizes'
import type { Id } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import { isFinger } from '../app/handWords'
import { useCommitted, useView } from '../app/session'
import { wordFindings } from '../app/wordFindings'
import { actionWords, directionWish, hasForms, isOpening, type Options, slabFor } from '../editor/actions/actions'
import { cornersOfSite, placeWords } from '../editor/cornerNames'
import { freeWords } from '../editor/promptWords'
import { useEditor, useEditorState } from '../editor/useEditor'
import { ChoiceField } from './ChoiceField'
import {
  accessChoices,
  densityChoices,
  edgeChoices,
  finishChoices,
  formChoices,
  furnitureChoices,
  inSlabChoices,
  lightChoices,
  noteChoices,
  placedChoices,
  poolChoices,
  roofChoices,
  stripChoices,
  tapeChoices,
  wishChoices,
} from './choices'
import { edgesOfPath } from './chosen/GoTo'
import { MeasureField } from './MeasureField'
import { NumberField } from './NumberField'
import { PartChecks } from './PartChecks'
import { TextField } from './TextField'
import { TapeTieForm } from './tape/TapeTieForm'
import { useRun } from './useRun'

/** More corners than this make a list nobody reads. */
const mostMarks = 200

/** What the next thing drawn will be like. */
export const ActionOptions = memo(function ActionOptions() {
  const site = useCommitted()
  const action = useEditorState(state => state.action)
  return site && action !== 'select' ? <ActionFields site={site} /> : null
})

function ActionFields({ site }: { readonly site: Site }) {
  const editor = useEditor()
  const {
    action,
    options: o,
    drawing,
    mark,
  } = useEditorState(({ action, options, drawing, mark }) => ({
    action,
    options,
    drawing,
    mark,
  }))
  const set = (change: Partial<Options>) => editor.setOptions(change)
  const choice = <K extends keyof Options>(
    label: string,
    key: K,
    choices: readonly (readonly [Extract<Options[K], string>, string])[],
  ) => (
    <ChoiceField
      label={label}
      value={o[key] as Extract<Options[K], string>}
      choices={choices}
      onSet={value => set({ [key]: value } as Partial<Options>)}
    />
  )
  const measure = (
    label: string,
    key:
      | 'widthM'
      | 'eaveM'
      | 'overhangM'
      | 'fenceHeightM'
      | 'treeHeightM'
      | 'trunkHeightM'
      | 'crownRadiusM'
      | 'undersideM'
      | 'wayWidthM',
    { least = 0.001, size }: { readonly least?: number; readonly size?: TradeSize } = {},
  ) => (
    <MeasureField
      label={label}
      size={size}
      lengthM={o[key]}
      units={site.units}
      minM={least}
      onSet={value => {
        if (value < least) return 'Type a length greater than zero.'
        const { trunkHeightM, treeHeightM }: Options = { ...o, [key]: value }
        const refused = action === 'tree' ? leavesAboveTop(trunkHeightM, treeHeightM) : undefined
        if (refused) return wordFindings(site, [refused])
        set({ [key]: value })
        return null
      }}
    />
  )
  const hasForm = hasForms(action, o)
  const drawsEdges = (hasForm && o.form === 'corners') || (action === 'border' && o.strip === 'band')
  const marks = cornersOfSite(site)
  return (
    <section className="slab-form" aria-label={`${actionWords[action]}, how it is drawn`}>
      <header>
        <h2>{actionWords[action]}</h2>
      </header>
      <div className="fields">
        {action === 'opening' ? choice('Kind', 'inSlab', inSlabChoices) : null}
        {action === 'opening' && o.inSlab === 'pool' ? choice('Pool edge', 'pool', poolChoices) : null}
        {action === 'border' ? choice('Kind', 'strip', stripChoices) : null}
        {action === 'joint' ? choice('Kind', 'wish', wishChoices) : null}
        {action === 'access' ? choice('Kind', 'access', accessChoices) : null}
        {hasForm ? choice('Drawn as', 'form', formChoices) : null}
        {drawsEdges ? choice('Next edge', 'edge', edgeChoices) : null}
        {action === 'border' && o.strip !== 'inset' ? measure('Width', 'widthM', { size: o.strip }) : null}
        {action === 'border' ? (
          <>
            <ChoiceField
              label="Finish"
              value={o.finishId ?? site.finishes.at(-1)?.id ?? ''}
              choices={finishChoices(site.finishes)}
              onSet={finishId => set({ finishId })}
            />
            {choice('Placed', 'placed', placedChoices)}
          </>
        ) : null}
        {action === 'building' ? (
          <>
            <ChoiceField
              label="Height"
              value={o.stories === null ? 'eave' : String(o.stories)}
              choices={[
                ['1', '1 story'],
                ['2', '2 stories'],
                ['3', '3 stories'],
                ['eave', 'Eave height'],
              ]}
              onSet={value => set({ stories: value === 'eave' ? null : Number(value) })}
            />
            {o.stories === null ? measure('Eave above ground', 'eaveM') : null}
            {measure('Overhang', 'overhangM', { least: 0, size: 'overhang' })}
            {choice('Roof', 'roof', roofChoices)}
            {o.roof === 'flat' ? null : (
              <NumberField
                label="Rise in 12"
                value={o.risePer12}
                min={0.5}
                max={24}
                step={0.5}
                onSet={risePer12 => set({ risePer12 })}
              />
            )}
          </>
        ) : null}
        {action === 'fence' ? (
          <>
            {measure('Height', 'fenceHeightM')}
            <NumberField
              label="Solid"
              unit="%"
              value={Math.round(o.solidity * 100)}
              min={0}
              max={100}
              onSet={value => set({ solidity: value / 100 })}
            />
          </>
        ) : null}
        {action === 'tree' ? (
          <>
            {measure('Height', 'treeHeightM')}
            {measure('Lowest leaves', 'trunkHeightM', { least: 0 })}
            {measure('Crown radius', 'crownRadiusM')}
            {choice('Leaves', 'density', densityChoices)}
            <ChoiceField
              label="In winter"
              value={o.evergreen ? 'green' : 'bare'}
              choices={[
                ['bare', 'Bare'],
                ['green', 'Green'],
              ]}
              onSet={value => set({ evergreen: value === 'green' })}
            />
          </>
        ) : null}
        {action === 'cover' ? (
          <>
            {measure('Underside above ground', 'undersideM')}
            {choice('Light', 'light', lightChoices)}
          </>
        ) : null}
        {action === 'access' && o.access === 'way' ? measure('Width', 'wayWidthM') : null}
        {action === 'tape' ? choice('Kind', 'tape', tapeChoices) : null}
        {action === 'furniture' ? (
          <>
            {choice('Kind', 'furniture', furnitureChoices)}
            <NumberField
              label="Turned by"
              unit="° left"
              value={o.furnitureTurnDeg}
              min={-360}
              max={360}
              step={15}
              onSet={furnitureTurnDeg => set({ furnitureTurnDeg })}
            />
          </>
        ) : null}
        {action === 'note' ? (
          <ChoiceField
            label="Kind"
            value={o.noteKind}
            choices={noteChoices}
            // A point does not go by the words of a note.
            onSet={noteKind => set({ noteKind, note: noteKind === 'note' ? 'Note' : 'Point' })}
          />
        ) : null}
        {action === 'note' ? (
          <TextField
            label="Words"
            value={o.note}
            onSet={note => {
              set({ note })
              return null
            }}
          />
        ) : null}
        {drawing && drawing.placed.length === 0 && mark && marks.length > 1 && marks.length <= mostMarks ? (
          <ChoiceField
            label="Typed from"
            value={mark.words}
            choices={marks.map(({ words }) => [words, placeWords(words)] as const)}
            onSet={words => {
              const found = marks.find(each => each.words === words)
              if (found) editor.setMark(found)
            }}
          />
        ) : null}
      </div>
      {action === 'border' && o.strip === 'border' ? <BorderEdges site={site} /> : null}
      {action === 'opening' && isOpening(o.inSlab) && o.inSlab === 'pool' ? (
        <p className="note">
          Bonding at a pool is the electrician’s; the local code decides on edge, drain and barrier.
        </p>
      ) : null}
      {drawing && !isFinger() ? <p className="note">{freeWords}</p> : null}
      {action === 'joint' && o.wish === 'direction' ? <DirectionTyped site={site} deg={o.wishDeg} /> : null}
      {action === 'tape' && o.tape === 'tie' ? <TapeTieForm site={site} /> : null}
    </section>
  )
}

/** The direction typed, for the slab that is chosen, else for the only one there is. */
function DirectionTyped({ site, deg }: { readonly site: Site; readonly deg: number }) {
  const editor = useEditor()
  const run = useRun()
  const selection = useView(state => state.selection)
  const slab = slabFor(site, undefined, selection)
  return (
    <div className="fields">
      <NumberField
        label="Direction"
        unit="° left of the pattern"
        value={deg}
        min={-180}
        max={180}
        step={0.5}
        onSet={wishDeg => editor.setOptions({ wishDeg })}
      />
      <button
        type="button"
        className="btn main"
        disabled={!slab}
        onClick={() => {
          if (!slab) return
          const { name, command } = directionWish(slab, deg)
          run(name, command)
        }}
      >
        {slab && site.slabs.length > 1 ? `Set the direction for ${slab.name}` : 'Set the direction'}
      </button>
    </div>
  )
}

/** Edges are clicked on the plan, or taken all at once here and then one by one. */
function BorderEdges({ site }: { readonly site: Site }) {
  const editor = useEditor()
  const edges = useEditorState(state => state.edges)
  const last = useRef<Id | null>(null)
  last.current = edges[0] ?? last.current
  // Of the shape whose last edge was unticked the others can still be ticked.
  const inHand = last.current === null ? undefined : findEdge(site, last.current)?.path
  return (
    <div className="fields">
      {site.slabs
        .flatMap(slab => [
          { id: slab.id, words: `All edges of ${slab.name}`, path: slab.outline },
          ...slab.openings.map(({ id, path }) => ({
            id,
            words: `All around ${openingNames(slab.openings).get(id)!.the}`,
            path,
          })),
        ])
        .map(({ id, words, path }) => (
          <button
            key={id}
            type="button"
            className="btn"
            onClick={() => {
              editor.chooseEdges(path.edges.map(edge => edge.id))
            }}
          >
            {words}
          </button>
        ))}
      {inHand ? (
        <PartChecks
          name="The border runs along"
          parts={edgesOfPath(inHand)}
          chosen={edges}
          onSet={editor.chooseEdges}
        />
      ) : null}
      <button type="button" className="btn main" disabled={edges.length === 0} onClick={() => editor.enter()}>
        Set the border
      </button>
    </div>
  )
}
