import { type KeyboardEvent, useState } from 'react'
import { setDimension } from '../../core/document/commands/setDimension'
import type { Measures } from '../../core/units/measures'
import { parseLength } from '../../core/units/parseLength'
import type { Path } from '../../shared/document/path'
import type { Id, Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import { type Camera, type Size, toScreen } from './camera/camera'
import { cornerLetter } from './cornerNames'
import { sayLength } from './entry/sayLength'
import { chosenPaths } from './pickPart'
import { useEditor } from './useEditor'

/** As far from the edge as the dimension that is drawn. */
const outPx = 30
/** Shorter ones are left to the ledger. */
const leastPx = 70

interface Shown {
  readonly edgeId: Id
  readonly at: Pt
  readonly upright: boolean
  readonly lengthM: number
  /** Letters of the corners at its ends. */
  readonly ends: readonly [string, string]
  readonly of: string
}

const ofPath = (path: Path, of: string, camera: Camera): readonly Shown[] =>
  path.edges.flatMap((edge, i): Shown[] => {
    if (edge.riseM !== undefined) return []
    const n = path.vertices.length
    const [from, to] = [path.vertices[i]!, path.vertices[(i + 1) % n]!]
    const [a, b] = [toScreen(camera, from.at), toScreen(camera, to.at)]
    const longPx = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (longPx < leastPx) return []
    const [ux, uy] = [(b[0] - a[0]) / longPx, (b[1] - a[1]) / longPx]
    return [
      {
        edgeId: edge.id,
        at: [(a[0] + b[0]) / 2 - uy * outPx, (a[1] + b[1]) / 2 + ux * outPx],
        upright: Math.abs(uy) > Math.abs(ux),
        lengthM: Math.hypot(to.at[0] - from.at[0], to.at[1] - from.at[1]),
        ends: [cornerLetter(i), cornerLetter((i + 1) % n)],
        of,
      },
    ]
  })

export interface DimensionsOf {
  readonly site: Site
  readonly selection: readonly Id[]
  readonly camera: Camera
  readonly size: Size
  readonly print: Measures
}

/** Every straight dimension on the plan: a click or Enter turns it into a box to type over. */
export function DimensionFields({ site, selection, camera, size, print }: DimensionsOf) {
  const [open, setOpen] = useState<Id | null>(null)
  const outlines = new Set(site.slabs.map(({ outline }) => outline))
  const others = chosenPaths(site, selection).filter(path => !outlines.has(path))
  const shown = [
    ...site.slabs.flatMap(({ outline, name }) => ofPath(outline, name, camera)),
    ...others.flatMap(path => ofPath(path, 'what is chosen', camera)),
  ].filter(({ at: [x, y] }) => x > 90 && y > 30 && x < size.width - 14 && y < size.height - 14)
  return (
    <div className="dims">
      {shown.map(dimension => (
        <div key={dimension.edgeId}>
          <button
            type="button"
            className="dim"
            data-upright={dimension.upright || undefined}
            style={{ left: dimension.at[0], top: dimension.at[1], width: dimension.upright ? 24 : 64 }}
            title="Type another length"
            aria-label={`${sayLength(dimension.lengthM, site.units)}, ${dimension.ends[0]} to ${dimension.ends[1]} of ${dimension.of}: type another length`}
            onClick={() => setOpen(dimension.edgeId)}
          />
          {open === dimension.edgeId ? (
            <DimensionField dimension={dimension} site={site} print={print} onClose={() => setOpen(null)} />
          ) : null}
        </div>
      ))}
    </div>
  )
}

type Moves = 'end' | 'start' | 'both'

function DimensionField({
  dimension: { edgeId, at, lengthM, ends },
  site,
  print,
  onClose,
}: {
  readonly dimension: Shown
  readonly site: Site
  readonly print: Measures
  readonly onClose: () => void
}) {
  const editor = useEditor()
  const [text, setText] = useState('')
  const [moves, setMoves] = useState<Moves>('end')
  const [fault, setFault] = useState<string | null>(null)
  const close = () => {
    onClose()
    document.querySelector<HTMLElement>('.sheet')?.focus()
  }
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Escape') close()
    else if (event.key === 'Enter') {
      const read = parseLength(text, site.units)
      if (!read.ok) {
        setFault(read.error.message)
        return
      }
      if (editor.run('length', setDimension(edgeId, read.value, { moves, with: 'side' }))) close()
      else setFault(editor.getState().fault?.message ?? null)
    } else return
    event.preventDefault()
    event.stopPropagation()
  }
  const choices: readonly (readonly [Moves, string])[] = [
    ['end', `${ends[1]} moves, ${ends[0]} stays`],
    ['start', `${ends[0]} moves, ${ends[1]} stays`],
    ['both', 'Both move, the middle stays'],
  ]
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: Enter and Esc are those of the boxes inside
    <div className="dim-field" style={{ left: at[0], top: at[1] }} onKeyDown={onKeyDown}>
      <label>
        Length {ends[0]} to {ends[1]}
        <input
          type="text"
          // biome-ignore lint/a11y/noAutofocus: the box stands where the dimension was that was asked for
          autoFocus
          autoComplete="off"
          value={text}
          placeholder={print.length(lengthM)}
          aria-invalid={fault !== null || undefined}
          onChange={event => {
            setText(event.target.value)
            setFault(null)
          }}
        />
      </label>
      <fieldset>
        <legend>Which end moves</legend>
        {choices.map(([value, words]) => (
          <label key={value}>
            <input type="radio" name="moves" checked={moves === value} onChange={() => setMoves(value)} />
            {words}
          </label>
        ))}
      </fieldset>
      {fault ? <p role="alert">{fault}</p> : null}
    </div>
  )
}
