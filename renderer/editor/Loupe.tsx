import { type RefObject, useEffect, useRef } from 'react'
import { useStore } from 'zustand'
import { afterFrame } from '../app/frames'
import { type Size, toScreen } from './camera/camera'
import type { Eye } from './camera/eye'
import { loupePlace, loupePx } from './loupePlace'
import { useEditorState } from './useEditor'

/** How much larger it shows the plan. */
const times = 2

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
  const [left, top] = loupePlace(point, size)
  const ratio = globalThis.devicePixelRatio
  return (
    <div
      className="loupe"
      aria-hidden="true"
      style={{ transform: `translate(${Math.round(left)}px, ${Math.round(top)}px)` }}
    >
      <canvas ref={canvas} width={loupePx * ratio} height={loupePx * ratio} />
    </div>
  )
}

function enlarge(to: HTMLCanvasElement, sheet: HTMLElement, [x, y]: readonly [number, number], widthPx: number): void {
  const ctx = to.getContext('2d')
  if (!ctx) return
  const seen = loupePx / times
  ctx.clearRect(0, 0, to.width, to.height)
  for (const layer of sheet.querySelectorAll('canvas')) {
    const ratio = layer.width / widthPx
    const [sx, sy, side] = [(x - seen / 2) * ratio, (y - seen / 2) * ratio, seen * ratio]
    ctx.drawImage(layer, sx, sy, side, side, 0, 0, to.width, to.height)
  }
}
