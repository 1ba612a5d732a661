/** What every part of the keeper works on: the host, what is open, and what is told of it. */
import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Site } from '../../../shared/document/site'
import type { FileFailure, HostApi } from '../../../shared/host'
import { committedDocument, type SiteStore } from '../../store/siteStore'
import type { ViewStore } from '../../store/viewStore'
import type { DialogStore } from '../dialogStore'
import type { WriteTrouble } from '../fileWords'
import { type KeptState, nothing } from './keptState'

export interface KeeperOf {
  readonly host: HostApi
  /** The desktop's own dialog asks for names. */
  readonly asksItself: boolean
  readonly site: SiteStore
  readonly view: ViewStore
  readonly dialogs: DialogStore
  readonly emptySite: (id: string, name: string) => Site
}

/** Runs once what was asked for went through. */
export type Next = (() => void) | undefined

export interface KeeperDesk extends KeeperOf {
  readonly store: StoreApi<KeptState>
  /** The document without the gesture in hand; null where no site is open. */
  committed(): Site | null
  /** Texts are numbered as they leave, so that an older one never takes the place of a newer. */
  nextOrder(): number
  tellTrouble(where: WriteTrouble['where'], outcome: WriteTrouble['outcome'], failure: FileFailure): void
}

export function keeperDesk(of: KeeperOf): KeeperDesk {
  const store = createStore<KeptState>(() => nothing)
  let order = 0
  return {
    ...of,
    store,
    committed: () => committedDocument(of.site.getState()),
    nextOrder: () => order++,
    tellTrouble(where, outcome, failure) {
      store.setState({ trouble: { where, outcome, failure } })
    },
  }
}
