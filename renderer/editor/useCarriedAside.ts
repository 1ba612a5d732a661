import { type PointerEvent, useRef, useState } from 'react'
import type { Pt } from '../../shared/document/primitives'
import { withoutFling } from '../app/withoutFling'
import type { Size } from './camera/camera'
import { actionsPx } from './layers/furniture'

interface Hold {
  readonly pointerId: number
  readonly from: Pt
  readonly was: Pt
}

/** How far, in pixels, boxes that lie over what is wanted have been carried off by their ground; none for a new `what`. */
export function useCarriedAside(what: unknown) {
  const [carried, setCarried] = useState<{ readonly what: unknown; readonly by: Pt }>({ what, by: [0, 0] })
  const hold = useRef<Hold | null>(null)
  const by: Pt = carried.what === what ? carried.by : [0, 0]
  const end = (event: PointerEvent) => {
    if (hold.current?.pointerId === event.pointerId) hold.current = null
  }
  return {
    by,
    grip: {
      ref: withoutFling,
      onPointerDown(event: PointerEvent<HTMLElement>) {
        if (event.target instanceof Element && event.target.closest('input, button, label')) return
        event.preventDefault()
        event.currentTarget.setPointerCapture(event.pointerId)
        hold.current = { pointerId: event.pointerId, from: [event.clientX, event.clientY], was: by }
      },
      onPointerMove(event: PointerEvent) {
        const held = hold.current
        if (held?.pointerId !== event.pointerId) return
        const [x, y] = held.from
        setCarried({ what, by: [held.was[0] + event.clientX - x, held.was[1] + event.clientY - y] })
      },
      onPointerUp: end,
      onPointerCancel: end,
    },
  }
}

/** Boxes of a size, carried no farther than the plan reaches, and not over the drawing actions at its left. */
export const withinPlan = ([left, top]: Pt, box: Size, plan: Size): Pt => [
  Math.max(actionsPx, Math.min(left, plan.width - box.width)),
  Math.max(0, Math.min(top, plan.height - box.height)),
]
