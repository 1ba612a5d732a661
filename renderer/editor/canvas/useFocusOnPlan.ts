import { type RefObject, useEffect } from 'react'
import { useEditorState } from '../useEditor'

/** The keys go to the plan as soon as a site is open, and again once the boxes of a drawing are gone. */
export function useFocusOnPlan(sheet: RefObject<HTMLElement | null>): void {
  const typing = useEditorState(state => state.box !== null)
  useEffect(() => {
    if (typing) return
    // Between two elements the focus is nowhere: only where it stays there does the plan take it. Keys are heard anyway.
    const timer = setTimeout(() => {
      if (document.activeElement === document.body) sheet.current?.focus({ preventScroll: true })
    })
    return () => clearTimeout(timer)
  }, [typing, sheet])
}
