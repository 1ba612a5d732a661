import { type RefObject, useEffect } from 'react'
import { useSession, useView } from '../../app/session'
import { useEditorState } from '../useEditor'

/** The keys go to the plan as soon as a site is open, and again once what had them is gone: a box, a button, a form. */
export function useFocusOnPlan(sheet: RefObject<HTMLElement | null>): void {
  const { site } = useSession()
  const typing = useEditorState(state => state.box !== null)
  const action = useEditorState(state => state.action)
  const placed = useEditorState(state => state.drawing?.placed.length)
  const selection = useView(state => state.selection)
  // biome-ignore lint/correctness/useExhaustiveDependencies: whenever something may have gone
  useEffect(() => {
    if (typing) return
    let timer = 0
    // Between two elements the focus is nowhere: only where it stays there does the plan take it. Keys are heard anyway.
    const look = () => {
      clearTimeout(timer)
      if (document.activeElement === sheet.current) return
      timer = window.setTimeout(() => {
        if (document.activeElement === document.body) sheet.current?.focus({ preventScroll: true })
      })
    }
    look()
    const stop = site.subscribe((now, was) => {
      if (now.rev !== was.rev) look()
    })
    return () => {
      stop()
      clearTimeout(timer)
    }
  }, [typing, sheet, site, action, placed, selection])
}
