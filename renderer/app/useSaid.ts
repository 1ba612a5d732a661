import { useEffect, useState } from 'react'
import { flushSync } from 'react-dom'
import { useEditor } from '../editor/useEditor'
import { inFrameAfter } from './frames'

/** What the editor said last, and how often it has spoken: heard in the frame after, out of the way of a moving hand. */
export function useSaid(): { readonly words: string; readonly times: number } {
  const editor = useEditor()
  const [heard, setHeard] = useState(() => ({ words: editor.getState().said.words, times: 0 }))
  useEffect(() => {
    let waits = false
    return editor.subscribe((now, was) => {
      if (now.said === was.said || waits) return
      waits = true
      inFrameAfter(() => {
        waits = false
        const { words } = editor.getState().said
        // Within this frame: a key may come in the next.
        flushSync(() => setHeard(({ times }) => ({ words, times: times + 1 })))
      })
    })
  }, [editor])
  return heard
}
