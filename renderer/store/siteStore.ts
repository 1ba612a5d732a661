/** The document on screen: committed steps, and the preview of the gesture in hand. Selection is not part of it. */
import type { Draft } from 'immer'
import { freeze, produce } from 'immer'
import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Site } from '../../shared/document/site'
import { commitStep, currentDocument, type History, redoStep, startHistory, undoStep } from './history'

export interface SiteState {
  readonly history: History | null
  /** The document of the gesture in hand; outside history until it is kept. */
  readonly preview: Site | null
  /** Rises with every change of the committed document. */
  readonly rev: number
  /** The last change is one of a hand that moves on: a preview, a push by the arrow keys. */
  readonly isMoving: boolean
}

export type SiteStore = StoreApi<SiteState> & {
  open(site: Site): void
  close(): void
  /** One edit, one named step. Whatever gesture was in hand is dropped. */
  edit(name: string, change: (draft: Draft<Site>) => void): void
  /** One edit by a command: committed document in, changed document out. */
  apply(name: string, command: (site: Site) => Site): void
  /** The same, of a hand that is likely to push again. */
  push(name: string, command: (site: Site) => Site): void
  /** Gives the site another name at every step where it bore the one before: undo takes it back at none. */
  rename(before: string, name: string): void
  /** Shows what a gesture would make of the committed document; each call starts from the committed one. */
  show(command: (site: Site) => Site): void
  /** Commits the preview as one step. */
  keep(name: string): void
  /** Esc: the preview is gone; undo and redo stay as they were. */
  drop(): void
  undo(): void
  redo(): void
}

export function createSiteStore(): SiteStore {
  const store = createStore<SiteState>(() => ({ history: null, preview: null, rev: 0, isMoving: false }))
  const setHistory = (history: History | null, isMoving = false) =>
    store.setState(state => ({
      ...{ history, isMoving },
      preview: null,
      rev: history === state.history ? state.rev : state.rev + 1,
    }))
  const withHistory = (change: (history: History) => History, isMoving?: boolean) => {
    const { history } = store.getState()
    if (history) setHistory(change(history), isMoving)
  }
  const withCommand = (name: string, command: (site: Site) => Site) => (history: History) =>
    commitStep(history, name, command(currentDocument(history)))
  return Object.assign(store, {
    // What cannot change is worked out once, whoever asks for it.
    open: (site: Site) => setHistory(startHistory(freeze(site, true))),
    close: () => setHistory(null),
    edit: (name: string, change: (draft: Draft<Site>) => void) =>
      withHistory(history => commitStep(history, name, produce(currentDocument(history), change))),
    apply: (name: string, command: (site: Site) => Site) => withHistory(withCommand(name, command)),
    push: (name: string, command: (site: Site) => Site) => withHistory(withCommand(name, command), true),
    rename: (before: string, name: string) =>
      withHistory(({ steps, at }) => ({
        at,
        steps: steps.map(step =>
          step.document.name === before ? { ...step, document: freeze({ ...step.document, name }) } : step,
        ),
      })),
    show: (command: (site: Site) => Site) => {
      const { history } = store.getState()
      if (history) store.setState({ preview: command(currentDocument(history)), isMoving: true })
    },
    keep: (name: string) => {
      const { preview } = store.getState()
      if (preview) withHistory(history => commitStep(history, name, preview))
    },
    drop: () => store.setState({ preview: null, isMoving: false }),
    undo: () => withHistory(undoStep),
    redo: () => withHistory(redoStep),
  })
}

/** The document without the gesture in hand; null where no site is open. */
export const committedDocument = ({ history }: Pick<SiteState, 'history'>): Site | null =>
  history && currentDocument(history)

/** What is drawn: the preview while a gesture is in hand, else the committed document. */
export const shownDocument = (state: SiteState): Site | null => state.preview ?? committedDocument(state)
