/**
 * The editor of one page: pointer, boxes and keys in, previews and named edits out. It knows no element of the page.
 * Its parts stand in `hand/` and are put together here.
 */
import { createStore, type StoreApi } from 'zustand/vanilla'
import { deleteSelection } from '../../core/document/commands/deleteSelection'
import type { Command } from '../../core/document/commands/editSite'
import { moveSelection } from '../../core/document/commands/moveSelection'
import type { Pt } from '../../shared/document/primitives'
import { type History, redoName, undoName } from '../store/history'
import type { SiteState, SiteStore } from '../store/siteStore'
import type { ViewStore } from '../store/viewStore'
import { usualOptions } from './actions/actions'
import { type Choosing, createChoosing } from './hand/choosing'
import { type Copying, createCopying } from './hand/copying'
import { createDesk, type Desk } from './hand/desk'
import { createEdgeChoice } from './hand/edgeChoice'
import { type EditorState, freshState } from './hand/editorState'
import { createGrip, type Grip } from './hand/grip'
import { createKeys, type Keys } from './hand/keys'
import { createPointer, type Pointer } from './hand/pointer'
import { movedWords } from './hand/telling'
import { createTracing, type Tracing } from './hand/tracing'
import { createTurns, type Turns } from './hand/turns'
import { createTyping, type Typing } from './hand/typing'

/** Edits of what is chosen, by keys and by forms. */
interface Acts {
  /** Said aloud to a screen reader. */
  tell(words: string): void
  run(name: string, command: Command): boolean
  /** The same, of what makes something: that is chosen then, to be shaped next. */
  make(name: string, command: Command): boolean
  remove(): void
  nudge(by: Pt): void
}

export type Editor = StoreApi<EditorState> & Choosing & Pointer & Typing & Keys & Acts & Tracing & Copying

export function createEditor({ site, view }: { readonly site: SiteStore; readonly view: ViewStore }): Editor {
  const store = createStore<EditorState>(() => freshState)
  const desk = createDesk(store, site, view)
  const turns = createTurns(desk)
  const edges = createEdgeChoice(desk, turns)
  const grip = createGrip(desk)
  const typing = createTyping(desk, turns, edges)
  followSite(desk, turns, grip)
  view.subscribe(({ selection }, before) => {
    if (selection !== before.selection && selection.length > 0) forgetDone(store)
  })
  return Object.assign(store, {
    ...createChoosing(desk, turns, edges),
    ...createPointer(desk, turns, edges, grip),
    ...typing,
    ...createKeys(desk, turns, grip, typing),
    ...acts(desk, turns),
    ...createTracing(desk, turns),
    ...createCopying(desk, turns),
  })
}

function acts({ view, committed, selection, commit, push, tell }: Desk, turns: Turns): Acts {
  return {
    tell,
    run: (name, command) => commit(name, command) !== null,
    make(name, command) {
      const made = commit(name, command)
      if (made) turns.choose(made)
      return made !== null
    },
    remove() {
      if (selection().length === 0) return
      if (commit('delete', deleteSelection(selection()))) view.setState({ selection: [] })
    },
    nudge(by) {
      if (selection().length === 0 || !push('move', moveSelection(selection(), by))) return
      tell(movedWords(by, committed()?.units ?? 'ftin'))
    },
  }
}

/** What undo or redo did; null where the document came to be as it is by something else. */
function stepWords(now: History | null, before: History | null): string | null {
  if (!now || now.steps !== before?.steps || now.at === before.at) return null
  return now.at < before.at ? `Undone: ${redoName(now)}.` : `Done again: ${undoName(now)}.`
}

/** What was told of an edit goes with it. */
const forgetDone = (store: Desk['store']) => {
  if (store.getState().fault?.isDone) store.setState({ fault: null })
}

/** Every site that is opened starts afresh; an empty sheet waits for the first slab. */
function followSite({ store, site, committed, tell }: Desk, turns: Turns, grip: Grip): void {
  let shown: string | null = null
  const follow = (now: SiteState = site.getState(), before: SiteState | null = null) => {
    const told = stepWords(now.history, before?.history ?? null)
    if (told !== null) {
      tell(told)
      forgetDone(store)
    }
    const opened = committed()
    if ((opened?.id ?? null) === shown) return
    shown = opened?.id ?? null
    grip.drop()
    store.setState(({ hasCopy }) => ({ ...freshState, hasCopy }))
    if (opened && opened.slabs.length + opened.casters.length === 0) turns.start('slab', usualOptions)
  }
  site.subscribe(follow)
  follow()
}
