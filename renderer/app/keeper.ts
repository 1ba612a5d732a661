/** Keeps the open document with the host: what is open, whether it is kept, and autosave of the committed document. */
import { createStore, type StoreApi } from 'zustand/vanilla'
import { readSite } from '../../core/document/readSite'
import { serializeSite } from '../../core/document/serializeSite'
import { wordProblem } from '../../core/problems/wordProblem'
import { printMeasures } from '../../core/units/printMeasures'
import type { Site } from '../../shared/document/site'
import type { FileFailure, HostAnswer, HostApi, OpenedSite, SaveReport } from '../../shared/host'
import type { Problem } from '../../shared/problem'
import { currentDocument } from '../store/history'
import type { SiteStore } from '../store/siteStore'
import { resetView, type ViewStore } from '../store/viewStore'
import type { DialogStore } from './dialogStore'

/** Below the one second the document may be unsaved for. */
const autosaveMs = 700

export interface KeptState {
  readonly docId: string | null
  readonly fileName: string | null
  /** The committed document that the file, or the recovery area, holds. */
  readonly kept: Site | null
  readonly keptAt: string | null
  readonly failure: FileFailure | null
  /** Why a file would not open. */
  readonly problems: readonly Problem[]
}

export type Keeper = StoreApi<KeptState> & {
  /** Takes what the host opened; false where it is no site of ours, with the problems in the state. */
  take(answer: HostAnswer<OpenedSite>): boolean
  startNew(name: string): Promise<void>
  /** `overwrite` also where another program changed the file since. */
  save(overwrite?: boolean): Promise<void>
  /** Without a name the page, or the desktop's dialog, asks for one. */
  saveAs(name?: string, replace?: boolean): Promise<void>
  close(): Promise<void>
}

const nothing: KeptState = { docId: null, fileName: null, kept: null, keptAt: null, failure: null, problems: [] }

export interface KeeperOf {
  readonly host: HostApi
  /** The desktop's own dialog asks for names. */
  readonly asksItself: boolean
  readonly site: SiteStore
  readonly view: ViewStore
  readonly dialogs: DialogStore
  readonly emptySite: (id: string, name: string) => Site
}

export function createKeeper({ host, asksItself, site, view, dialogs, emptySite }: KeeperOf): Keeper {
  const store = createStore<KeptState>(() => nothing)
  let order = 0
  let timer: ReturnType<typeof setTimeout> | null = null

  const committed = (): Site | null => {
    const { history } = site.getState()
    return history ? currentDocument(history) : null
  }
  const open = (document: Site, state: Partial<KeptState>) => {
    store.setState({ ...nothing, ...state })
    resetView(view)
    site.open(document)
  }

  async function autosave(): Promise<void> {
    timer = null
    const document = committed()
    const { docId, kept } = store.getState()
    if (document === null || docId === null || document === kept) return
    const answer = await host.autosave({ docId, title: document.name, text: serializeSite(document), order: order++ })
    if (!answer.ok) store.setState({ failure: answer.error })
    else if (answer.value.outcome === 'saved') {
      store.setState({ kept: document, keptAt: answer.value.at, failure: null })
    } else store.setState({ failure: { reason: answer.value.reason } })
  }

  function settle(document: Site, report: SaveReport, fileName: string): void {
    if (report.outcome === 'saved') {
      store.setState({ kept: document, keptAt: report.at, failure: null, fileName })
    } else if (report.reason === 'changedOutside') {
      dialogs.setState({ open: { kind: 'changedOutside', name: fileName } })
    } else if (report.reason === 'exists') {
      dialogs.setState({ open: { kind: 'saveAs', name: fileName, existing: true } })
    } else if (report.reason !== 'canceled') store.setState({ failure: { reason: report.reason } })
  }

  site.subscribe((state, before) => {
    if (state.rev === before.rev || state.history === null) return
    if (timer !== null) clearTimeout(timer)
    timer = setTimeout(() => void autosave(), autosaveMs)
  })

  const keeper: Keeper = Object.assign(store, {
    take(answer: HostAnswer<OpenedSite>): boolean {
      if (!answer.ok) {
        store.setState({ failure: answer.error, problems: [] })
        return false
      }
      const { docId, fileName, text } = answer.value
      const read = readSite(text)
      if (!read.ok) {
        const print = printMeasures('ftin')
        store.setState({ failure: null, problems: read.error.map(finding => wordProblem(finding, print)) })
        return false
      }
      open(read.value, { docId, fileName: fileName ?? null, kept: read.value })
      return true
    },
    async startNew(name: string): Promise<void> {
      const answer = await host.newSite({ title: name })
      if (!answer.ok) store.setState({ failure: answer.error })
      else open(emptySite(answer.value.siteId, name), { docId: answer.value.docId })
    },
    async save(overwrite = false): Promise<void> {
      const document = committed()
      const { docId, fileName } = store.getState()
      if (document === null || docId === null) return
      if (fileName === null) {
        await keeper.saveAs()
        return
      }
      const text = serializeSite(document)
      const answer = await host.save({ docId, text, order: order++, overwrite })
      if (answer.ok) settle(document, answer.value, fileName)
      else store.setState({ failure: answer.error })
    },
    async saveAs(named?: string, replace = false): Promise<void> {
      const document = committed()
      const { docId, fileName } = store.getState()
      if (document === null || docId === null) return
      const name = named ?? fileName ?? document.name
      if (named === undefined && !asksItself) {
        dialogs.setState({ open: { kind: 'saveAs', name, existing: false } })
        return
      }
      const answer = await host.saveAs({ docId, text: serializeSite(document), name, order: order++, replace })
      if (!answer.ok) {
        if (answer.error.reason === 'exists') dialogs.setState({ open: { kind: 'saveAs', name, existing: true } })
        else if (answer.error.reason !== 'canceled') store.setState({ failure: answer.error })
        return
      }
      settle(document, answer.value.report, answer.value.fileName ?? name)
    },
    async close(): Promise<void> {
      await autosave()
      const { docId } = store.getState()
      site.close()
      store.setState(nothing)
      if (docId !== null) await host.close({ docId, keepRecovery: true })
    },
  })
  return keeper
}
