import { type FocusEvent, type KeyboardEvent, memo, useEffect, useId, useLayoutEffect, useRef, useState } from 'react'
import { useStore } from 'zustand'
import type { Command } from '../../core/document/commands/editSite'
import { findEdge, findVertex } from '../../core/document/commands/findPath'
import { setArc } from '../../core/document/commands/setArc'
import { setCircleRadius } from '../../core/document/commands/setCircleRadius'
import { setCornerRadius } from '../../core/document/commands/setCornerRadius'
import { setDimension } from '../../core/document/commands/setDimension'
import { setWallLength } from '../../core/document/commands/setWallLength'
import { type ArcDimension, isRounding, type LineDimension } from '../../core/reports/dimensions'
import type { Measures } from '../../core/units/measures'
import { parseLength } from '../../core/units/parseLength'
import type { Id, Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import { useCalmPlan } from '../app/session'
import type { LivePlan } from '../store/livePlan'
import type { Size } from './camera/camera'
import type { Eye } from './camera/eye'
import { cornerLetter } from './cornerNames'
import { sayLength } from './entry/sayLength'
import { dimensionGround } from './layers/dimensionGround'
import type { PlacedAlong } from './layers/placeAlong'
import { type PlacedArc, radiusLetters } from './layers/placeArc'
import { placeDimensions } from './layers/placeDimensions'
import type { DimensionedRing, PlacedLine } from './layers/placeLine'
import { useDimensioned } from './useDimensioned'
import { useEditor } from './useEditor'
import { useToldHere } from './useToldHere'

/** Shorter ones are left to the ledger. */
const leastPx = 70

type Moves = 'end' | 'start' | 'both'

/** One measure that can be typed. */
interface Box {
  readonly label: string
  readonly nowM: number
  /** Names the undo step. */
  readonly step: string
  readonly command: (typedM: number, moves: Moves) => Command
}

interface Shown {
  readonly key: string
  readonly at: Pt
  readonly upright: boolean
  readonly widthPx: number
  readonly words: string
  readonly boxes: readonly Box[]
  /** Letters of the corners at its ends, where one of them moves. */
  readonly ends: readonly [string, string] | null
}

const lineOf = (
  site: Site,
  dimension: LineDimension,
  { ring, name, wallId }: DimensionedRing,
  { longPx, at, upright }: PlacedLine,
  /** The one that is typed over is shown however short it is. */
  open: string | null,
): readonly Shown[] => {
  const { edgeId, lengthM } = dimension
  const index = ring.findIndex(edge => edge.edgeId === edgeId)
  const ends = wallId === undefined ? endsOf(site, edgeId) : ([cornerLetter(index), cornerLetter(index + 1)] as const)
  if ((longPx < leastPx && edgeId !== open) || !ends) return []
  const label = `Length ${ends[0]} to ${ends[1]}`
  return [
    {
      key: edgeId,
      at,
      upright,
      widthPx: 64,
      words: `${sayLength(lengthM, site.units)}, ${ends[0]} to ${ends[1]} of ${name}`,
      boxes: [
        {
          label,
          nowM: lengthM,
          step: 'length',
          command: (typedM, moves) =>
            wallId === undefined
              ? setDimension(edgeId, typedM, { moves, with: 'side' })
              : setWallLength(wallId, index, typedM, moves),
        },
      ],
      ends,
    },
  ]
}

const endsOf = (site: Site, edgeId: Id): readonly [string, string] | null => {
  const found = findEdge(site, edgeId)
  if (!found) return null
  return [cornerLetter(found.index), cornerLetter((found.index + 1) % found.path.vertices.length)]
}

const arcOf = (
  site: Site,
  dimension: ArcDimension,
  name: string,
  placed: PlacedArc,
  along: PlacedAlong | null,
): readonly Shown[] => {
  const { edgeIds, radiusM, lengthM, wholeCircle } = dimension
  const edgeId = edgeIds[0]!
  const widthPx = wholeCircle ? 96 : 72
  const radius = { key: `${edgeId} radius`, at: radiusLetters(placed, widthPx), upright: false, widthPx }
  const said = sayLength(radiusM, site.units)
  if (wholeCircle) {
    const command = (typedM: number): Command => setCircleRadius(edgeId, typedM / 2)
    const words = `${sayLength(2 * radiusM, site.units)} across ${name}`
    return [
      {
        ...radius,
        words,
        boxes: [{ label: 'Across', nowM: 2 * radiusM, step: 'circle', command }],
        ends: null,
      },
    ]
  }
  if (isRounding({ edgeId })) {
    const vertexId = edgeId.slice(0, -1)
    const found = findVertex(site, vertexId)
    if (!found) return []
    const corner = cornerLetter(found.index)
    const command = (typedM: number): Command => setCornerRadius(vertexId, typedM || undefined)
    return [
      {
        ...radius,
        words: `radius ${said}, corner ${corner} of ${name}`,
        boxes: [{ label: `Radius of corner ${corner}`, nowM: radiusM, step: 'corner radius', command }],
        ends: null,
      },
    ]
  }
  const [first, last] = [endsOf(site, edgeId), endsOf(site, edgeIds.at(-1)!)]
  if (!first || !last) return []
  const ends = [first[0], last[1]] as const
  const riseM = 2 * radiusM * Math.sin(dimension.sweepRad / 4) ** 2
  const boxes: readonly Box[] = [
    {
      label: 'Radius, both ends stay',
      nowM: radiusM,
      step: 'arc',
      command: typedM => setArc(edgeIds, { radiusM: typedM }),
    },
    { label: 'Rise, both ends stay', nowM: riseM, step: 'arc', command: typedM => setArc(edgeIds, { riseM: typedM }) },
    {
      label: `${ends[0]} to ${ends[1]} straight across`,
      nowM: 2 * radiusM * Math.sin(Math.abs(dimension.sweepRad) / 2),
      step: 'length',
      command: (typedM, moves) => setArc(edgeIds, { chordM: typedM, moves }),
    },
    {
      label: `${ends[0]} to ${ends[1]} along the arc`,
      nowM: lengthM,
      step: 'length',
      command: (typedM, moves) => setArc(edgeIds, { lengthM: typedM, moves }),
    },
  ]
  const of = `arc ${ends[0]} to ${ends[1]} of ${name}`
  return [
    { ...radius, words: `radius ${said}, ${of}`, boxes, ends },
    ...(along
      ? [
          {
            key: `${edgeId} along`,
            at: along.at,
            upright: Math.abs(along.u[1]) > Math.abs(along.u[0]),
            widthPx: 100,
            words: `${sayLength(lengthM, site.units)} along, ${of}`,
            boxes,
            ends,
          },
        ]
      : []),
  ]
}

export interface DimensionsOf {
  readonly eye: Eye
  readonly size: Size
  readonly print: Measures
}

/** Every dimension on the plan: one tab stop, arrows go from one to the next; a click or Enter turns it into boxes to type over. */
export function DimensionFields(props: DimensionsOf) {
  const live = useCalmPlan(state => state.live)
  return live ? <Fields {...props} live={live} /> : null
}

const Fields = memo(function Fields({ live, eye, size, print }: DimensionsOf & { readonly live: LivePlan }) {
  const { site } = live
  const rings = useDimensioned(live, true)
  const camera = useStore(eye)
  const [open, setOpen] = useState<string | null>(null)
  const [active, setActive] = useState<string | null>(null)
  const all = useRef<HTMLDivElement>(null)
  const focus = (key: string | undefined) => all.current?.querySelector<HTMLElement>(`[data-dim="${key}"]`)?.focus()
  const close = (goesBack: boolean) => {
    setOpen(null)
    // The focus waits for the box to be gone.
    if (goesBack && open !== null) setTimeout(() => focus(open))
  }
  if (!camera) return null
  const shown = placeDimensions(rings, dimensionGround(site, live.slabs, site.points), camera, print)
    .flatMap(placed =>
      'line' in placed
        ? lineOf(site, placed.dimension, placed.of, placed.line, open)
        : arcOf(site, placed.dimension, placed.of.name, placed.arc, placed.along),
    )
    // One that is typed over stays, also where a keyboard that came up leaves its place out of sight.
    .filter(({ key, at: [x, y] }) => key === open || (x > 90 && y > 30 && x < size.width - 14 && y < size.height - 14))
  const tabStop = shown.some(({ key }) => key === active) ? active : shown[0]?.key
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>) => {
    const at = shown.findIndex(({ key }) => key === (event.target as HTMLElement).dataset.dim)
    const steps: Readonly<Record<string, number>> = {
      ArrowRight: at + 1,
      ArrowDown: at + 1,
      ArrowLeft: at - 1,
      ArrowUp: at - 1,
      Home: 0,
      End: shown.length - 1,
    }
    const to = steps[event.key]
    if (at < 0 || to === undefined) return
    focus(shown[(to + shown.length) % shown.length]?.key)
    event.preventDefault()
  }
  return (
    <div className="dims" role="toolbar" aria-label="Dimensions on the plan" ref={all} onKeyDown={onKeyDown}>
      {shown.map(({ key, at, upright, widthPx, words, boxes, ends }) => (
        <div key={key}>
          <DimensionButton
            id={key}
            left={at[0]}
            top={at[1]}
            width={upright ? 24 : widthPx}
            upright={upright}
            words={words}
            reads={boxes.length > 1 ? 'radius, rise, chord or length' : 'length'}
            isTabStop={key === tabStop}
            onFocus={setActive}
            onOpen={setOpen}
          />
          {open === key ? (
            <DimensionField
              at={at}
              size={size}
              boxes={boxes}
              ends={ends}
              units={site.units}
              print={print}
              onClose={close}
            />
          ) : null}
        </div>
      ))}
    </div>
  )
})

