import type { ClipboardEvent, RefObject } from 'react'
import type { Pt } from '../../../shared/document/primitives'
import { useView } from '../../app/session'
import { toPlan } from '../camera/camera'
import { useEditor } from '../useEditor'
import type { PlanCamera } from './usePlanCamera'

interface PlanClipboard {
  readonly onCopy: (event: ClipboardEvent) => void
  readonly onPaste: (event: ClipboardEvent) => void
}

/** Copies through the clipboard, so that another window or another site can take them; pasted where the pointer is. */
export function usePlanClipboard({ eye, sheet, middle }: PlanCamera, lastPoint: RefObject<Pt | null>): PlanClipboard {
  const editor = useEditor()
  const isEditing = useView(({ stage, clientView }) => stage === 'slab' && !clientView)
  return {
    onCopy(event) {
      const text = isEditing ? editor.copy() : null
      if (text === null) return
      event.clipboardData.setData('text/plain', text)
      event.preventDefault()
    },
    onPaste(event) {
      const camera = eye.getState()
      if (!isEditing || !camera) return
      const rect = sheet.current?.getBoundingClientRect()
      const [x, y] = lastPoint.current ?? [-1, -1]
      const over = rect && x > rect.left && x < rect.right && y > rect.top && y < rect.bottom
      const text = event.clipboardData.getData('text/plain')
      const at: Pt = over ? [x - rect.left, y - rect.top] : middle()
      editor.paste(text === '' ? undefined : text, toPlan(camera, at))
      event.preventDefault()
    },
  }
}
