import type { Editor } from '../editor/editor'
import type { Session } from './session'

type Key = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>

const isTyped = (target: HTMLElement | null): boolean =>
  target?.matches('input, textarea, select, [contenteditable]') ?? false

/** What takes no text, and a box that shows what is set with nothing typed over it: `data-set`. */
const holdsNoText = '[data-set], select, [type=checkbox], [type=radio], [type=range], [type=file]'

/** The keys of undo are for the letters in hand as long as there are any. */
const isTyping = (target: HTMLElement | null): boolean => isTyped(target) && !target!.matches(holdsNoText)

/**
 * Undo, redo and save by the platform's keys, Esc for the gesture in hand, and what is typed while nothing has the
 * focus. Keys pressed while a site is being opened wait for it: whoever presses two keys in a row means both. The editor
 * is read after the start page stands.
 */
export function hearKeys(session: Session): void {
  const { site, keeper, dialogs } = session
  let held: Key[] = []
  let editor: Editor | null = null

  const step = (way: 'undo' | 'redo') => {
    const { history } = site.getState()
    site[way]()
    if (site.getState().history === history) editor?.tell(`Nothing more to ${way}.`)
  }
  const act = (editor: Editor, event: Key, target: HTMLElement | null): boolean => {
    const { key, shiftKey } = event
    if (key === 'Escape') site.drop()
    if ((event.ctrlKey || event.metaKey) && !event.altKey) {
      const letter = key.toLowerCase()
      if (letter === 's') void keeper.save()
      else if (isTyping(target) || (isTyped(target) && dialogs.getState().open !== null)) return false
      else if (letter === 'z' && !shiftKey) step('undo')
      else if (letter === 'y' || letter === 'z') step('redo')
      else return false
      return true
    }
    // A dialog, and whatever has the focus, take their keys themselves.
    const isLoose = target === null || target === document.body
    if (!isLoose || event.altKey || dialogs.getState().open !== null) return false
    return editor.key(key)
  }

  window.addEventListener('keydown', event => {
    const target = event.target as HTMLElement | null
    if (event.defaultPrevented) return
    const isOpen = site.getState().history !== null
    if (!isOpen || editor === null) {
      if (!(isOpen || keeper.getState().isOpening) || isTyped(target) || dialogs.getState().open !== null) return
      held.push(event)
      event.preventDefault()
    } else if (act(editor, event, target)) event.preventDefault()
  })

  const release = () => {
    if (keeper.getState().isOpening || editor === null || held.length === 0) return
    // Where nothing came of the opening the keys are meant for nothing.
    const keys = held
    held = []
    if (site.getState().history === null) return
    for (const key of keys) act(editor, key, null)
  }
  site.subscribe(release)
  keeper.subscribe(release)
  void import('../editor/useEditor').then(({ editorOf }) => {
    editor = editorOf(session)
    release()
  })
}