/** Told in plain values: only what moved is laid out again. */
const DimensionButton = memo(function DimensionButton({
  id,
  left,
  top,
  width,
  upright,
  words,
  reads,
  isTabStop,
  onFocus,
  onOpen,
}: {
  readonly id: string
  readonly left: number
  readonly top: number
  readonly width: number
  readonly upright: boolean
  readonly words: string
  /** What can be typed. */
  readonly reads: string
  readonly isTabStop: boolean
  readonly onFocus: (id: string) => void
  readonly onOpen: (id: string) => void
}) {
  return (
    <button
      type="button"
      className="dim"
      data-dim={id}
      tabIndex={isTabStop ? 0 : -1}
      data-upright={upright || undefined}
      style={{ left, top, width }}
      title={`Type another ${reads}`}
      aria-label={`${words}: type another ${reads}`}
      onFocus={() => onFocus(id)}
      onClick={() => onOpen(id)}
    />
  )
})

/** Under the dimension, above it where the plan ends, and never beyond the plan. */
function placeField(element: HTMLElement, [x, y]: Pt, { width, height }: Size): void {
  const { offsetWidth, offsetHeight } = element
  const left = Math.max(92, Math.min(x - offsetWidth / 2, width - offsetWidth - 8))
  const under = y + 14
  const above = y - 14 - offsetHeight
  const top = under + offsetHeight <= height - 8 ? under : Math.max(8, Math.min(above, height - offsetHeight - 8))
  element.style.left = `${Math.round(left)}px`
  element.style.top = `${Math.round(top)}px`
}

