import { useStore } from 'zustand'
import { type Session, usePick, useSession } from '../app/session'
import { createEditor, type Editor } from './editor'
import type { EditorState } from './hand/editorState'

const editors = new WeakMap<Session, Editor>()

/** The one editor of the page. */
export function editorOf(session: Session): Editor {
  const ready = editors.get(session)
  if (ready) return ready
  const made = createEditor(session)
  editors.set(session, made)
  return made
}

export const useEditor = (): Editor => editorOf(useSession())

export const useEditorState = <T>(select: (state: EditorState) => T): T => useStore(useEditor(), usePick(select))
