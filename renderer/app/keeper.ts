/** Keeps the open document with the host: what is open, whether it is kept, and autosave of the committed document. */
import { createStore, type StoreApi } from 'zustand/vanilla'
import { readSite } from '../../core/document/readSite'
import { serializeSite } from '../../core/document/serializeSite'
import { wordProblem } from '../../core/problems/wordProblem'
import { printMeasures } from '../../core/units/printMeasures'
import type { Site } from '../../shared/document/site'
import type { FileFailure, HostAnswer, HostApi, OpenedSite } from '../../shared/host'
import type { Problem } from '../../shared/problem'
import { currentDocument } from '../store/history'
import type { SiteStore } from '../store/siteStore'
import { resetView, type ViewStore } from '../store/viewStore'

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
  save(): Promise<void>
  close(): Promise<void>
}

const nothing: KeptState = { docId: null, fileName: null, kept: null, keptAt: null, failure: null, problems: [] }

export function createKeeper(
  host: HostApi,
  site: SiteStore,
  view: ViewStore,
  emptySite: (id: string, name: string) => Site,
): Keeper {
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

  site.subscribe((state, before) => {
    if (state.rev === before.rev || state.history === null) return
    if (timer !== null) clearTimeout(timer)
    timer = setTimeout(() => void autosave(), autosaveMs)
  })

  return Object.assign(store, {
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
    async save(): Promise<void> {
      const document = committed()
      const { docId, fileName } = store.getState()
      if (document === null || docId === null) return
      const text = serializeSite(document)
      const answer =
        fileName === null
          ? await host.saveAs({ docId, text, name: document.name, order: order++ })
          : await host.save({ docId, text, order: order++ })
      if (!answer.ok) {
        store.setState({ failure: answer.error })
        return
      }
      const report = 'report' in answer.value ? answer.value.report : answer.value
      if ('fileName' in answer.value && answer.value.fileName) store.setState({ fileName: answer.value.fileName })
      if (report.outcome === 'saved') store.setState({ kept: document, keptAt: report.at, failure: null })
      else store.setState({ failure: { reason: report.reason } })
    },
    async close(): Promise<void> {
      await autosave()
      const { docId } = store.getState()
      site.close()
      store.setState(nothing)
      if (docId !== null) await host.close({ docId, keepRecovery: true })
    },
  })
}
