import { selectionBox } from '../../core/document/commands/lineUp'
import { readCopy } from '../../core/document/copyText'
import type { Site } from '../../shared/document/site'
import { isFinger } from '../app/handWords'
import { useEditor, useEditorState } from '../editor/useEditor'

const keptBack = () =>
  `The browser keeps its clipboard to itself. Let this page read it when the browser asks${isFinger() ? '' : ', or paste by the keys'}.`

/** The text on the clipboard; null where the browser keeps it to itself, or the user says no. */
const clipboardText = async (): Promise<string | null> =>
  (await navigator.clipboard?.readText().catch(() => null)) ?? null

/** What was copied last, in this window or, where the clipboard may be read, in another. */
export function PasteButton({ site }: { readonly site: Site }) {
  const editor = useEditor()
  const hasCopy = useEditorState(state => state.hasCopy)
  if (!hasCopy && navigator.clipboard?.readText === undefined) return null
  const paste = async () => {
    const text = await clipboardText()
    if (text === null && !hasCopy) {
      editor.setState({ fault: { field: null, message: keptBack() } })
      return
    }
    const box = selectionBox(
      site,
      [...site.slabs, ...site.casters].map(({ id }) => id),
    )
    const at = box ? ([(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2] as const) : ([0, 0] as const)
    const isOurs = text !== null && readCopy(text).ok
    editor.paste(isOurs || !hasCopy ? (text ?? '') : undefined, at)
  }
  return (
    <button type="button" className="btn" onClick={() => void paste()}>
      Paste
    </button>
  )
}
