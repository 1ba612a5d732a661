import { selectionBox } from '../../core/document/commands/lineUp'
import { readCopy } from '../../core/document/copyText'
import type { Site } from '../../shared/document/site'
import { useEditor, useEditorState } from '../editor/useEditor'

/** A hand without keys: nothing else takes from the clipboard what another window copied. */
const isFinger = () =>
  globalThis.matchMedia?.('(pointer: coarse)').matches && navigator.clipboard?.readText !== undefined

/** The text on the clipboard; null where the browser keeps it to itself, or the user says no. */
const clipboardText = async (): Promise<string | null> =>
  (await navigator.clipboard?.readText().catch(() => null)) ?? null

/** What was copied last, in this window or, where the clipboard may be read, in another: for hands without keys. */
export function PasteButton({ site }: { readonly site: Site }) {
  const editor = useEditor()
  const hasCopy = useEditorState(state => state.hasCopy)
  if (!hasCopy && !isFinger()) return null
  const paste = async () => {
    const text = await clipboardText()
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
