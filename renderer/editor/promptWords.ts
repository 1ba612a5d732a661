import { choosesEdges, type EditorState } from './hand/editorState'

/** How the hand keeps off what would hold it. */
export const freeWords = 'Hold Alt to keep off corners, edges and lines.'

/** What comes next of what is in hand, in one line; empty only where nothing is. */
export function promptWords(state: Pick<EditorState, 'action' | 'options' | 'drawing' | 'edges' | 'carrying'>): string {
  const { action, options, drawing, edges } = state
  if (state.carrying) return freeWords
  if (drawing) return drawing.prompt
  if (choosesEdges(state)) {
    if (edges.length === 0) return 'Click the edges the border runs along, or choose them in the ledger.'
    return `${edges.length === 1 ? '1 edge' : `${edges.length} edges`} chosen. Enter sets the border.`
  }
  return action === 'tape' && options.tape === 'tie' ? 'Type the tape distances in the ledger.' : ''
}
