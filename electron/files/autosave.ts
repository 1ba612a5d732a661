/** The newest committed text of every document in the recovery area, until a file holds it. */
import type { SaveReport } from '../../shared/host'
import { ok } from '../../shared/problem'
import { failed } from './fileFault'
import type { FileRoom } from './fileRoom'
import type { OpenDocument, WindowDocuments } from './openDocuments'
import { saveReport } from './saveReport'
import type { WindowFiles } from './windowFiles'

export function autosaving(
  { documents, recovery, now, atRecovery }: FileRoom,
  { find }: WindowDocuments,
): WindowFiles['autosave'] {
  return async ({ docId, title, text, order }) => {
    const document = find(docId)
    if (document === undefined) return failed('unknownId')
    document.title = title
    if (order > document.autosavedOrder) {
      document.autosavedOrder = order
      document.lastAutosave = atRecovery(docId, async () => {
        // A newer text is waiting behind this one, or the file already holds this one.
        if (order < document.autosavedOrder || order <= document.savedOrder || !documents.has(docId)) return null
        const head = { title, path: document.path, savedAt: now().toISOString() }
        const report = saveReport(await recovery.write(docId, head, text), now(), Buffer.byteLength(text), false)
        if (report.outcome !== 'notSaved') document.recoveredOrder = order
        return report
      })
    }
    // A text that gave way to a newer one is as safe as that one, not safer.
    let newest: OpenDocument['lastAutosave']
    let report: SaveReport | null
    do {
      newest = document.lastAutosave
      report = await newest
    } while (report === null && newest !== document.lastAutosave)
    return ok(report ?? { outcome: 'saved', at: now().toISOString(), bytes: 0, folderSynced: true, versionKept: false })
  }
}
