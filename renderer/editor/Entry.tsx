import { type KeyboardEvent, useId } from 'react'
import { drawShape } from '../../core/document/commands/drawShape'
import { Edit } from '../../core/document/commands/editSite'
import { resolvePath } from '../../core/geometry/resolvePath'
import { ringArea } from '../../core/geometry/ringArea'
import { ringLength } from '../../core/geometry/ringLength'
import type { Measures } from '../../core/units/measures'
import type { Site } from '../../shared/document/site'
import type { Drawing, Drawn, Field } from './actions/drawing'
import type { Aim } from './aim'
import { type Camera, type Size, toScreen } from './camera/camera'
import { printDirection, printTurn } from './entry/directions'
import { useEditor, useEditorState } from './useEditor'

const boxSize = { width: 272, height: 128 }
/** The boxes stand this far from the point, and never over it. */
const asidePx = 26

/** Beside the last point, on the side the line does not go to; before the first one, under the prompt. */
function placeOf(drawing: Drawing, aim: Aim | null, camera: Camera, size: Size) {
  const last = drawing.placed.at(-1)
  if (!last) return { left: 102, top: 76 }
  const [x, y] = toScreen(camera, last)
  const [ax, ay] = aim ? toScreen(camera, aim.at) : [x + 1, y - 1]
  const left = ax >= x ? x - asidePx - boxSize.width : x + asidePx
  const top = ay >= y ? y - asidePx - boxSize.height : y + asidePx
  const within = (at: number, least: number, most: number) => Math.max(least, Math.min(most, at))
  return {
    left: within(left, 92, size.width - boxSize.width - 8),
    top: within(top, 76, size.height - boxSize.height - 62),
  }
}

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
  return `${print.area(Math.abs(ringArea(ring)))}, ${print.length(ringLength(ring))} around`
}

const printField = ({ reads }: Field, value: number | undefined, print: Measures): string => {
  if (value === undefined) return ''
  return reads === 'length' ? print.length(value) : reads === 'turn' ? printTurn(value) : printDirection(value)
}

export interface EntryOf {
  readonly site: Site
  readonly camera: Camera
  readonly size: Size
  readonly print: Measures
}

/** Two labelled boxes beside the point: the live value is shown until something is typed over it. */
export function Entry({ site, camera, size, print }: EntryOf) {
  const editor = useEditor()
  const { drawing, aim, typed, fault } = useEditorState(({ drawing, aim, typed, fault }) => ({
    drawing,
    aim,
    typed,
    fault,
  }))
  const help = useId()
  if (!drawing || drawing.fields.length === 0) return null
  const live = aim ? drawing.live(aim.at) : {}
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Enter') {
      editor.enter()
      // The next boxes may be others: they stand once this key has been dealt with.
      queueMicrotask(() => {
        const first = editor.getState().drawing?.fields[0]
        const box = first ? document.getElementById(entryId(first.id)) : document.querySelector<HTMLElement>('.sheet')
        box?.focus()
      })
    } else if (event.key === 'Escape') {
      const had = Object.values(typed).some(text => text !== '')
      editor.escape()
      if (!had) document.querySelector<HTMLElement>('.sheet')?.focus()
    } else if (event.key === 'Backspace' && event.currentTarget.value === '') editor.back()
    else if (event.key.toLowerCase() === 'z' && (event.ctrlKey || event.metaKey) && event.currentTarget.value === '') {
      if (!editor.back()) return
    } else return
    event.preventDefault()
    event.stopPropagation()
  }
  const measured = sizeOf(drawing.sketch(aim?.at ?? null), site, print)
  return (
    <div className="entry" style={placeOf(drawing, aim, camera, size)}>
      <div className="entry-boxes">
        {drawing.fields.map(field => (
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
              aria-describedby={help}
              onChange={event => editor.write(field.id, event.target.value)}
              onKeyDown={onKeyDown}
            />
          </label>
        ))}
      </div>
      <p className={fault ? 'entry-fault' : ''} id={help} role={fault ? 'alert' : undefined}>
        {fault ? fault.message : `${measured ? `${measured}. ` : ''}Enter sets it, Tab the next box, Esc drops it.`}
      </p>
    </div>
  )
}

export const entryId = (field: string): string => `entry-${field}`
