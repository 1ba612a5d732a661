import { useCallback, useMemo, useRef, useState } from 'react'
import type { SunCurve } from './sunCurve'

/** Hours along the rail, in px. */
export interface Scale {
  readonly width: number
  /** Where the hours begin, px, and what is left free to their right. */
  readonly left: number
  readonly right: number
  x(ms: number): number
  ms(x: number): number
}

/** Where the tape runs: past the words on the left, short of the window's edge. */
const pad = { left: 150, right: 24 } as const
const narrowPad = { left: 112, right: 24 } as const

/** The scale of a rail as wide as the element that the first answer is the ref of. */
export function useScale(curve: SunCurve): readonly [(element: HTMLElement | null) => void, Scale] {
  const [width, setWidth] = useState(0)
  const observer = useRef<ResizeObserver | null>(null)
  const ref = useCallback((element: HTMLElement | null) => {
    observer.current?.disconnect()
    if (!element) return
    observer.current = new ResizeObserver(() => setWidth(element.clientWidth))
    observer.current.observe(element)
  }, [])
  const scale = useMemo((): Scale => {
    const { left, right } = width < 1200 ? narrowPad : pad
    const length = Math.max(1, width - left - right)
    const span = curve.toMs - curve.fromMs
    return {
      ...{ width, left, right },
      x: ms => left + ((ms - curve.fromMs) / span) * length,
      ms: x => curve.fromMs + ((x - left) / length) * span,
    }
  }, [width, curve])
  return [ref, scale]
}