function DimensionField({
  at,
  size,
  boxes,
  ends,
  units,
  print,
  onClose,
}: Pick<Shown, 'at' | 'boxes' | 'ends'> & {
  readonly size: Size
  readonly units: Site['units']
  readonly print: Measures
  /** True where the focus goes back to the dimension. */
  readonly onClose: (goesBack: boolean) => void
}) {
  const editor = useEditor()
  const element = useRef<HTMLDivElement>(null)
  const toldHere = useToldHere()
  const [typed, setTyped] = useState({ at: 0, text: '' })
  const [moves, setMoves] = useState<Moves>('end')
  const [fault, setFault] = useState<string | null>(null)
  const id = useId()
  const commit = () => {
    const box = boxes[typed.at]
    if (!box || typed.text.trim() === '') {
      onClose(true)
      return
    }
    const read = parseLength(typed.text, units)
    if (!read.ok) setFault(read.error.message)
    else if (editor.run(box.step, box.command(read.value, moves))) onClose(true)
    else setFault(toldHere(editor.getState().fault?.message ?? null))
  }
  const isEmpty = typed.text.trim() === ''
  const [x, y] = at
  // biome-ignore lint/correctness/useExhaustiveDependencies: a refusal makes it longer
  useLayoutEffect(() => {
    if (element.current) placeField(element.current, [x, y], size)
  }, [x, y, size, fault])
  // A press elsewhere on the plan ends it, as one outside a field of the ledger does: what was typed is kept.
  const leave = useRef(() => {})
  leave.current = () => (isEmpty ? onClose(false) : commit())
  useEffect(() => {
    const onPress = ({ target }: PointerEvent) => {
      if (target instanceof Element && target.closest('.sheet')) leave.current()
    }
    document.addEventListener('pointerdown', onPress, true)
    return () => document.removeEventListener('pointerdown', onPress, true)
  }, [])
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.target instanceof HTMLButtonElement && event.key === 'Enter') return
    if (event.key === 'Escape') onClose(true)
    else if (event.key === 'Enter') commit()
    else return
    event.preventDefault()
    event.stopPropagation()
  }
  // Whoever goes on without having typed is done with it.
  const onBlur = ({ currentTarget, relatedTarget }: FocusEvent) => {
    if (relatedTarget && !currentTarget.contains(relatedTarget) && isEmpty) onClose(false)
  }
  const choices: readonly (readonly [Moves, string])[] = ends
    ? [
        ['end', `${ends[1]} moves, ${ends[0]} stays`],
        ['start', `${ends[0]} moves, ${ends[1]} stays`],
        ['both', 'Both move, the middle stays'],
      ]
    : []
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: Enter and Esc are those of the boxes inside
    <div className="dim-field" ref={element} onKeyDown={onKeyDown} onBlur={onBlur}>
      <div className="dim-boxes" data-many={boxes.length > 1 || undefined}>
        {boxes.map(({ label, nowM }, i) => (
          <label key={label}>
            {label}
            <input
              type="text"
              // biome-ignore lint/a11y/noAutofocus: the box stands where the dimension was that was asked for
              autoFocus={i === 0}
              autoComplete="off"
              value={typed.at === i ? typed.text : ''}
              placeholder={print.length(nowM)}
              aria-invalid={(typed.at === i && fault !== null) || undefined}
              aria-describedby={typed.at === i && fault !== null ? `${id}-fault` : undefined}
              onChange={event => {
                setTyped({ at: i, text: event.target.value })
                setFault(null)
              }}
            />
          </label>
        ))}
      </div>
      {choices.length > 0 ? (
        <fieldset>
          <legend>Which end moves</legend>
          {choices.map(([value, words]) => (
            <label key={value}>
              <input type="radio" name="moves" checked={moves === value} onChange={() => setMoves(value)} />
              {words}
            </label>
          ))}
        </fieldset>
      ) : null}
      {fault ? (
        <p role="alert" id={`${id}-fault`}>
          {fault}
        </p>
      ) : null}
      <div className="entry-acts">
        <button
          type="button"
          className="btn main"
          aria-disabled={isEmpty || undefined}
          onClick={() => (isEmpty ? undefined : commit())}
        >
          Set it
        </button>
        <button type="button" className="btn" onClick={() => onClose(true)}>
          Leave it
        </button>
      </div>
    </div>
  )
}
