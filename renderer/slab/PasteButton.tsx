import { selectionBox } from '../../core/document/commands/lineUp'
import type { Site } from '../../shared/document/site'
import { useEditor, useEditorState } from '../editor/useEditor'

/** What was copied last, here or in another site of this window: for hands without keys. */
export function PasteButton({ site }: { readonly site: Site }) {
  const editor = useEditor()
  const hasCopy = useEditorState(state => state.hasCopy)
  if (!hasCopy) return null
  const paste = () => {
    const box = selectionBox(
      site,
      [...site.slabs, ...site.casters].map(({ id }) => id),
    )
    editor.paste(undefined, box ? [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2] : [0, 0])
  }
  return (
    <button type="button" className="btn" onClick={paste}>
      Paste
    </button>
  )
}
