import { useState } from 'react'
import { useEditor } from '../editor/useEditor'

const keptHere =
  'Copied for this window only: the browser keeps its clipboard to itself. The keys for copying reach other windows.'

/** Copies what is chosen, for this window and, where the browser lets a page write to the clipboard, for others. */
export function CopyButton() {
  const editor = useEditor()
  const [told, setTold] = useState('')
  const copy = async () => {
    const text = editor.copy()
    if (text === null) return
    const isOut = await (navigator.clipboard?.writeText(text) ?? Promise.reject()).then(
      () => true,
      () => false,
    )
    setTold(isOut ? 'Copied.' : keptHere)
    if (!isOut) editor.tell(keptHere)
  }
  return (
    <>
      <button type="button" className="btn" onClick={() => void copy()}>
        Copy
      </button>
      {told === '' ? null : <p className="told">{told}</p>}
    </>
  )
}
