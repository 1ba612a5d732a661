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
import { fileStem } from './fileStem'
import type { WriteTrouble } from './fileWords'

/** Below the one second the document may be unsaved for. */
const autosaveMs = 700

type Saved = Extract<SaveReport, { outcome: 'saved' }>

export interface KeptState {
  readonly docId: string | null
  /** A site is on its way: keys pressed meanwhile are meant for it. */
  readonly isOpening: boolean
  readonly fileName: string | null
  /** Why the file may be looked at but not saved to. */
  readonly readOnly: 'openElsewhere' | 'readOnly' | null
  /** The committed document that the file, or the recovery area, holds. */
  readonly kept: Site | null
  readonly keptAt: string | null
  /** The committed document that putting the site away would not lose: in its file, or never changed. */
  readonly filed: Site | null
  readonly filedAt: string | null
  /** The last save that went through. */
  readonly saved: Saved | null
  readonly trouble: WriteTrouble | null
  /** Why something could not be opened or listed. */
  readonly failure: FileFailure | null
  /** Why a file would not open. */
  readonly problems: readonly Problem[]
}

type Next = (() => void) | undefined

export type Keeper = StoreApi<KeptState> & {
  /** Takes what the host opened; false where it is no site of ours, with the problems in the state. */
  take(answer: HostAnswer<OpenedSite>): boolean
  /** As `take`, once the host answers. */
  takeFrom(asked: Promise<HostAnswer<OpenedSite>>): Promise<boolean>
  /** As `take`, of work that no file holds yet. */
  takeRecovered(answer: HostAnswer<OpenedSite>): boolean
  startNew(name: string): Promise<void>
  /** `overwrite` also where another program changed the file since. `next` runs once the document is in its file. */
  save(options?: { readonly overwrite?: boolean; readonly next?: Next }): Promise<void>
  /** Without a name the page, or the desktop's dialog, asks for one. */
  saveAs(options?: { readonly name?: string; readonly replace?: boolean; readonly next?: Next }): Promise<void>
  /** Puts the document away, then goes on; asks first where no file holds the work. `leaving`: the window goes too. */
  leave(options?: { readonly leaving?: boolean; readonly next?: Next }): Promise<void>
  /** Puts the document away without its file: `aside` offers the work again, else it is thrown away. */
  putAway(options: { readonly aside: boolean; readonly leaving: boolean; readonly next: Next }): Promise<void>
  /** Keeps the newest changes in the recovery area now. */
  flush(): Promise<void>
  /** Shows the versions kept of the file. */
  showVersions(): Promise<void>
}

