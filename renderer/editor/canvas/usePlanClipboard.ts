import { type RefObject, useEffect, useRef } from 'react'
import type { Pt } from '../../../shared/document/primitives'
import { useView } from '../../app/session'
import { toPlan } from '../camera/camera'
import { useEditor } from '../useEditor'
import type { PlanCamera } from './usePlanCamera'

const isInText = ({ target }: ClipboardEvent): boolean =>
  target instanceof Element && target.closest('input, textarea, dialog') !== null

/**
 * Copies through the clipboard by the system's keys and menus, so that another window or another site can take them;
 * pasted where the pointer is. Heard wherever the focus is, but in a text.
 */
export function usePlanClipboard({ eye, sheet, middle }: PlanCamera, lastPoint: RefObject<Pt | null>): void {
  const editor = useEditor()
  const isEditing = useView(({ stage, clientView }) => stage === 'slab' && !clientView)
  const place = useRef((): Pt | null => null)
  place.current = () => {
    const camera = eye.getState()
    const rect = sheet.current?.getBoundingClientRect()
    if (!camera || !rect) return null
    const [x, y] = lastPoint.current ?? [-1, -1]
    const isOver = x > rect.left && x < rect.right && y > rect.top && y < rect.bottom
    return toPlan(camera, isOver ? [x - rect.left, y - rect.top] : middle())
  }
  useEffect(() => {
    if (!isEditing) return
    const onCopy = (event: ClipboardEvent) => {
      if (isInText(event) || document.getSelection()?.isCollapsed === false) return
      const text = editor.copy()
      if (text === null) return
      event.clipboardData?.setData('text/plain', text)
      event.preventDefault()
    }
    const onPaste = (event: ClipboardEvent) => {
      const at = place.current()
      if (isInText(event) || at === null) return
      const text = event.clipboardData?.getData('text/plain') ?? ''
      editor.paste(text === '' ? undefined : text, at)
      event.preventDefault()
    }
    document.addEventListener('copy', onCopy)
    document.addEventListener('paste', onPaste)
    return () => {
      document.removeEventListener('copy', onCopy)
      document.removeEventListener('paste', onPaste)
    }
  }, [isEditing, editor])
}
