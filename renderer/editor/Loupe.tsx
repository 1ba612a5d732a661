import { type RefObject, useEffect, useRef } from 'react'
import { useStore } from 'zustand'
import { afterFrame } from '../app/frames'
import { type Size, toScreen } from './camera/camera'
import type { Eye } from './camera/eye'
import { useEditorState } from './useEditor'

/** Its side on the screen, how much larger it shows the plan, and how far its edge stays from the point. */
const sidePx = 112
const times = 2
const asidePx = 56

/** What lies under the fingertip, twice as large beside it. */
export function Loupe({
  sheet,
  eye,
  size,
}: {
  readonly sheet: RefObject<HTMLElement | null>
  readonly eye: Eye
  readonly size: Size
}) {
  const camera = useStore(eye)
  const at = useEditorState(({ aim, isUnderFinger }) => (isUnderFinger && aim ? aim.at : null))
  const canvas = useRef<HTMLCanvasElement>(null)
  const point = at && camera ? toScreen(camera, at) : null
  useEffect(() => {
    if (point === null) return
    // The layers are painted in the next frame.
    afterFrame(() => {
      if (canvas.current && sheet.current) enlarge(canvas.current, sheet.current, point, size.width)
    })
  })
  if (point === null) return null
  const [x, y] = point
  const isRoomAbove = y - asidePx - sidePx > 0
  const beside = x > size.width / 2 ? x - asidePx - sidePx : x + asidePx
  const left = isRoomAbove ? Math.max(0, Math.min(x - sidePx / 2, size.width - sidePx)) : beside
  const top = isRoomAbove ? y - asidePx - sidePx : Math.max(0, y - sidePx / 2)
  const ratio = globalThis.devicePixelRatio
  return (
    <div
      className="loupe"
      aria-hidden="true"
      style={{ transform: `translate(${Math.round(left)}px, ${Math.round(top)}px)` }}
    >
      <canvas ref={canvas} width={sidePx * ratio} height={sidePx * ratio} />
    </div>
  )
}

function enlarge(to: HTMLCanvasElement, sheet: HTMLElement, [x, y]: readonly [number, number], widthPx: number): void {
  const ctx = to.getContext('2d')
  if (!ctx) return
  const seen = sidePx / times
  ctx.clearRect(0, 0, to.width, to.height)
  for (const layer of sheet.querySelectorAll('canvas')) {
    const ratio = layer.width / widthPx
    const [sx, sy, side] = [(x - seen / 2) * ratio, (y - seen / 2) * ratio, seen * ratio]
    ctx.drawImage(layer, sx, sy, side, side, 0, 0, to.width, to.height)
  }
}
