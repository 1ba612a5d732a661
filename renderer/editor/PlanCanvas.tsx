import { capitalize } from '../../core/units/capitalize'
import './editor.css'
import {
  type ClipboardEvent,
  type KeyboardEvent,
  memo,
  type PointerEvent,
  useCallback,
  useEffect,
  useMemo,
  useRef,
  useState,
} from 'react'
import { useStore } from 'zustand'
import { findEdge } from '../../core/document/commands/findPath'
import { type Box, joinBounds, pointBounds } from '../../core/geometry/bounds'
import { edgeFromRise } from '../../core/geometry/resolvePath'
import { printMeasures } from '../../core/units/printMeasures'
import type { Pt } from '../../shared/document/primitives'
import { inNextFrame } from '../app/frames'
import { Icon } from '../app/Icon'
import { usePlan, useSession, useSite, useView } from '../app/session'
import { wordFindings } from '../app/wordFindings'
import { useJointHand } from '../pours/useJointHand'
import type { LivePlan } from '../store/livePlan'
import { themes } from '../store/viewStore'
import { SunLegend } from '../sun/SunLegend'
import { takeSunClick } from '../sun/takeSunClick'
import { type Inks, readInks } from '../theme/inks'
import { ActionList } from './ActionList'
import { actionWords } from './actions/actions'
import { type Camera, fitBox, panBy, pinch, type Size, toPlan, toScreen, zoomAt } from './camera/camera'
import { createEye } from './camera/eye'
import { homeBox } from './camera/homeBox'
import { DimensionFields } from './DimensionFields'
import { Entry } from './Entry'
import { loadPicture } from './layers/drawPicture'
import { PlanStage } from './layers/PlanStage'
import { entityGeometry, figureGeometry } from './layers/planGeometry'
import { NorthMark } from './NorthMark'
import { pickAt } from './pickAt'
import { pickPart } from './pickPart'
import { ScaleBar } from './ScaleBar'
import { useDimensioned } from './useDimensioned'
import { useEditor, useEditorState } from './useEditor'

/** Nearer than this a press that moved is still a click, and a thing is under the pointer. */
const reaches = { mouse: { clickPx: 4, pickPx: 8 }, touch: { clickPx: 10, pickPx: 18 } } as const
/** A finger or a pen that rests this long adds to what is chosen, as a click with the shift key. */
const holdMs = 500

const reachOf = (event: { readonly pointerType: string }) => reaches[event.pointerType === 'touch' ? 'touch' : 'mouse']

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

/** The plan, drawn from the document on screen. Four canvases: ground, plan, shade, handles. */
export function PlanCanvas() {
  const live = usePlan(state => state.live)
  return live ? <Sheet key={live.site.id} live={live} /> : null
}

const roundPoint = ([x, y]: Pt, step: number): Pt => [Math.round(x / step) * step, Math.round(y / step) * step]

