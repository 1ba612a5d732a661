import { type RefObject, useCallback, useEffect, useRef, useState } from 'react'
import { type Box, joinBounds, pointBounds } from '../../../core/geometry/bounds'
import type { Pt } from '../../../shared/document/primitives'
import { useSession } from '../../app/session'
import { withoutFling } from '../../app/withoutFling'
import type { LivePlan } from '../../store/livePlan'
import type { Stage } from '../../store/viewStore'
import { type Camera, panBy, type Size, toScreen, zoomAt } from '../camera/camera'
import { createEye, type Eye } from '../camera/eye'
import { homeBox } from '../camera/homeBox'
import { homeCamera } from '../camera/homeCamera'
import { madeBox } from '../camera/madeBox'
import { furniture } from '../layers/furniture'
import { useSize } from './useSize'

export interface PlanCamera {
  readonly eye: Eye
  readonly size: Size
  /** The element the plan is drawn on. */
  readonly sheet: RefObject<HTMLDivElement | null>
  /** To be the ref of that element: it is measured, and the wheel is heard on it. */
  readonly attach: (element: HTMLDivElement) => () => void
  /** The whole site in view, whatever the window does, until the user moves the camera. */
  readonly showAll: () => void
  /** A move by the user. */
  readonly move: (change: (camera: Camera) => Camera) => void
  readonly zoomMiddle: (factor: number) => void
  /** The middle of what is seen of the plan, in pixels. */
  readonly middle: () => Pt
}

/** The click that follows a tap would fall on the boxes that have come under the finger. */
const dropClick = (event: TouchEvent) => {
  if (event.cancelable) event.preventDefault()
}

/**
 * Where the plan is looked at from, in a stage. `asidePx`: what stands over the left of it; `placed` and `traced`:
 * points of the drawing in hand.
 */
export function usePlanCamera(
  stage: Stage,
  asidePx: number,
  placed: readonly Pt[] | undefined,
  traced: readonly Pt[],
): PlanCamera {
  const { site, view, plan } = useSession()
  const [measure, size] = useSize()
  const [eye] = useState(createEye)
  const sheet = useRef<HTMLDivElement | null>(null)
  const isMoved = useRef(false)

  const showBox = useCallback(
    (whole: Box, live: LivePlan) => homeCamera(whole, live, { size, asidePx, corners: furniture(size, stage) }),
    [size, asidePx, stage],
  )
  const showAll = useCallback(() => {
    isMoved.current = false
    const { live } = plan.getState()
    if (size.width > 0 && live) eye.setState(showBox(homeBox(live), live))
  }, [eye, plan, size, showBox])
  useEffect(() => {
    if (!isMoved.current) showAll()
  }, [showAll])
  const points = useRef<readonly Pt[]>([])
  points.current = [...(placed ?? []), ...traced]
  const before = useRef(plan.getState().live?.site)
  /** What was made may lie beyond the window; what is drawn by hand never makes the plan jump. */
  const keepInView = useCallback(() => {
    const { live } = plan.getState()
    const seen = eye.getState()
    const known = before.current
    before.current = live?.site
    if (!live || !seen || isMoved.current || size.width === 0) return
    // What is pushed was there before.
    const made = known && !site.getState().isMoving ? [madeBox(live, known, view.getState().selection)] : []
    const drawn = points.current.length > 0 ? [pointBounds(points.current)] : []
    const whole = joinBounds([homeBox(live), ...made, ...drawn])
    if (!(whole.minX <= whole.maxX)) return
    const [x0, y0] = toScreen(seen, [whole.minX, whole.maxY])
    const [x1, y1] = toScreen(seen, [whole.maxX, whole.minY])
    const isInView = x0 >= asidePx && y0 >= 0 && x1 <= size.width && y1 <= size.height
    if (!isInView) eye.setState(showBox(whole, live))
  }, [eye, site, view, plan, size, asidePx, showBox])
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each point set
  useEffect(keepInView, [placed?.length, traced.length])
  // Once for each step kept, when what was made has been chosen.
  useEffect(
    () =>
      site.subscribe((now, was) => {
        if (now.rev !== was.rev) queueMicrotask(keepInView)
      }),
    [site, keepInView],
  )

  const move = useCallback(
    (change: (camera: Camera) => Camera) => {
      isMoved.current = true
      eye.setState(was => (was ? change(was) : was))
    },
    [eye],
  )
  const onWheel = useCallback(
    (event: WheelEvent) => {
      event.preventDefault()
      const rect = sheet.current?.getBoundingClientRect()
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
    (element: HTMLDivElement) => {
      const letFling = withoutFling(element)
      sheet.current = element
      element.addEventListener('wheel', onWheel, { passive: false })
      element.addEventListener('touchend', dropClick, { passive: false })
      measure(element)
      return () => {
        letFling()
        sheet.current = null
        element.removeEventListener('wheel', onWheel)
        element.removeEventListener('touchend', dropClick)
        measure(null)
      }
    },
    [onWheel, measure],
  )
  return {
    ...{ eye, size, sheet, attach, showAll, move },
    zoomMiddle: factor => move(c => zoomAt(c, [size.width / 2, size.height / 2], factor)),
    middle: () => [(size.width + asidePx) / 2, size.height / 2],
  }
}
