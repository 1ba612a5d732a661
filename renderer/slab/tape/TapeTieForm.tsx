import { type KeyboardEvent, useRef, useState } from 'react'
import { tapeTie } from '../../../core/geometry/field/tapeTie'
import { parseLength } from '../../../core/units/parseLength'
import { printMeasures } from '../../../core/units/printMeasures'
import type { Pt } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import { wordFindings } from '../../app/wordFindings'
import { cornersOfSite, placeWords } from '../../editor/cornerNames'
import { focusPlan } from '../../editor/focusPlan'
import { useEditor, useEditorState } from '../../editor/useEditor'
import { ChoiceField } from '../ChoiceField'
import { Fault } from '../Fault'
import { BaseLine } from './BaseLine'
import { tieWords } from './tieWords'

/** The two tapes that tie the point, and the third that checks it. */
type Tape = 0 | 1 | 2

const fromLabels = ['First tape from', 'Second tape from', 'Check tape from'] as const

const apart = (a: Pt, b: Pt): number => Math.hypot(b[0] - a[0], b[1] - a[1])

/** A point by two tapes from two known points; a third tape tells how well they close. */
export function TapeTieForm({ site }: { readonly site: Site }) {
  const editor = useEditor()
  const traced = useEditorState(state => state.traced)
  const corners = cornersOfSite(site)
  const known = [
    ...corners.map(({ at, words }) => ({ at, words })),
    ...traced.map((at, i) => ({ at, words: `tied point ${i + 1}` })),
  ]
  const [names, setNames] = useState<readonly [string, string, string]>(['', '', ''])
  const [texts, setTexts] = useState<readonly [string, string, string]>(['', '', ''])
  const [side, setSide] = useState<'left' | 'right'>('left')
  const [fault, setFault] = useState<string | null>(null)
  const [told, setTold] = useState<string | null>(null)
  /** Where the point would lie that the check tape fits. */
  const [better, setBetter] = useState<Pt | null>(null)
  const [next, setNext] = useState('')
  const [isBaseSet, setBaseSet] = useState(false)
  const boxes = useRef<(HTMLInputElement | null)[]>([])
  const say = (words: string | null) => {
    setTold(words)
    setFault(null)
    setBetter(null)
  }
  const refuse = (words: string) => {
    setFault(words)
    setTold(null)
    setBetter(null)
  }
  if (known.length < 2)
    return (
      <BaseLine
        site={site}
        onSet={lengthM => {
          editor.trace([0, 0])
          editor.trace([lengthM, 0])
          setBaseSet(true)
        }}
      />
    )
  const pointOf = (tape: Tape): (typeof known)[number] => {
    const chosen = known.find(({ words }) => words === names[tape])
    if (chosen) return chosen
    if (tape < 2) return known[tape]!
    const others = [pointOf(0), pointOf(1)]
    return known.find(each => others.every(({ at }) => apart(at, each.at) > 0)) ?? known[0]!
  }
  const set = () => {
    const readings = texts.map(text => (text.trim() === '' ? undefined : parseLength(text, site.units)))
    const misread = readings.findIndex(reading => reading && !reading.ok)
    const wrong = readings[misread]
    if (wrong && !wrong.ok) {
      refuse(wrong.error.message)
      boxes.current[misread]?.focus()
      return
    }
    const [p, q, third] = readings.map(reading => (reading?.ok ? reading.value : undefined))
    if (p === undefined || q === undefined) {
      refuse('Type both tape distances.')
      boxes.current[p === undefined ? 0 : 1]?.focus()
      return
    }
    const [from, and, check] = [pointOf(0), pointOf(1), pointOf(2)]
    if (third !== undefined && (apart(check.at, from.at) === 0 || apart(check.at, and.at) === 0)) {
      refuse(`The check tape starts from ${check.words}, as one of the others does. Take it from a third point.`)
      return
    }
    const tie = tapeTie(
      from.at,
      and.at,
      p,
      q,
      side,
      third === undefined ? undefined : { from: check.at, distanceM: third },
    )
    if (!tie.ok) {
      refuse(wordFindings(site, tie.error))
      return
    }
    editor.trace(tie.value.at)
    setTexts(['', '', ''])
    const { words, fitsOtherSide } = tieWords(tie.value, traced.length + 1, printMeasures(site.units))
    say(words)
    setBetter((fitsOtherSide && tie.value.otherSide?.at) || null)
    boxes.current[0]?.focus()
  }
  const onKeyDown = (tape: Tape) => (event: KeyboardEvent) => {
    if (event.key !== 'Enter') return
    if (tape === 0 && texts[1].trim() === '') boxes.current[1]?.focus()
    else set()
  }
  const tapes: readonly Tape[] = known.length > 2 ? [0, 1, 2] : [0, 1]
  const nextCorner = corners.find(({ words }) => words === next) ?? corners[0]
  return (
    <div className="fields">
      {tapes.map(tape => (
        <div key={tape} className="tape-row">
          <ChoiceField
            label={fromLabels[tape]}
            value={pointOf(tape).words}
            choices={known.map(({ words }) => [words, placeWords(words)] as const)}
            onSet={words =>
              setNames(was => was.map((each, k) => (k === tape ? words : each)) as unknown as typeof names)
            }
          />
          <label className="measure">
            <span>{tape === 2 ? 'Distance, if taken' : 'Distance'}</span>
            <input
              ref={box => {
                boxes.current[tape] = box
              }}
              type="text"
              autoComplete="off"
              // biome-ignore lint/a11y/noAutofocus: the box that had the focus went with the base line
              autoFocus={tape === 0 && isBaseSet}
              value={texts[tape]}
              onChange={event => {
                setFault(null)
                setTexts(
                  was => was.map((each, k) => (k === tape ? event.target.value : each)) as unknown as typeof texts,
                )
              }}
              onKeyDown={onKeyDown(tape)}
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
      <Fault words={fault} />
      {told ? (
        <p className="told" role="status">
          {told}
        </p>
      ) : null}
      {better ? (
        <button
          type="button"
          className="btn"
          onClick={() => {
            editor.untrace()
            editor.trace(better)
            setSide(side === 'left' ? 'right' : 'left')
            say(`Point ${traced.length} lies on the other side now, where the check tape fits.`)
            boxes.current[0]?.focus()
          }}
        >
          Put it on the other side
        </button>
      ) : null}
      {nextCorner ? (
        <div className="tape-row">
          <ChoiceField
            label="Or go on to"
            value={nextCorner.words}
            choices={corners.map(({ words }) => [words, placeWords(words)] as const)}
            onSet={setNext}
          />
          <button
            type="button"
            className="btn"
            onClick={() => {
              editor.trace(nextCorner.at)
              say(`Point ${traced.length + 1} is ${nextCorner.words}.`)
            }}
          >
            Take this point
          </button>
        </div>
      ) : null}
      {traced.length >= 3 ? (
        <button
          type="button"
          className="btn"
          onClick={() => {
            editor.drawTraced()
            focusPlan()
          }}
        >
          Slab through the {traced.length} tied points
        </button>
      ) : null}
      {traced.length > 0 ? (
        <button
          type="button"
          className="btn"
          onClick={() => {
            editor.untrace()
            say(null)
          }}
        >
          Take the last point back
        </button>
      ) : null}
    </div>
  )
}
