import { type KeyboardEvent, type PointerEvent, useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { Stage } from 'react-konva/lib/ReactKonvaCore'
import type { PlannedJoint } from '../../core/plan/plan'
import { printMeasures } from '../../core/units/printMeasures'
import type { Pt } from '../../shared/document/primitives'
import { Icon } from '../app/Icon'
import { printDate } from '../app/printDate'
import { usePlan, useSession, useView } from '../app/session'
import type { LivePlan } from '../store/livePlan'
import { themes, type ViewState } from '../store/viewStore'
import { type Inks, readInks } from '../theme/inks'
import { type Camera, fitBox, panBy, pinch, type Size, toPlan, zoomAt } from './camera/camera'
import { homeBox } from './camera/homeBox'
import { DrawnLayer, GroundLayer, HandlesLayer, ShadeLayer } from './layers/PlanLayers'
import { entityGeometry, figureGeometry } from './layers/planGeometry'
import { pourTints } from './layers/pourTints'
import { NorthMark } from './NorthMark'
import { pickAt } from './pickAt'
import { ScaleBar } from './ScaleBar'

/** Nearer than this a press that moved is still a click. */
const clickPx = 4
const pickPx = 8

function useSize(): readonly [(element: HTMLElement | null) => void, Size] {
  const [size, setSize] = useState<Size>({ width: 0, height: 0 })
  const observer = useRef<ResizeObserver | null>(null)
  const ref = useCallback((element: HTMLElement | null) => {
    observer.current?.disconnect()
    observer.current = null
    if (!element) return
    observer.current = new ResizeObserver(() => {
      setSize({ width: element.clientWidth, height: element.clientHeight })
    })
    observer.current.observe(element)
  }, [])
  return [ref, size]
}

/** The theme's inks, read again when the theme changes and when the letters have come. */
function useInks(): Inks | null {
  const theme = useView(state => state.theme)
  const [inks, setInks] = useState<Inks | null>(null)
  useEffect(() => {
    let isGone = false
    const read = () => {
      if (!isGone) setInks(readInks(document.documentElement))
    }
    document.documentElement.dataset.theme = theme
    read()
    const faces = [
      '600 14px "Barlow Semi Condensed"',
      '500 14px "Barlow Semi Condensed"',
      '700 14px "Barlow Semi Condensed"',
      '700 34px "Zilla Slab Lining"',
    ]
    void Promise.all(faces.map(face => document.fonts.load(face))).then(read)
    return () => {
      isGone = true
    }
  }, [theme])
  return inks
}

/** The shade is in full where the stage is about it, and quiet where something else is. */
const shadeStrength: Readonly<Record<ViewState['stage'], number>> = {
  slab: 0.4,
  sun: 1,
  pours: 0.45,
  numbers: 0,
  sheets: 0.4,
  log: 0.4,
}

/** The plan, drawn from the document on screen. Four canvases: ground, plan, shade, handles. */
export function PlanCanvas() {
  const live = usePlan(state => state.live)
  return live ? <Sheet key={live.site.id} live={live} /> : null
}

const noJoints: readonly PlannedJoint[] = []

function Sheet({ live }: { readonly live: LivePlan }) {
  const { view, plan } = useSession()
  const [ref, size] = useSize()
  const inks = useInks()
  const [camera, setCamera] = useState<Camera | null>(null)
  const { parts, isRenewing } = usePlan(({ parts, isRenewing }) => ({ parts, isRenewing }))
  const { stage, selection, openFigure, clientView } = useView(({ stage, selection, openFigure, clientView }) => ({
    stage,
    selection,
    openFigure,
    clientView,
  }))
  const box = useRef<HTMLDivElement | null>(null)
  const touched = useRef(false)
  const pointers = useRef(new Map<number, Pt>())
  const press = useRef<{ at: Pt; moved: boolean } | null>(null)

  const showAll = useCallback(() => {
    touched.current = false
    if (size.width > 0) setCamera(fitBox(homeBox(live), size, Math.min(96, size.height * 0.16)))
  }, [live, size])
  // Until the user moves the camera, the whole site stays in view whatever the window does.
  useEffect(() => {
    if (!touched.current) showAll()
  }, [showAll])

  const move = useCallback((change: (camera: Camera) => Camera) => {
    touched.current = true
    setCamera(was => (was ? change(was) : was))
  }, [])

  const onWheel = useCallback(
    (event: WheelEvent) => {
      event.preventDefault()
      const rect = box.current?.getBoundingClientRect()
      if (!rect) return
      const at: Pt = [event.clientX - rect.left, event.clientY - rect.top]
      // A pinch on a touch pad comes as a wheel with the control key; two fingers alone pan where both axes move.
      const lines = event.deltaMode === 1 ? 16 : 1
      if (!event.ctrlKey && event.deltaX !== 0) move(c => panBy(c, -event.deltaX * lines, -event.deltaY * lines))
      else move(c => zoomAt(c, at, Math.exp((-event.deltaY * lines) / (event.ctrlKey ? 120 : 500))))
    },
    [move],
  )
  const attach = useCallback(
    (element: HTMLDivElement | null) => {
      box.current?.removeEventListener('wheel', onWheel)
      box.current = element
      element?.addEventListener('wheel', onWheel, { passive: false })
      ref(element)
    },
    [onWheel, ref],
  )

  const showsPours = stage === 'pours' && !clientView
  const nearest = (at: Pt): string | null =>
    camera === null
      ? null
      : pickAt(toPlan(camera, at), {
          live,
          nearM: pickPx / camera.zoom,
          ...(showsPours && parts.pours ? { pours: parts.pours } : {}),
          ...(showsPours && parts.joints ? { joints: parts.joints } : {}),
        })

  const localPoint = (event: PointerEvent<HTMLDivElement>): Pt => {
    const rect = event.currentTarget.getBoundingClientRect()
    return [event.clientX - rect.left, event.clientY - rect.top]
  }
  const onPointerDown = (event: PointerEvent<HTMLDivElement>) => {
    event.currentTarget.setPointerCapture(event.pointerId)
    const at = localPoint(event)
    pointers.current.set(event.pointerId, at)
    press.current = pointers.current.size === 1 ? { at, moved: false } : null
  }
  const onPointerMove = (event: PointerEvent<HTMLDivElement>) => {
    const before = pointers.current.get(event.pointerId)
    if (!before) return
    const at = localPoint(event)
    if (pointers.current.size === 2) {
      const other = [...pointers.current].find(([id]) => id !== event.pointerId)![1]
      move(c => pinch(c, [before, other], [at, other]))
    } else if (press.current) {
      const { at: start, moved } = press.current
      if (moved || Math.hypot(at[0] - start[0], at[1] - start[1]) > clickPx) {
        const from = moved ? before : start
        press.current = { at: start, moved: true }
        move(c => panBy(c, at[0] - from[0], at[1] - from[1]))
      }
    }
    pointers.current.set(event.pointerId, at)
  }
  const onPointerUp = (event: PointerEvent<HTMLDivElement>) => {
    pointers.current.delete(event.pointerId)
    const ended = press.current
    press.current = null
    if (!ended || ended.moved || event.type === 'pointercancel') return
    const id = nearest(ended.at)
    view.setState(({ selection: was }) => {
      if (id === null) return { selection: [] }
      if (!event.shiftKey) return { selection: [id] }
      return { selection: was.includes(id) ? was.filter(each => each !== id) : [...was, id] }
    })
  }
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>) => {
    const step = event.shiftKey ? 160 : 40
    const arrows: Readonly<Record<string, readonly [number, number]>> = {
      ArrowLeft: [step, 0],
      ArrowRight: [-step, 0],
      ArrowUp: [0, step],
      ArrowDown: [0, -step],
    }
    const by = arrows[event.key]
    if (by) move(c => panBy(c, by[0], by[1]))
    else if (event.key === '+' || event.key === '=') zoomMiddle(1.25)
    else if (event.key === '-') zoomMiddle(0.8)
    else if (event.key === 'Escape') view.setState({ selection: [] })
    else return
    event.preventDefault()
  }
  const zoomMiddle = (factor: number) => move(c => zoomAt(c, [size.width / 2, size.height / 2], factor))

  const print = useMemo(() => printMeasures(live.site.units), [live.site.units])
  const plates = useMemo(() => {
    const pours = parts.pours ?? []
    const tintOf = pourTints(pours, parts.joints ?? noJoints)
    return pours.map(pour => {
      const volume = parts.quantities?.find(q => q.pourId === pour.id && q.id.endsWith('-concrete-volume'))
      return {
        pour,
        tint: tintOf.get(pour.id) ?? 1,
        lines: [
          print.area(pour.areaM2),
          ...(volume ? [print.volume(volume.value)] : []),
          pour.date === null ? `day ${pour.day}` : printDate(pour.date),
        ],
      }
    })
  }, [parts.pours, parts.joints, parts.quantities, print])
  const lit = useMemo(() => {
    const figure = parts.quantities?.find(q => q.id === openFigure)
    return figure ? figureGeometry(live, parts, figure) : null
  }, [live, parts, openFigure])
  const chosen = useMemo(() => selection.map(id => entityGeometry(live, parts, id)), [live, parts, selection])

  const canvas = camera !== null && inks !== null && size.width > 0 ? { camera, size, inks } : null
  const shownPlates = showsPours ? plates : null
  const { site } = live

  return (
    <>
      <div
        className="sheet"
        ref={attach}
        role="application"
        aria-roledescription="plan"
        aria-label={`Plan of ${site.name}. Arrow keys move it, plus and minus change its scale. Its parts are listed in the outline.`}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: an application is moved by keys; its parts are in the outline
        tabIndex={0}
        onPointerDown={onPointerDown}
        onPointerMove={onPointerMove}
        onPointerUp={onPointerUp}
        onPointerCancel={onPointerUp}
        onKeyDown={onKeyDown}
      >
        {canvas ? (
          <Stage width={size.width} height={size.height} listening={false}>
            <GroundLayer {...canvas} units={site.units} />
            <DrawnLayer {...canvas} live={live} plates={shownPlates} selection={selection} clientView={clientView} />
            <ShadeLayer {...canvas} live={live} plan={plan} strength={clientView ? 0.6 : shadeStrength[stage]} />
            <HandlesLayer
              {...canvas}
              live={live}
              stage={stage}
              print={print}
              plates={shownPlates}
              joints={parts.joints ?? noJoints}
              selection={selection}
              chosen={chosen}
              lit={lit}
            />
          </Stage>
        ) : null}
      </div>
      <Prompt live={live} stage={stage} isWaiting={showsPours && isRenewing} />
      {camera ? <ScaleBar zoom={camera.zoom} units={site.units} /> : null}
      <NorthMark northDeg={site.place.northDeg} />
      <fieldset className="camera-acts" aria-label="Look of the plan">
        <ThemeSwitch />
        <button type="button" className="btn" onClick={showAll}>
          <Icon name="fit" />
          Fit
        </button>
        <button type="button" className="btn only" aria-label="Nearer" title="Nearer" onClick={() => zoomMiddle(1.25)}>
          <Icon name="nearer" />
        </button>
        <button type="button" className="btn only" aria-label="Farther" title="Farther" onClick={() => zoomMiddle(0.8)}>
          <Icon name="farther" />
        </button>
      </fieldset>
    </>
  )
}

/** Goes through the themes: the table, the truck before dawn, the slab at noon. */
function ThemeSwitch() {
  const { view } = useSession()
  const theme = useView(state => state.theme)
  const next = themes[(themes.indexOf(theme) + 1) % themes.length]!
  return (
    <button
      type="button"
      className="btn"
      title={`Change to the ${next} theme`}
      onClick={() => view.setState({ theme: next })}
    >
      <Icon name="sun" />
      {`${theme[0]?.toUpperCase()}${theme.slice(1)} theme`}
    </button>
  )
}

/** One line on what to do, or on what is not there to be seen. */
function Prompt({
  live,
  stage,
  isWaiting,
}: {
  readonly live: LivePlan
  readonly stage: string
  readonly isWaiting: boolean
}) {
  const isDark = usePlan(({ hour }) => hour?.shade.length === 0)
  const words =
    live.slabs.length === 0
      ? 'Type a length or click the first corner.'
      : isWaiting
        ? 'Pours are being renewed.'
        : stage === 'sun' && isDark
          ? 'The sun is down, or too low to throw a shadow that counts.'
          : ''
  return (
    <p className="say" role="status">
      {words}
    </p>
  )
}
