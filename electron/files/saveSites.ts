/** Saving a document to its file, or to another: never over what someone else wrote, never without a version kept. */
import { basename, dirname, join } from 'node:path'
import { readSite } from '../../core/document/readSite'
import type { FileReason, HostAnswer, HostInput, HostOutput, SaveReport } from '../../shared/host'
import { ok } from '../../shared/problem'
import { failed, reasonOf } from './fileFault'
import type { FileFacts } from './fileLayer'
import { siteFileName, titleOf } from './fileNames'
import type { FileRoom } from './fileRoom'
import type { OpenDocument, WindowDocuments } from './openDocuments'
import { replaceFile } from './replaceFile'
import { saveReport } from './saveReport'
import type { WindowFiles } from './windowFiles'

type SaveSites = Pick<WindowFiles, 'save' | 'saveNamed' | 'savePath'>

export function saveSites(room: FileRoom, { find }: WindowDocuments): SaveSites {
  const { layer, recent, recovery, versions, locks, now, pause, atPath, atRecovery, home, sweepOnce } = room
  /** Keeps what a file holds before something else takes its place. */
  const keepStanding = async (path: string): Promise<boolean> => {
    try {
      return await versions.keep(path, await layer.read(path), now())
    } catch {
      return false
    }
  }

  const afterSave = async (document: OpenDocument, order: number) => {
    document.savedOrder = Math.max(document.savedOrder, order)
    await atRecovery(document.docId, async () => {
      if (document.recoveredOrder <= document.savedOrder) await recovery.remove(document.docId)
    })
  }

  const save: WindowFiles['save'] = async ({ docId, text, order, overwrite = false }) => {
    const document = find(docId)
    if (document === undefined) return failed('unknownId')
    const { path } = document
    if (path === null) return ok({ outcome: 'notSaved', reason: 'untitled' })
    return ok(
      await atPath<SaveReport>(path, async () => {
        if (document.readOnly !== null) return { outcome: 'notSaved', reason: document.readOnly }
        if (!readSite(text).ok) return { outcome: 'notSaved', reason: 'wouldNotOpen' }
        let standing: FileFacts | null
        try {
          standing = await layer.facts(path)
          if (standing === null && !overwrite) return { outcome: 'notSaved', reason: 'vanished' }
          if (standing !== null && standing.kind !== 'file') return { outcome: 'notSaved', reason: 'notAFile' }
          if (standing !== null && !(await layer.mayWrite(path))) return { outcome: 'notSaved', reason: 'readOnly' }
        } catch (error) {
          return { outcome: 'notSaved', reason: reasonOf(error) }
        }
        const isForeign = standing !== null && !isSame(standing, document.known)
        if (isForeign && !overwrite) return { outcome: 'notSaved', reason: 'changedOutside' }
        const oldKept = standing === null || (document.isKept && !isForeign) || (await keepStanding(path))
        if (isForeign && !oldKept) return { outcome: 'notSaved', reason: 'changedOutside' }
        const bytes = Buffer.from(text, 'utf8')
        const report = await replaceFile(layer, path, bytes, { pause, mode: standing?.mode })
        if (!report.replaced) return saveReport(report, now(), bytes.length, false)
        document.known = report.facts
        document.isKept = await versions.keep(path, bytes, now())
        await afterSave(document, order)
        return saveReport(report, now(), bytes.length, oldKept && document.isKept)
      }),
    )
  }

  const saveTo = async (
    { docId, text, order }: HostInput<'saveAs'>,
    path: string,
    mayReplace: boolean,
  ): Promise<HostAnswer<HostOutput<'saveAs'>>> => {
    const document = find(docId)
    if (document === undefined) return failed('unknownId')
    const refuse = (reason: FileReason): HostAnswer<HostOutput<'saveAs'>> =>
      ok({ report: { outcome: 'notSaved', reason } })
    if (!readSite(text).ok) return refuse('wouldNotOpen')
    return atPath<HostAnswer<HostOutput<'saveAs'>>>(path, async () => {
      let standing: FileFacts | null
      try {
        await layer.makeFolder(dirname(path))
        standing = await layer.facts(path)
        if (standing !== null && standing.kind !== 'file') return refuse('notAFile')
        if (standing !== null && path !== document.path && !mayReplace) return refuse('exists')
        if (standing !== null && !(await layer.mayWrite(path))) return refuse('readOnly')
      } catch (error) {
        return refuse(reasonOf(error))
      }
      await sweepOnce(dirname(path))
      if (!(await locks.take(path, docId))) return refuse('openElsewhere')
      const before = document.path
      const oldKept = standing === null || (await keepStanding(path))
      const bytes = Buffer.from(text, 'utf8')
      const report = await replaceFile(layer, path, bytes, { pause })
      if (!report.replaced) {
        if (before !== path) await locks.release(path, docId)
        return ok({ report: saveReport(report, now(), bytes.length, false) })
      }
      if (before !== null && before !== path) await locks.release(before, docId)
      document.path = path
      document.title = titleOf(basename(path))
      document.readOnly = null
      document.known = report.facts
      document.isKept = await versions.keep(path, bytes, now())
      await afterSave(document, order)
      await recent.add(path, now())
      return ok({
        report: saveReport(report, now(), bytes.length, oldKept && document.isKept),
        fileName: basename(path),
      })
    })
  }

  return {
    save,
    async saveNamed(input) {
      const name = siteFileName(input.name)
      if (name === null) return ok({ report: { outcome: 'notSaved', reason: 'nameRefused' } })
      return saveTo(input, join(await home(), name), input.replace === true)
    },
    async savePath(input, given) {
      const name = siteFileName(basename(given))
      if (name === null) return ok({ report: { outcome: 'notSaved', reason: 'nameRefused' } })
      const path = join(dirname(given), name)
      // The dialog asked about the name it saw; one that grew an ending was not asked about.
      const mayReplace = path === given
      return saveTo(input, await layer.follow(path).catch(() => path), mayReplace)
    },
  }
}

function isSame(a: FileFacts, b: FileFacts | null): boolean {
  return b !== null && a.identity === b.identity && a.bytes === b.bytes && a.changedMs === b.changedMs
}
