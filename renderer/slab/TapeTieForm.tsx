import { useState } from 'react'
import { tapeTie } from '../../core/geometry/field/tapeTie'
import { wordProblem } from '../../core/problems/wordProblem'
import { parseLength } from '../../core/units/parseLength'
import { printMeasures } from '../../core/units/printMeasures'
import type { Site } from '../../shared/document/site'
import { cornersOfSite, placeWords } from '../editor/cornerNames'
import { useEditor, useEditorState } from '../editor/useEditor'
import { ChoiceField } from './ChoiceField'
import { Fault } from './Fault'

/** A point by two tapes from two known points; a third tape tells how well they close. */
export function TapeTieForm({ site }: { readonly site: Site }) {
  const editor = useEditor()
  const traced = useEditorState(state => state.traced)
  const known = [
    ...cornersOfSite(site).map(({ at, words }) => ({ at, words })),
    ...traced.map((at, i) => ({ at, words: `tied point ${i + 1}` })),
  ]
  const [names, setNames] = useState<readonly [string, string, string]>(['', '', ''])
  const [texts, setTexts] = useState<readonly [string, string, string]>(['', '', ''])
  const [side, setSide] = useState<'left' | 'right'>('left')
  const [told, setTold] = useState<{ readonly isFault: boolean; readonly words: string } | null>(null)
  if (known.length < 2)
    return (
      <BaseLine
        site={site}
        onSet={lengthM => {
          editor.trace([0, 0])
          editor.trace([lengthM, 0])
        }}
      />
    )
  const usual = ['0', '1', '2'].map((_, i) => known[Math.min(i, known.length - 1)]!.words)
  const pointOf = (i: 0 | 1 | 2) => known.find(({ words }) => words === (names[i] || usual[i])) ?? known[i] ?? known[0]!
  const set = () => {
    const readings = texts.map(text => (text.trim() === '' ? undefined : parseLength(text, site.units)))
    for (const reading of readings)
      if (reading && !reading.ok) {
        setTold({ isFault: true, words: reading.error.message })
        return
      }
    const [p, q, third] = readings.map(reading => (reading?.ok ? reading.value : undefined))
    if (p === undefined || q === undefined) {
      setTold({ isFault: true, words: 'Type both tape distances.' })
      return
    }
    const print = printMeasures(site.units)
    const tie = tapeTie(
      pointOf(0).at,
      pointOf(1).at,
      p,
      q,
      side,
      third === undefined ? undefined : { from: pointOf(2).at, distanceM: third },
    )
    if (!tie.ok) {
      setTold({ isFault: true, words: wordProblem(tie.error[0]!, print).message })
      return
    }
    editor.trace(tie.value.at)
    setTexts(['', '', ''])
    const { closingErrorM } = tie.value
    setTold({
      isFault: false,
      words:
        closingErrorM === undefined
          ? 'Point set. A third distance would tell how well it closes.'
          : `Point set. The third tape closes within ${print.size(Math.abs(closingErrorM))}.`,
    })
  }
  return (
    <div className="fields">
      {([0, 1, 2] as const).map(i => (
        <div key={i} className="tape-row">
          <ChoiceField
            label={['First tape from', 'Second tape from', 'Check tape from'][i]!}
            value={pointOf(i).words}
            choices={known.map(({ words }) => [words, placeWords(words)] as const)}
            onSet={words => setNames(was => was.map((each, k) => (k === i ? words : each)) as unknown as typeof names)}
          />
          <label className="measure">
            <span>{i === 2 ? 'Distance, if taken' : 'Distance'}</span>
            <input
              type="text"
              autoComplete="off"
              value={texts[i]}
              onChange={event =>
                setTexts(was => was.map((each, k) => (k === i ? event.target.value : each)) as unknown as typeof texts)
              }
              onKeyDown={event => {
                if (event.key === 'Enter') set()
              }}
            />
          </label>
        </div>
      ))}
      <ChoiceField
        label="Side, looking from the first to the second"
        value={side}
        choices={[
          ['left', 'Left'],
          ['right', 'Right'],
        ]}
        onSet={setSide}
      />
      <button type="button" className="btn main" onClick={set}>
        Set the point
      </button>
      {told ? (
        <p className={told.isFault ? 'entry-fault' : 'told'} role="status">
          {told.words}
        </p>
      ) : null}
      {traced.length >= 3 ? (
        <button type="button" className="btn" onClick={() => editor.drawTraced()}>
          Slab through the {traced.length} tied points
        </button>
      ) : null}
      {traced.length > 0 ? (
        <button type="button" className="btn" onClick={() => editor.untrace()}>
          Take the last point back
        </button>
      ) : null}
    </div>
  )
}

/** On an empty sheet the first two points are a line of known length. */
function BaseLine({ site, onSet }: { readonly site: Site; readonly onSet: (lengthM: number) => void }) {
  const [text, setText] = useState('')
  const [fault, setFault] = useState<string | null>(null)
  const set = () => {
    const read = parseLength(text, site.units)
    if (!read.ok) setFault(read.error.message)
    else if (read.value <= 0) setFault('Type a length greater than zero.')
    else onSet(read.value)
  }
  return (
    <div className="fields">
      <p className="told">
        Two known points are needed. Type the tape between the first two; they become a line across the sheet.
      </p>
      <label className="measure">
        <span>First to second point</span>
        <input
          type="text"
          autoComplete="off"
          value={text}
          onChange={event => {
            setText(event.target.value)
            setFault(null)
          }}
          onKeyDown={event => {
            if (event.key === 'Enter') set()
          }}
        />
      </label>
      <button type="button" className="btn main" onClick={set}>
        Set both points
      </button>
      <Fault words={fault} />
    </div>
  )
}
