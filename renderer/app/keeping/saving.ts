/** The document written to its file, or to a new one under a name. */
import { serializeSite } from '../../../core/document/serializeSite'
import type { Site } from '../../../shared/document/site'
import type { SaveReport } from '../../../shared/host'
import { unnamed } from '../emptySite'
import { fileStem } from '../fileStem'
import type { KeeperDesk, Next } from './desk'

export interface Saving {
  /** `overwrite` also where another program changed the file since. `next` runs once the document is in its file. */
  save(options?: { readonly overwrite?: boolean; readonly next?: Next }): Promise<void>
  /** Without a name the page, or the desktop's dialog, asks for one. */
  saveAs(options?: { readonly name?: string; readonly replace?: boolean; readonly next?: Next }): Promise<void>
}

export interface SavingUnderWay extends Saving {
  /** Waits for the save that is under way, whatever comes of it. */
  settled(): Promise<unknown>
}

export function createSaving({
  host,
  site,
  asksItself,
  dialogs,
  store,
  committed,
  nextOrder,
  tellTrouble,
}: KeeperDesk): SavingUnderWay {
  let underWay: Promise<unknown> = Promise.resolve()

  function settle(
    document: Site,
    report: SaveReport,
    { fileName, where, next }: { readonly fileName: string; readonly where: 'file' | 'newFile'; readonly next: Next },
  ): void {
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
    } else if (report.reason === 'exists' || report.reason === 'nameRefused') {
      dialogs.setState({ open: { kind: 'saveAs', name: fileStem(fileName), refused: report.reason, next } })
    } else if (report.reason !== 'canceled') tellTrouble(where, report.outcome, { reason: report.reason })
  }

  const saving: SavingUnderWay = {
    settled: () => underWay.catch(() => {}),
    async save({ overwrite = false, next } = {}) {
      const document = committed()
      const { docId, fileName, readOnly } = store.getState()
      if (document === null || docId === null) return
      if (fileName === null || readOnly !== null) {
        await saving.saveAs({ next })
        return
      }
      const text = serializeSite(document)
      const asked = host.save({ docId, text, order: nextOrder(), overwrite })
      underWay = asked
      const answer = await asked
      if (answer.ok) settle(document, answer.value, { fileName, where: 'file', next })
      else tellTrouble('file', 'notSaved', answer.error)
    },
    async saveAs({ name: named, replace = false, next } = {}) {
      const document = committed()
      const { docId, fileName, readOnly } = store.getState()
      if (document === null || docId === null) return
      const first = fileName === null ? document.name : fileStem(fileName)
      const name = named ?? (readOnly === null ? first : `${first} copy`)
      if (named === undefined && !asksItself) {
        dialogs.setState({ open: { kind: 'saveAs', name, refused: null, next } })
        return
      }
      // The first file of a site that nobody has named names it.
      const isUnnamed = document.name === unnamed
      const titled = isUnnamed && named !== undefined ? { ...document, name } : document
      const where = replace ? 'file' : 'newFile'
      const asked = host.saveAs({ docId, text: serializeSite(titled), name, order: nextOrder(), replace })
      underWay = asked
      const answer = await asked
      if (!answer.ok) {
        if (answer.error.reason === 'exists' || answer.error.reason === 'nameRefused') {
          dialogs.setState({ open: { kind: 'saveAs', name, refused: answer.error.reason, next } })
        } else if (answer.error.reason !== 'canceled') tellTrouble(where, 'notSaved', answer.error)
        return
      }
      const { report, fileName: keptIn = name } = answer.value
      const title = isUnnamed && report.outcome === 'saved' ? (named ?? fileStem(keptIn)) : unnamed
      if (title === unnamed) {
        settle(document, report, { fileName: keptIn, where, next })
        return
      }
      const isCurrent = committed() === document
      site.rename(unnamed, title)
      const isWritten = titled.name === title
      const filed = isCurrent && isWritten ? committed()! : document
      settle(filed, report, { fileName: keptIn, where, next: isWritten ? next : undefined })
      // Where the desktop's own dialog asked, the file does not know its site's name yet.
      if (!isWritten) await saving.save({ next })
    },
  }
  return saving
}
