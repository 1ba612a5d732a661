import { type FocusEvent, type KeyboardEvent, useId, useLayoutEffect } from 'react'
import { useStore } from 'zustand'
import { drawShape } from '../../core/document/commands/drawShape'
import { Edit } from '../../core/document/commands/editSite'
import { findSelfCrossing } from '../../core/geometry/findSelfCrossing'
import { resolvePath } from '../../core/geometry/resolvePath'
import { ringArea } from '../../core/geometry/ringArea'
import { ringLength } from '../../core/geometry/ringLength'
import type { Measures } from '../../core/units/measures'
import type { Site } from '../../shared/document/site'
import { handWords, isFinger } from '../app/handWords'
import type { Drawn, Field } from './actions/drawing'
import type { Size } from './camera/camera'
import type { Eye } from './camera/eye'
import { printDirection, printTurn } from './entry/directions'
import { actsHeight, boxSize, placeEntry } from './entry/placeEntry'
import { focusPlan } from './focusPlan'
import { useCarriedAside, withinPlan } from './useCarriedAside'
import { useEditor, useEditorState } from './useEditor'

const keysHelp = 'Enter sets it, Tab the next box, Esc drops it.'
const fingerHelp = 'Aim, or type over a measure.'

/** On whole pixels, for sharp letters; nothing is laid out anew where only the place changes. */
const moved = (left: number, top: number) => ({ transform: `translate(${Math.round(left)}px, ${Math.round(top)}px)` })

/** Area and length around of what is in hand. */
function sizeOf(drawn: Drawn | null, site: Site, print: Measures): string {
  if (drawn === null || drawn.kind === 'spot') return ''
  if (drawn.kind === 'line') {
    const points = drawn.corners.map(({ at }) => at)
    const longM = points.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - points[i]![0], y - points[i]![1]), 0)
    return longM > 0 ? `${print.length(longM)} long` : ''
  }
  if (drawn.shape.kind === 'corners' && drawn.shape.corners.length < 3) return ''
  const path = drawShape(new Edit({ ...site }), drawn.shape, 'counterClockwise')
  const { ring } = resolvePath(path, path.id)
  if (findSelfCrossing(ring)) return 'So far it crosses or touches itself'
  return `${print.area(Math.abs(ringArea(ring)))}, ${print.length(ringLength(ring))} around`
}

const printField = ({ reads }: Field, value: number | undefined, print: Measures): string => {
  if (value === undefined) return ''
  return reads === 'length' ? print.length(value) : reads === 'turn' ? printTurn(value) : printDirection(value)
}

export interface EntryOf {
  readonly site: Site
  readonly eye: Eye
  readonly size: Size
  readonly print: Measures
}

/** Two labeled boxes beside the point: the live value is shown until something is typed over it. */
export function Entry({ site, eye, size, print }: EntryOf) {
  const camera = useStore(eye)
  const editor = useEditor()
  const { drawing, aim, typed, fault, box, mark, isUnderFinger } = useEditorState(
    ({ drawing, aim, typed, fault, box, mark, isUnderFinger }) => ({
      ...{ drawing, aim, typed, fault },
      ...{ box, mark, isUnderFinger },
    }),
  )
  const help = useId()
  const caught = useId()
  const { by, grip } = useCarriedAside(drawing)
  const wanted = box === null ? undefined : drawing?.fields[box]?.id
  // The focus follows the document of the editor, never the other way around: a key pressed before the boxes stood has
  // been written already, and the next one lands behind it.
  useLayoutEffect(() => {
    const element = wanted === undefined ? null : (document.getElementById(entryId(wanted)) as HTMLInputElement | null)
    if (!element || element === document.activeElement) return
    element.focus()
    element.setSelectionRange(element.value.length, element.value.length)
  }, [wanted])
  if (!camera || !drawing || drawing.fields.length === 0) return null
  const live = aim ? drawing.live(aim.at) : {}
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Enter') editor.enter()
    else if (event.key === 'Escape') {
      const had = Object.values(editor.getState().typed).some(text => text !== '')
      editor.escape()
      if (!had) focusPlan()
    } else if (event.key === 'Backspace' && event.currentTarget.value === '') editor.back()
    else if (event.key.toLowerCase() === 'z' && (event.ctrlKey || event.metaKey) && event.currentTarget.value === '') {
      if (!editor.back()) return
    } else return
    event.preventDefault()
    event.stopPropagation()
  }
  const onBlur = ({ relatedTarget }: FocusEvent<HTMLInputElement>) => {
    // Without a target the whole window lost it, or the box is gone: what comes next is still for the boxes.
    if (relatedTarget && !relatedTarget.id.startsWith(entryId(''))) editor.attend(null)
  }
  const [left, top] = placeEntry(camera, size, drawing.placed, aim?.at, isUnderFinger)
  const taken = { width: boxSize.width, height: boxSize.height + actsHeight }
  const place =
    by[0] === 0 && by[1] === 0 ? ([left, top] as const) : withinPlan([left + by[0], top + by[1]], taken, size)
  const measured = sizeOf(drawing.sketch(aim?.at ?? null), site, print)
  const ended = drawing.placed.length > 0 ? drawing.finish().drawn : undefined
  const isTyped = Object.values(typed).some(text => text.trim() !== '')
  return (
    // biome-ignore lint/a11y/useSemanticElements: boxes that stand on the plan are no set of a form
    <div
      className="entry"
      role="group"
      aria-label={drawing.placed.length > 0 || mark === null ? 'Measures' : `Measures from ${mark.words}`}
      style={moved(...place)}
      {...grip}
    >
      <div className="entry-boxes">
        {drawing.fields.map((field, i) => (
          <label key={field.id}>
            {field.label}
            <input
              id={entryId(field.id)}
              type="text"
              inputMode="text"
              autoComplete="off"
              spellCheck={false}
              value={typed[field.id] ?? ''}
              placeholder={printField(field, live[field.id], print)}
              aria-invalid={fault?.field === field.id || undefined}
              aria-describedby={`${caught} ${help}`}
              onChange={event => editor.write(field.id, event.target.value)}
              onFocus={() => editor.attend(i)}
              onBlur={onBlur}
              onKeyDown={onKeyDown}
            />
          </label>
        ))}
      </div>
      {drawing.placed.length > 0 || isTyped ? (
        <div className="entry-acts">
          {isTyped ? (
            // The box keeps the focus, and a keyboard on the screen stays up for the next measure.
            <button
              type="button"
              className="btn main"
              onPointerDown={event => event.preventDefault()}
              onMouseDown={event => event.preventDefault()}
              onClick={() => editor.enter()}
            >
              Set it
            </button>
          ) : ended ? (
            <button type="button" className="btn" onClick={() => editor.enter()}>
              {ended.kind === 'shape' ? 'Close it' : 'End it here'}
            </button>
          ) : null}
          {drawing.placed.length > 0 ? (
            <button type="button" className="btn" onClick={() => editor.back()}>
              Take back
            </button>
          ) : null}
          <button type="button" className="btn" onClick={() => editor.escape()}>
            Drop
          </button>
        </div>
      ) : null}
      {/* What the mark on the plan says. */}
      <p className="visually-hidden" id={caught}>
        {aim?.caught ? `${aim.caught.relation} ${handWords(aim.caught.rest)}` : ''}
      </p>
      <p className={fault ? 'entry-fault' : ''} id={help} role={fault ? 'alert' : undefined}>
        {fault ? fault.message : `${measured ? `${measured}. ` : ''}${isFinger() ? fingerHelp : keysHelp}`}
      </p>
    </div>
  )
}

const entryId = (field: string): string => `entry-${field}`
