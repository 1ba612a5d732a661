import { useCallback, useRef, useState } from 'react'
import type { Size } from '../camera/camera'

/** The size of the element the ref stands on, in pixels; zero until it is laid out. */
export function useSize(): readonly [(element: HTMLElement | null) => void, Size] {
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