const nothing: KeptState = {
  docId: null,
  isOpening: false,
  fileName: null,
  readOnly: null,
  kept: null,
  keptAt: null,
  filed: null,
  filedAt: null,
  saved: null,
  trouble: null,
  failure: null,
  problems: [],
}

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
  /** The save that is under way. */
  let underWay: Promise<unknown> = Promise.resolve()
  let timer: ReturnType<typeof setTimeout> | null = null

  const committed = (): Site | null => {
    const { history } = site.getState()
    return history ? currentDocument(history) : null
  }
  const open = (document: Site, state: Partial<KeptState>) => {
    store.setState({ ...nothing, ...state, isOpening: store.getState().isOpening })
    resetView(view)
    site.open(document)
  }
  const stopTimer = () => {
    if (timer !== null) clearTimeout(timer)
    timer = null
  }

  async function autosave(): Promise<void> {
    stopTimer()
    const document = committed()
    const { docId, kept } = store.getState()
    if (document === null || docId === null || document === kept) return
    const answer = await host.autosave({ docId, title: document.name, text: serializeSite(document), order: order++ })
    if (store.getState().docId !== docId) return
    if (!answer.ok) tellTrouble('recovery', 'notSaved', answer.error)
    else if (answer.value.outcome === 'saved') {
      store.setState(({ trouble }) => ({
        kept: document,
        keptAt: answer.ok && answer.value.outcome === 'saved' ? answer.value.at : null,
        trouble: trouble?.where === 'recovery' ? null : trouble,
      }))
    } else tellTrouble('recovery', answer.value.outcome, { reason: answer.value.reason })
  }

  function tellTrouble(where: WriteTrouble['where'], outcome: WriteTrouble['outcome'], failure: FileFailure): void {
    store.setState({ trouble: { where, outcome, failure } })
  }

  function settle(document: Site, report: SaveReport, fileName: string, next: Next): void {
    if (report.outcome === 'saved') {
      const at = report.at
      store.setState({
        kept: document,
        keptAt: at,
        filed: document,
        filedAt: at,
        saved: report,
        trouble: null,
        fileName,
        readOnly: null,
      })
      next?.()
    } else if (report.reason === 'changedOutside') {
      dialogs.setState({ open: { kind: 'changedOutside', name: fileStem(fileName), next } })
    } else if (report.reason === 'exists') {
      dialogs.setState({ open: { kind: 'saveAs', name: fileStem(fileName), existing: true, next } })
    } else if (report.reason !== 'canceled') tellTrouble('file', report.outcome, { reason: report.reason })
  }

  async function opening<T>(open: () => Promise<T>): Promise<T> {
    store.setState({ isOpening: true })
    try {
      return await open()
    } finally {
      store.setState({ isOpening: false })
    }
  }

  function takeAs(answer: HostAnswer<OpenedSite>, isFiled: boolean): boolean {
    if (!answer.ok) {
      if (answer.error.reason !== 'canceled') store.setState({ failure: answer.error, problems: [] })
      return false
    }
    const { docId, fileName, text, readOnly } = answer.value
    const read = readSite(text)
    if (!read.ok) {
      const print = printMeasures('ftin')
      store.setState({ failure: null, problems: read.error.map(finding => wordProblem(finding, print)) })
      // The file is free again for whoever can read it; recovered work that cannot be read stays where it is.
      void host.close({ docId, keepRecovery: true })
      return false
    }
    open(read.value, {
      docId,
      fileName: fileName ?? null,
      kept: read.value,
      filed: isFiled ? read.value : null,
      readOnly: readOnly ?? null,
    })
    if (readOnly === 'openElsewhere')
      dialogs.setState({
        open: { kind: 'openElsewhere', name: fileName === undefined ? read.value.name : fileStem(fileName) },
      })
    return true
  }

  site.subscribe((state, before) => {
    if (state.rev === before.rev || state.history === null) return
    stopTimer()
    timer = setTimeout(() => void autosave(), autosaveMs)
  })

  const keeper: Keeper = Object.assign(store, {
    take: (answer: HostAnswer<OpenedSite>) => takeAs(answer, true),
    takeFrom: (asked: Promise<HostAnswer<OpenedSite>>) => opening(async () => takeAs(await asked, true)),
    takeRecovered: (answer: HostAnswer<OpenedSite>) => takeAs(answer, false),
    flush: autosave,
    startNew: (name: string) =>
      opening(async () => {
        const answer = await host.newSite({ title: name })
        if (!answer.ok) {
          store.setState({ failure: answer.error })
          return
        }
        const document = emptySite(answer.value.siteId, name)
        open(document, { docId: answer.value.docId, filed: document })
      }),
    async save({ overwrite = false, next }: { overwrite?: boolean; next?: Next } = {}): Promise<void> {
      const document = committed()
      const { docId, fileName, readOnly } = store.getState()
      if (document === null || docId === null) return
      if (fileName === null || readOnly !== null) {
        await keeper.saveAs({ next })
        return
      }
      const text = serializeSite(document)
      const asked = host.save({ docId, text, order: order++, overwrite })
      underWay = asked
      const answer = await asked
      if (answer.ok) settle(document, answer.value, fileName, next)
      else tellTrouble('file', 'notSaved', answer.error)
    },
    async saveAs({
      name: named,
      replace = false,
      next,
    }: {
      name?: string
      replace?: boolean
      next?: Next
    } = {}): Promise<void> {
      const document = committed()
      const { docId, fileName, readOnly } = store.getState()
      if (document === null || docId === null) return
      const first = fileName === null ? document.name : fileStem(fileName)
      const name = named ?? (readOnly === null ? first : `${first} copy`)
      if (named === undefined && !asksItself) {
        dialogs.setState({ open: { kind: 'saveAs', name, existing: false, next } })
        return
      }
      const asked = host.saveAs({ docId, text: serializeSite(document), name, order: order++, replace })
      underWay = asked
      const answer = await asked
      if (!answer.ok) {
        if (answer.error.reason === 'exists') {
          dialogs.setState({ open: { kind: 'saveAs', name, existing: true, next } })
        } else if (answer.error.reason !== 'canceled') tellTrouble('file', 'notSaved', answer.error)
        return
      }
      settle(document, answer.value.report, answer.value.fileName ?? name, next)
    },
    async leave({ leaving = false, next }: { leaving?: boolean; next?: Next } = {}): Promise<void> {
      await underWay.catch(() => {})
      const document = committed()
      const { docId, filed, fileName, readOnly } = store.getState()
      if (docId !== null && document !== null && document !== filed) {
        await autosave()
        const hasFile = fileName !== null && readOnly === null
        const name = fileName === null ? document.name : fileStem(fileName)
        dialogs.setState({ open: { kind: 'closing', name, hasFile, leaving, next } })
        return
      }
      await putAway({ keepRecovery: false, leaving, next })
    },
    async putAway({ aside, leaving, next }: { aside: boolean; leaving: boolean; next: Next }): Promise<void> {
      if (aside) await autosave()
      // Where it could not be put aside the site stays open, and the trouble is told.
      if (aside && committed() !== store.getState().kept) return
      await putAway({ keepRecovery: aside, leaving, next })
    },
    async showVersions(): Promise<void> {
      const { docId } = store.getState()
      if (docId === null) return
      const answer = await host.listVersions({ docId })
      if (answer.ok) dialogs.setState({ open: { kind: 'versions', versions: answer.value } })
      else tellTrouble('file', 'notSaved', answer.error)
    },
  })

  async function putAway({
    keepRecovery,
    leaving,
    next,
  }: {
    readonly keepRecovery: boolean
    readonly leaving: boolean
    readonly next: Next
  }): Promise<void> {
    stopTimer()
    const { docId } = store.getState()
    if (docId !== null) await host.close({ docId, keepRecovery, leaving })
    site.close()
    store.setState(nothing)
    next?.()
  }

  return keeper
}
