/** Undo and redo as references to immutable documents: exact, cheap, without a limit. */
import type { Site } from '../../shared/document/site'

export interface HistoryStep {
  /** What was done, as the undo button says it: "border width". */
  readonly name: string
  readonly document: Site
}

/** `steps[0]` is the document as it was opened; `at` is the step on screen. */
export interface History {
  readonly steps: readonly HistoryStep[]
  readonly at: number
}

export const startHistory = (document: Site): History => ({ steps: [{ name: '', document }], at: 0 })

export const currentDocument = (history: History): Site => history.steps[history.at]!.document

/** Adds a step after the one on screen; what had been undone is given up. An edit that changed nothing is no step. */
export function commitStep(history: History, name: string, document: Site): History {
  if (document === currentDocument(history)) return history
  return { steps: [...history.steps.slice(0, history.at + 1), { name, document }], at: history.at + 1 }
}

export const undoStep = (history: History): History => (history.at === 0 ? history : { ...history, at: history.at - 1 })

export const redoStep = (history: History): History =>
  history.at === history.steps.length - 1 ? history : { ...history, at: history.at + 1 }

/** The name of what undo would take back, or of what redo would do again; undefined where there is none. */
export const undoName = (history: History): string | undefined =>
  history.at === 0 ? undefined : history.steps[history.at]?.name

export const redoName = (history: History): string | undefined => history.steps[history.at + 1]?.name
