import { choosesEdges, type EditorState } from './hand/editorState'

/** What comes next of what is in hand, in one line; empty only where nothing is. */
export function promptWords(state: Pick<EditorState, 'action' | 'options' | 'drawing' | 'edges'>): string {
  const { action, options, drawing, edges } = state
  if (drawing) return drawing.prompt
  if (choosesEdges(state)) {
    if (edges.length === 0) return 'Click the edges the border runs along, or choose them in the ledger.'
    return `${edges.length === 1 ? '1 edge' : `${edges.length} edges`} chosen. Enter sets the border.`
  }
  return action === 'tape' && options.tape === 'tie' ? 'Type the tape distances in the ledger.' : ''
}
