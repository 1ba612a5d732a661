import { type PointerEvent, type RefObject, useEffect, useRef } from 'react'
import type { Pt } from '../../../shared/document/primitives'
import { useView } from '../../app/session'
import type { JointHand } from '../../pours/useJointHand'
import { panBy, pinch, toPlan } from '../camera/camera'
import { useEditor, useEditorState } from '../useEditor'
import type { ClickChoice } from './useClickChoice'
import { useNextFrame } from './useNextFrame'
import type { PlanCamera } from './usePlanCamera'

/** Nearer than this a press that moved is still a click, and a thing is under the pointer. */
const reaches = {
  mouse: { clickPx: 4, pickPx: 8 },
  pen: { clickPx: 8, pickPx: 12 },
  touch: { clickPx: 10, pickPx: 18 },
} as const
/** A finger or a pen that rests this long adds to what is chosen, as a click with the shift key. */
const holdMs = 500

const reachOf = ({ pointerType }: { readonly pointerType: string }) =>
  reaches[pointerType === 'touch' || pointerType === 'pen' ? pointerType : 'mouse']

const localPoint = (event: PointerEvent<HTMLDivElement>): Pt => {
  const rect = event.currentTarget.getBoundingClientRect()
  return [event.clientX - rect.left, event.clientY - rect.top]
}

interface Press {
  /** In pixels of the plan's element. */
  readonly at: Pt
  readonly moved: boolean
  /** The editor took it. */
  readonly edits: boolean
  /** An action draws, or places are pointed out. */
  readonly draws?: boolean
  /** A joint was taken. */
  readonly joint?: boolean
}

type Handler = (event: PointerEvent<HTMLDivElement>) => void

export interface Pointers {
  /** To be spread on the plan's element. */
  readonly handlers: {
    readonly onPointerDown: Handler
    readonly onPointerMove: Handler
    readonly onPointerUp: Handler
    readonly onPointerCancel: Handler
    readonly onPointerLeave: () => void
  }
  /** Where the pointer was last, in pixels of the window; null before it came. */
  readonly lastPoint: RefObject<Pt | null>
}

/** Mouse, fingers and pen on the plan: told apart, and handed to the editor, to the joints, to the camera or to choosing. */
export function usePointers({ eye, move }: PlanCamera, jointHand: JointHand, choose: ClickChoice): Pointers {
  const editor = useEditor()
  const draws = useEditorState(({ action, picking }) => action !== 'select' || picking !== null)
  const stage = useView(state => state.stage)
  const { later, flush } = useNextFrame()
  const lastPoint = useRef<Pt | null>(null)
  const pointers = useRef(new Map<number, Pt>())
  const press = useRef<Press | null>(null)
  /** The pen that is on the glass; whoever draws with a pen moves the plan with the fingers. */
  const pen = useRef<{ readonly id: number | null; readonly draws: boolean }>({ id: null, draws: false })
  const hold = useRef(0)
  useEffect(() => () => clearTimeout(hold.current), [])

  const planHand = (event: PointerEvent, pressed = false) => ({
    zoom: eye.getState()?.zoom ?? 1,
    free: event.altKey,
    pressed,
    touch: event.pointerType === 'touch',
  })
  const endHold = () => clearTimeout(hold.current)
  const dropPress = () => {
    endHold()
    if (press.current?.edits) editor.cancel()
    if (press.current?.joint) jointHand.cancel()
    press.current = null
  }
  const startHold = (at: Pt, pickPx: number) => {
    const camera = eye.getState()
    hold.current = window.setTimeout(() => {
      if (!press.current || press.current.moved || !camera) return
      if (press.current.edits) editor.cancel()
      press.current = null
      choose(at, camera, true, pickPx)
    }, holdMs)
  }
  const hover = (event: PointerEvent<HTMLDivElement>, at: Pt, was: Pt | null) => {
    // A finger does not hover: this one was set aside for the pen.
    if (event.pointerType === 'touch') return
    // A page that is laid out anew under a resting hand sends moves that are none.
    if (was === null || (was[0] === event.clientX && was[1] === event.clientY)) return
    const camera = eye.getState()
    if (stage !== 'slab' || !camera) return
    const to = planHand(event)
    later(() => editor.move(toPlan(camera, at), to))
  }
  const drag = (event: PointerEvent<HTMLDivElement>, pressed: Press, before: Pt, at: Pt) => {
    const { at: start, moved, edits, joint } = pressed
    const camera = eye.getState()
    if (!moved && Math.hypot(at[0] - start[0], at[1] - start[1]) <= reachOf(event).clickPx) return
    endHold()
    press.current = { ...pressed, moved: true }
    if (joint && camera) later(() => jointHand.move(toPlan(camera, at)))
    else if (edits && camera) {
      const to = planHand(event, true)
      later(() => editor.move(toPlan(camera, at), to))
    } else {
      const from = moved ? before : start
      move(c => panBy(c, at[0] - from[0], at[1] - from[1]))
    }
  }

  const onPointerDown: Handler = event => {
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
    if (isTouch) event.currentTarget.focus({ preventScroll: true })
    const at = localPoint(event)
    pointers.current.set(pointerId, at)
    if (pointers.current.size > 1) {
      dropPress()
      return
    }
    const camera = eye.getState()
    const isMain = camera !== null && event.button === 0
    if (isMain && jointHand.down(toPlan(camera, at), camera.zoom)) {
      press.current = { at, moved: false, edits: false, joint: true }
      return
    }
    const isForPlan = isTouch && draws && pen.current.draws
    const edits = isMain && !isForPlan && editor.down(toPlan(camera, at), planHand(event))
    press.current = { at, moved: false, edits, draws }
    if (pointerType !== 'mouse' && !draws) startHold(at, reachOf(event).pickPx)
  }
  const onPointerMove: Handler = event => {
    const before = pointers.current.get(event.pointerId)
    const at = localPoint(event)
    const was = lastPoint.current
    lastPoint.current = [event.clientX, event.clientY]
    if (!before) {
      hover(event, at, was)
      return
    }
    pointers.current.set(event.pointerId, at)
    if (pointers.current.size === 2) {
      const other = [...pointers.current].find(([id]) => id !== event.pointerId)![1]
      move(c => pinch(c, [before, other], [at, other]))
    } else if (press.current) drag(event, press.current, before, at)
  }
  const onPointerUp: Handler = event => {
    flush()
    endHold()
    pointers.current.delete(event.pointerId)
    if (pen.current.id === event.pointerId) pen.current = { id: null, draws: true }
    const ended = press.current
    const isCancelled = event.type === 'pointercancel'
    if (isCancelled) {
      dropPress()
      return
    }
    press.current = null
    if (!ended) return
    if (ended.joint) {
      jointHand.up(ended.moved)
      return
    }
    const camera = eye.getState()
    if (ended.edits && camera) editor.up(toPlan(camera, localPoint(event)), planHand(event), ended.moved)
    if (ended.moved || (ended.edits && ended.draws) || !camera) return
    choose(ended.at, camera, event.shiftKey, reachOf(event).pickPx)
  }
  return {
    handlers: {
      onPointerDown,
      onPointerMove,
      onPointerUp,
      onPointerCancel: onPointerUp,
      onPointerLeave: () => later(() => editor.leave()),
    },
    lastPoint,
  }
}
