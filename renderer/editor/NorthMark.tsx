import { type KeyboardEvent, memo, type PointerEvent, useRef, useState } from 'react'
import { setNorth } from '../../core/document/commands/setSite'
import { useSession, useView } from '../app/session'
import { withoutFling } from '../app/withoutFling'
import { useEditor } from './useEditor'

const said = (northDeg: number): string => `${Number(northDeg.toFixed(1))}° clockwise from the top of the plan`

/** The arrow snaps to whole degrees; with the alternate key held it goes where it is dragged. */
const degreesOf = (event: PointerEvent<HTMLElement>): number => {
  const box = event.currentTarget.getBoundingClientRect()
  const [x, y] = [event.clientX - box.left - box.width / 2, event.clientY - box.top - box.height / 2]
  const deg = ((Math.atan2(x, -y) * 180) / Math.PI + 360) % 360
  return event.altKey ? deg : Math.round(deg) % 360
}

/** `northDeg` = clockwise angle from drawing-up to true north. In the slab stage it is turned by hand or by keys. */
export const NorthMark = memo(function NorthMark({ northDeg }: { readonly northDeg: number }) {
  const { site } = useSession()
  const editor = useEditor()
  const turns = useView(({ stage, clientView }) => stage === 'slab' && !clientView)
  const held = useRef<number | null>(null)
  const [isDragged, setDragged] = useState(false)
  const arrow = (
    <svg viewBox="-32 -32 64 64" aria-hidden="true">
      <circle r="21" />
      <g transform={`rotate(${northDeg})`}>
        <path d="M0-16L6 12 0 7-6 12z" />
        <text y="-24" textAnchor="middle" dominantBaseline="central" transform={`rotate(${-northDeg} 0 -26)`}>
          N
        </text>
      </g>
    </svg>
  )
  if (!turns)
    return (
      <div className="north" role="img" aria-label={`True north is ${said(northDeg)}`}>
        {arrow}
      </div>
    )
  const onPointerDown = (event: PointerEvent<HTMLDivElement>) => {
    if (event.button !== 0) return
    event.currentTarget.setPointerCapture(event.pointerId)
    held.current = northDeg
  }
  const onPointerMove = (event: PointerEvent<HTMLDivElement>) => {
    if (held.current === null) return
    const to = degreesOf(event)
    held.current = to
    setDragged(true)
    site.show(now => {
      const turned = setNorth(to)(now)
      return turned.ok ? turned.value : now
    })
  }
  const onPointerUp = () => {
    if (held.current === null) return
    held.current = null
    setDragged(false)
    site.keep('north')
  }
  const drop = () => {
    held.current = null
    setDragged(false)
    site.drop()
  }
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>) => {
    const by = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1, PageUp: 15, PageDown: -15 }[event.key]
    if (event.key === 'Escape' && held.current !== null) drop()
    else if (event.key === 'Home') editor.run('north', setNorth(0))
    else if (by !== undefined) editor.run('north', setNorth(northDeg + by * (event.shiftKey ? 0.1 : 1)))
    else return
    event.preventDefault()
    event.stopPropagation()
  }
  return (
    <div
      ref={withoutFling}
      className="north turns"
      role="slider"
      tabIndex={0}
      aria-label="True north"
      aria-valuemin={0}
      aria-valuemax={360}
      aria-valuenow={Number(northDeg.toFixed(1))}
      aria-valuetext={said(northDeg)}
      title="True north: drag it, or turn it by the arrow keys"
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={onPointerUp}
      onPointerCancel={drop}
      onKeyDown={onKeyDown}
    >
      {arrow}
      {/* A finger hides the arrow it turns. */}
      {isDragged ? <span className="north-told">{Number(northDeg.toFixed(1))}°</span> : null}
    </div>
  )
})
