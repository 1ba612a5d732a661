import type { Command } from '../../core/document/commands/editSite'
import { useEditor } from '../editor/useEditor'

/** Runs an edit and says why it was refused, if it was. */
export function useRun(): (name: string, command: Command) => string | null {
  const editor = useEditor()
  return (name, command) => (editor.run(name, command) ? null : (editor.getState().fault?.message ?? 'Not possible.'))
}
