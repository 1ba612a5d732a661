/** What every part of the editor works on: the document that stands, the preview over it, the one way to commit. */
import type { StoreApi } from 'zustand/vanilla'
import type { Command } from '../../../core/document/commands/editSite'
import { capitalize } from '../../../core/units/capitalize'
import type { Measures } from '../../../core/units/measures'
import { printMeasures } from '../../../core/units/printMeasures'
import type { Id } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { Finding } from '../../../shared/problem'
import { commitEdit } from '../../app/commitEdit'
import { wordFindings } from '../../app/wordFindings'
import { committedDocument, type SiteStore } from '../../store/siteStore'
import type { ViewStore } from '../../store/viewStore'
import type { EditorState } from './editorState'

export interface Desk {
  readonly store: StoreApi<EditorState>
  readonly site: SiteStore
  readonly view: ViewStore
  /** The document without the gesture in hand; null where no site is open. */
  committed(): Site | null
  selection(): readonly Id[]
  print(): Measures
  refuse(findings: readonly Finding[]): void
  /** Shows what a command would make; one that refuses, and none, shows the committed document. */
  preview(command: Command | null): void
  /** Said aloud to a screen reader. */
  tell(words: string): void
  /** One named step of undo, said aloud; null where it was refused, which is told as the fault. */
  commit(name: string, command: Command): readonly Id[] | null
  /** The same, of a hand that is likely to push again. */
  push(name: string, command: Command): readonly Id[] | null
}

export function createDesk(store: StoreApi<EditorState>, site: SiteStore, view: ViewStore): Desk {
  const committed = (): Site | null => committedDocument(site.getState())
  const commitBy = (by: 'push' | 'apply') => (name: string, command: Command) => {
    const { made, words } = commitEdit(site, name, command, by)
    store.setState({
      ...(made ? { said: { words: [`${capitalize(name)} done.`, words].join(' ').trim() } } : {}),
      fault: words ? { field: null, message: words, isDone: made !== null } : null,
    })
    return made
  }
  return {
    store,
    site,
    view,
    committed,
    selection: () => view.getState().selection,
    print: () => printMeasures(committed()?.units ?? 'ftin'),
    refuse(findings) {
      const now = committed()
      if (now) store.setState({ fault: { field: null, message: wordFindings(now, findings) } })
    },
    preview(command) {
      const now = committed()
      const result = now && command?.(now)
      if (result?.ok) site.show(() => result.value)
      else if (site.getState().preview !== null) site.drop()
    },
    tell: words => store.setState({ said: { words } }),
    commit: commitBy('apply'),
    push: commitBy('push'),
  }
}
