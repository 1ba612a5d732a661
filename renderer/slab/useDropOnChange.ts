import { useState } from 'react'

/** Drops what was typed over a value, and why it was refused, in the render that first shows another value. */
export function useDropOnChange<T>(value: T, drop: () => void): void {
  const [shown, setShown] = useState(value)
  if (shown === value) return
  setShown(value)
  drop()
}
