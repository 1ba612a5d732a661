import { type KeyboardEvent, memo, useRef } from 'react'
import { ActionIcon } from '../icons/ActionIcon'
import { type ActionId, actionIds, actionWords } from './actions/actions'
import type { EditorState } from './hand/editorState'
import { useEditor, useEditorState } from './useEditor'

/** Hairlines stand before these: shape, what throws shade, the site. */
const groupStarts: ReadonlySet<ActionId> = new Set(['building', 'tape'])

const isBegun = ({ drawing, edges }: EditorState) => (drawing?.placed.length ?? 0) > 0 || edges.length > 0

/** The drawing actions: one tab stop, arrows move, each a word with its icon. */
export const ActionList = memo(function ActionList() {
  const editor = useEditor()
  const action = useEditorState(state => state.action)
  const list = useRef<HTMLDivElement>(null)
  const focus = (to: ActionId) => list.current?.querySelector<HTMLElement>(`[data-action="${to}"]`)?.focus()
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>) => {
    const here = (event.target as HTMLElement).dataset.action
    const at = actionIds.indexOf(here as ActionId)
    const to =
      event.key === 'ArrowDown' || event.key === 'ArrowRight'
        ? actionIds[(at + 1) % actionIds.length]
        : event.key === 'ArrowUp' || event.key === 'ArrowLeft'
          ? actionIds[(at + actionIds.length - 1) % actionIds.length]
          : event.key === 'Home'
            ? actionIds[0]
            : event.key === 'End'
              ? actionIds.at(-1)
              : undefined
    if (event.key === 'Escape') {
      editor.escape()
      focus(editor.getState().action)
    }
    // A measure typed right after the action was chosen goes to its boxes.
    const isTyped = event.key.length === 1 && event.key !== ' ' && !event.ctrlKey && !event.metaKey && !event.altKey
    if (isTyped && editor.key(event.key)) event.preventDefault()
    if (!to) return
    event.preventDefault()
    // What is half drawn is not lost to a key that only passes: then Enter takes the action.
    if (!isBegun(editor.getState())) editor.choose(to)
    focus(to)
  }
  return (
    <div
      className="actions"
      role="toolbar"
      aria-label="Drawing actions"
      aria-orientation="vertical"
      ref={list}
      onKeyDown={onKeyDown}
    >
      {actionIds.map(each => (
        <button
          key={each}
          type="button"
          data-action={each}
          data-starts={groupStarts.has(each) || undefined}
          aria-pressed={each === action}
          tabIndex={each === action ? 0 : -1}
          onClick={() => editor.choose(each)}
        >
          <ActionIcon action={each} />
          {actionWords[each]}
        </button>
      ))}
    </div>
  )
})