function Sheet({ live }: { readonly live: LivePlan }) {
  const { view, site: store } = useSession()
  const editor = useEditor()
  const jointHand = useJointHand()
  const hand = useEditorState(({ drawing, picking, aim, edges, action, carrying, traced }) => ({
    drawing,
    picking,
    aim,
    edges,
    action,
    carrying,
    traced,
  }))
  const rev = useSite(state => state.rev)
  const [ref, size] = useSize()
  const inks = useInks()
  const [eye] = useState(createEye)
  const isSeen = useStore(eye, camera => camera !== null)
  const { parts, isRenewing } = usePlan(({ parts, isRenewing }) => ({ parts, isRenewing }))
  const { stage, selection, openFigure, clientView } = useView(({ stage, selection, openFigure, clientView }) => ({
    stage,
    selection,
    openFigure,
    clientView,
  }))
  const box = useRef<HTMLDivElement | null>(null)
  const touched = useRef(false)
  const lastPoint = useRef<Pt | null>(null)
  const pointers = useRef(new Map<number, Pt>())
  const press = useRef<{ at: Pt; moved: boolean; edits: boolean; draws?: boolean; joint?: boolean } | null>(null)

  // The drawing actions stand over the left of the plan.
  const asidePx = stage === 'slab' && !clientView ? 82 : 0
  const showBox = useCallback(
    (whole: Box) => {
      const seen = { width: size.width - asidePx, height: size.height }
      return panBy(fitBox(whole, seen, Math.min(110, size.height * 0.16)), asidePx, 0)
    },
    [size, asidePx],
  )
  const shown = useRef(live)
  shown.current = live
  const showAll = useCallback(() => {
    touched.current = false
    if (size.width > 0) eye.setState(showBox(homeBox(shown.current)))
  }, [eye, size, showBox])
  // Until the user moves the camera, the whole site stays in view whatever the window does.
  useEffect(() => {
    if (!touched.current) showAll()
  }, [showAll])
  // What was typed may lie beyond the window; what is drawn by hand never makes the plan jump.
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each step kept, each point set
  useEffect(() => {
    eye.setState(was => {
      if (!was || size.width === 0) return was
      const points = [...(hand.drawing?.placed ?? []), ...hand.traced]
      const whole = joinBounds([homeBox(shown.current), ...(points.length > 0 ? [pointBounds(points)] : [])])
      if (!(whole.minX <= whole.maxX)) return was
      const [x0, y0] = toScreen(was, [whole.minX, whole.maxY])
      const [x1, y1] = toScreen(was, [whole.maxX, whole.minY])
      const isInView = x0 >= asidePx && y0 >= 0 && x1 <= size.width && y1 <= size.height
      return touched.current || isInView ? was : showBox(whole)
    })
  }, [rev, hand.drawing?.placed.length, hand.traced.length])

  const move = useCallback(
    (change: (camera: Camera) => Camera) => {
      touched.current = true
      eye.setState(was => (was ? change(was) : was))
    },
    [eye],
  )

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
  const nearest = (at: Pt, camera: Camera, pickPx: number): string | null =>
    pickAt(toPlan(camera, at), {
      live,
      nearM: pickPx / camera.zoom,
      ...(showsPours && parts.pours ? { pours: parts.pours } : {}),
      ...(showsPours && parts.joints ? { joints: parts.joints } : {}),
    })

  const localPoint = (event: PointerEvent<HTMLDivElement>): Pt => {
    const rect = event.currentTarget.getBoundingClientRect()
    return [event.clientX - rect.left, event.clientY - rect.top]
  }
  const planHand = (event: PointerEvent, pressed = false) => ({
    zoom: eye.getState()?.zoom ?? 1,
    free: event.altKey,
    pressed,
    touch: event.pointerType === 'touch',
  })
  const frame = useRef<{ id: number; run: () => void } | null>(null)
  const later = (run: () => void) => {
    if (frame.current) {
      frame.current.run = run
      return
    }
    const waiting = {
      run,
      id: inNextFrame(() => {
        frame.current = null
        waiting.run()
      }),
    }
    frame.current = waiting
  }
  const flush = () => {
    const waiting = frame.current
    if (!waiting) return
    cancelAnimationFrame(waiting.id)
    frame.current = null
    waiting.run()
  }
  /** The pen that is on the glass; whoever draws with a pen moves the plan with the fingers. */
  const pen = useRef<{ readonly id: number | null; readonly draws: boolean }>({ id: null, draws: false })
  const hold = useRef(0)
  const endHold = () => clearTimeout(hold.current)
  useEffect(() => () => clearTimeout(hold.current), [])
  const dropPress = () => {
    endHold()
    if (press.current?.edits) editor.cancel()
    if (press.current?.joint) jointHand.cancel()
    press.current = null
  }
  const onPointerDown = (event: PointerEvent<HTMLDivElement>) => {
    const { pointerId, pointerType } = event
    const isTouch = pointerType === 'touch'
    // A palm that rests on the glass beside the pen is not meant, whichever came first.
    if (isTouch && pen.current.id !== null) return
    flush()
    if (!isTouch) pen.current = { id: pointerType === 'pen' ? pointerId : null, draws: pointerType === 'pen' }
    if (pointerType === 'pen' && pointers.current.size > 0) {
      dropPress()
      pointers.current.clear()
    }
    event.currentTarget.setPointerCapture(pointerId)
    const at = localPoint(event)
    pointers.current.set(pointerId, at)
    if (pointers.current.size > 1) {
      dropPress()
      return
    }
    const camera = eye.getState()
    if (camera !== null && event.button === 0 && jointHand.down(toPlan(camera, at), camera.zoom)) {
      press.current = { at, moved: false, edits: false, joint: true }
      return
    }
    const draws = hand.action !== 'select' || hand.picking !== null
    const isForPlan = isTouch && draws && pen.current.draws
    const edits =
      camera !== null && event.button === 0 && !isForPlan && editor.down(toPlan(camera, at), planHand(event))
    press.current = { at, moved: false, edits, draws }
    if (pointerType === 'mouse' || draws) return
    hold.current = window.setTimeout(() => {
      if (!press.current || press.current.moved || !camera) return
      if (press.current.edits) editor.cancel()
      press.current = null
      choose(at, camera, true, reachOf(event).pickPx)
    }, holdMs)
  }
  const onPointerMove = (event: PointerEvent<HTMLDivElement>) => {
    const before = pointers.current.get(event.pointerId)
    const at = localPoint(event)
    // A page that is laid out anew under a resting hand sends moves that are none.
    const was = lastPoint.current
    lastPoint.current = [event.clientX, event.clientY]
    const camera = eye.getState()
    if (!before) {
      // A finger does not hover: this one was set aside for the pen.
      if (event.pointerType === 'touch') return
      if (was === null || (was[0] === event.clientX && was[1] === event.clientY)) return
      if (stage === 'slab' && camera) {
        const to = planHand(event)
        later(() => editor.move(toPlan(camera, at), to))
      }
      return
    }
    pointers.current.set(event.pointerId, at)
    if (pointers.current.size === 2) {
      const other = [...pointers.current].find(([id]) => id !== event.pointerId)![1]
      move(c => pinch(c, [before, other], [at, other]))
    } else if (press.current) {
      const { at: start, moved, edits, draws = false, joint = false } = press.current
      if (!moved && Math.hypot(at[0] - start[0], at[1] - start[1]) <= reachOf(event).clickPx) return
      endHold()
      press.current = { at: start, moved: true, edits, draws, joint }
      if (joint && camera) {
        later(() => jointHand.move(toPlan(camera, at)))
        return
      }
      if (edits && camera) {
        const to = planHand(event, true)
        later(() => editor.move(toPlan(camera, at), to))
        return
      }
      const from = moved ? before : start
      move(c => panBy(c, at[0] - from[0], at[1] - from[1]))
    }
  }
  const onPointerUp = (event: PointerEvent<HTMLDivElement>) => {
    flush()
    endHold()
    pointers.current.delete(event.pointerId)
    if (pen.current.id === event.pointerId) pen.current = { id: null, draws: true }
    const ended = press.current
    press.current = null
    if (!ended) return
    if (ended.joint) {
      if (event.type === 'pointercancel') jointHand.cancel()
      else jointHand.up(ended.moved)
      return
    }
    if (event.type === 'pointercancel') {
      if (ended.edits) editor.cancel()
      return
    }
    const camera = eye.getState()
    if (ended.edits && camera) editor.up(toPlan(camera, localPoint(event)), planHand(event), ended.moved)
    if (ended.moved || (ended.edits && ended.draws) || !camera) return
    choose(ended.at, camera, event.shiftKey, reachOf(event).pickPx)
  }
  /** A click on a corner or an edge of what is chosen narrows the choice to it. */
  const choose = (at: Pt, camera: Camera, adds: boolean, pickPx: number) => {
    if (stage === 'sun' && takeSunClick(view, live, toPlan(camera, at), pickPx / camera.zoom)) return
    const part = stage === 'slab' ? pickPart(live.site, selection, toPlan(camera, at), pickPx / camera.zoom) : null
    const id = part ?? nearest(at, camera, pickPx)
    view.setState(({ selection: was }) => {
      if (id === null) return { selection: adds ? was : [] }
      if (!adds) return { selection: [id] }
      return { selection: was.includes(id) ? was.filter(each => each !== id) : [...was, id] }
    })
  }
  const unitStep = (isLarge: boolean): number =>
    site.units === 'ftin' ? (isLarge ? 0.3048 : 0.0254) : isLarge ? 0.25 : 0.01
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>) => {
    const arrows: Readonly<Record<string, Pt>> = {
      ArrowLeft: [-1, 0],
      ArrowRight: [1, 0],
      ArrowUp: [0, 1],
      ArrowDown: [0, -1],
    }
    const by = arrows[event.key]
    const isPlain = !event.ctrlKey && !event.metaKey && !event.altKey
    const isEditing = stage === 'slab' && !clientView
    if (jointHand.key(event, site.units === 'ftin' ? 0.0762 : 0.05)) {
      event.preventDefault()
      return
    }
    const { drawing, box: typing } = editor.getState()
    const camera = eye.getState()
    if (isPlain && isEditing && (typing !== null || /^[\d.]$/.test(event.key)) && editor.key(event.key)) {
      event.preventDefault()
      return
    }
    if (by && isEditing && drawing) {
      const step = unitStep(!event.shiftKey)
      // A key may come before the plan has its size.
      const middle: Pt = camera ? toPlan(camera, [(size.width + asidePx) / 2, size.height / 2]) : [0, 0]
      editor.carry([by[0] * step, by[1] * step], roundPoint(middle, step))
    } else if (by && isEditing && selection.length > 0) {
      const step = unitStep(event.shiftKey)
      editor.nudge([by[0] * step, by[1] * step])
    } else if (by) {
      const step = event.shiftKey ? 160 : 40
      move(c => panBy(c, -by[0] * step, by[1] * step))
    } else if (isPlain && (event.key === '+' || event.key === '=')) zoomMiddle(1.25)
    else if (isPlain && event.key === '-') zoomMiddle(0.8)
    else if (event.key === 'Escape') editor.escape()
    else if (isEditing && event.key === 'Enter') editor.enter()
    else if (isEditing && (event.key === 'Backspace' || event.key === 'Delete')) {
      if (!editor.back()) editor.remove()
    } else if (isEditing && (event.ctrlKey || event.metaKey)) {
      const key = event.key.toLowerCase()
      if (key === 'a') view.setState({ selection: [...site.slabs, ...site.casters].map(({ id }) => id) })
      else if (key === 'z' && !event.shiftKey && editor.back()) event.stopPropagation()
      else return
    } else return
    event.preventDefault()
  }
  /** Through the clipboard, so that another window or another site can take it. */
  const onCopy = (event: ClipboardEvent) => {
    const text = stage === 'slab' && !clientView ? editor.copy() : null
    if (text === null) return
    event.clipboardData.setData('text/plain', text)
    event.preventDefault()
  }
  const onPaste = (event: ClipboardEvent) => {
    const camera = eye.getState()
    if (stage !== 'slab' || clientView || !camera) return
    const rect = box.current?.getBoundingClientRect()
    const [x, y] = lastPoint.current ?? [-1, -1]
    const over = rect && x > rect.left && x < rect.right && y > rect.top && y < rect.bottom
    const at: Pt = over ? [x - rect.left, y - rect.top] : [(size.width + asidePx) / 2, size.height / 2]
    const text = event.clipboardData.getData('text/plain')
    editor.paste(text === '' ? undefined : text, toPlan(camera, at))
    event.preventDefault()
  }
  const zoomMiddle = (factor: number) => move(c => zoomAt(c, [size.width / 2, size.height / 2], factor))

  const print = useMemo(() => printMeasures(live.site.units), [live.site.units])
  const lit = useMemo(() => {
    const figure = parts.quantities?.find(q => q.id === openFigure)
    return figure ? figureGeometry(live, parts, figure) : null
  }, [live, parts, openFigure])
  // A client is shown the plan, not what was chosen for a change.
  const chosen = useMemo(
    () => (clientView && stage === 'slab' ? [] : selection.map(id => entityGeometry(live, parts, id))),
    [live, parts, selection, clientView, stage],
  )

  const canvas = isSeen && inks !== null && size.width > 0 ? { eye, size, inks } : null
  const { site } = live
  const isDrawing = stage === 'slab' && !clientView
  const edges = useMemo(
    () =>
      hand.edges.flatMap(id => {
        const found = findEdge(site, id)
        if (!found) return []
        const { path, index } = found
        const to = path.vertices[(index + 1) % path.vertices.length]!
        return [edgeFromRise(id, path.vertices[index]!.at, to.at, path.edges[index]!.riseM)]
      }),
    [hand.edges, site],
  )
  const { drawing: drawn, aim, traced } = hand
  const shapes = hand.action === 'select' && !drawn
  // The same object while nothing of it has changed: what the worker sends must not draw the handles again.
  const inHand = useMemo(
    () => (isDrawing ? { drawing: drawn, shapes, aim, edges, traced } : null),
    [isDrawing, drawn, shapes, aim, edges, traced],
  )
  const dimensioned = useDimensioned(live, isDrawing)
  const [ready, setReady] = useState(0)
  useEffect(() => loadPicture(site, () => setReady(n => n + 1)), [site])
  // The keys go to the plan as soon as a site is open, and again once the boxes of a drawing are gone.
  const typing = useEditorState(state => state.box !== null)
  useEffect(() => {
    if (typing) return
    // Between two elements the focus is nowhere: only where it stays there does the plan take it. Keys are heard anyway.
    const timer = setTimeout(() => {
      if (document.activeElement === document.body) box.current?.focus({ preventScroll: true })
    })
    return () => clearTimeout(timer)
  }, [typing])

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
        data-drawing={(isDrawing && (hand.action !== 'select' || hand.picking !== null)) || undefined}
        data-carrying={hand.carrying || undefined}
        onPointerLeave={() => later(() => editor.leave())}
        onPointerDown={onPointerDown}
        onPointerMove={onPointerMove}
        onPointerUp={onPointerUp}
        onPointerCancel={onPointerUp}
        onKeyDown={onKeyDown}
        onCopy={onCopy}
        onPaste={onPaste}
      >
        {canvas ? (
          <PlanStage
            {...canvas}
            live={live}
            print={print}
            ready={ready}
            dimensioned={dimensioned}
            chosen={chosen}
            lit={lit}
            inHand={inHand}
          />
        ) : null}
      </div>
      <Prompt live={live} stage={stage} isWaiting={showsPours && isRenewing} />
      {isDrawing ? <ActionList /> : null}
      {isDrawing && !store.getState().preview && hand.action === 'select' && !hand.picking ? (
        <DimensionFields eye={eye} size={size} print={print} />
      ) : null}
      {isDrawing ? <Entry site={site} eye={eye} size={size} print={print} /> : null}
      <ScaleBar eye={eye} units={site.units} />
      {stage === 'sun' ? <SunLegend live={live} /> : null}
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
const ThemeSwitch = memo(function ThemeSwitch() {
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
      {`${capitalize(theme)} theme`}
    </button>
  )
})

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
  const { action, drawing, fault, said, edges, tape } = useEditorState(
    ({ action, drawing, fault, said, edges, options }) => ({
      action,
      drawing,
      fault,
      said,
      edges,
      tape: options.tape,
    }),
  )
  const clientView = useView(state => state.clientView)
  if (stage === 'slab' && !clientView) {
    const words =
      drawing?.prompt ??
      (action === 'border'
        ? edges.length === 0
          ? 'Click the edges the border runs along.'
          : `${edges.length === 1 ? '1 edge' : `${edges.length} edges`} chosen. Enter sets the border.`
        : action === 'tape' && tape === 'tie'
          ? 'Type the tape distances in the ledger.'
          : '')
    const amiss = drawing
      ? undefined
      : live.slabs.flatMap(({ findings }) => findings).find(each => each.severity === 'stop')
    const wrong =
      fault && (!drawing || drawing.fields.length === 0) ? fault.message : amiss ? wordFindings(live.site, [amiss]) : ''
    return (
      <div className="say">
        <p role="status">
          {action === 'select' ? '' : <b>{actionWords[action]}</b>} {words}
        </p>
        {wrong === '' ? null : (
          <p className="fault" role="alert">
            {wrong}
          </p>
        )}
        <p className="visually-hidden" role="status">
          {said}
        </p>
      </div>
    )
  }
  const words =
    live.slabs.length === 0
      ? 'Nothing is drawn yet.'
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
