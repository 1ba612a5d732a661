/** Files of sites for every host: opening, crash-safe saving, kept versions, recovery, recent files, exports. */
import { basename, dirname } from 'node:path'
import { decodeUtf8 } from '../../core/document/decodeUtf8'
import { ok } from '../../shared/problem'
import { autosaving } from './autosave'
import { exportFiles } from './exportFiles'
import { failed, reasonOf } from './fileFault'
import { fileLists } from './fileLists'
import { type FileRoom, fileRoom, type SiteFilesOptions } from './fileRoom'
import { type OpenDocument, type WindowDocuments, windowDocuments } from './openDocuments'
import { openSites } from './openSites'
import { saveSites } from './saveSites'
import type { WindowFiles } from './windowFiles'

export interface SiteFiles {
  openWindow(): WindowFiles
}

export function siteFiles(options: SiteFilesOptions): SiteFiles {
  const room = fileRoom(options)
  const lists = fileLists(room)
  return {
    openWindow() {
      const mine = windowDocuments(room.documents)
      return {
        listRecent: lists.listRecent,
        listFolder: lists.listFolder,
        ...room.settings,
        ...openSites(room, mine, lists),
        ...saveSites(room, mine),
        autosave: autosaving(room, mine),
        ...exportFiles(room),
        ...leftWork(room),
        ...keptVersionsOf(room, mine),
        ...puttingAway(room, mine),
        listSamples: room.samples.list,
        async sampleText({ sampleId }) {
          const text = await room.samples.read(sampleId)
          return text === null ? failed('unknownId') : ok({ text })
        },
        async forgetRecent({ fileId }) {
          const path = await lists.pathOf(fileId)
          if (path !== undefined) await room.recent.forget(path)
        },
        folderOf(docId) {
          const path = mine.find(docId)?.path
          return path === undefined || path === null ? room.folder : dirname(path)
        },
      }
    },
  }
}

/** Work that no file holds and no window has open. */
function leftWork({
  documents,
  recovery,
  recoveryFolder,
  sweepOnce,
}: FileRoom): Pick<WindowFiles, 'listRecoveries' | 'dropRecovery'> {
  return {
    async listRecoveries() {
      await sweepOnce(recoveryFolder)
      return (await recovery.listLeft(docId => documents.has(docId))).map(({ recoveryId, head }) => ({
        recoveryId,
        title: head.title,
        savedAt: head.savedAt,
        bytes: head.bytes,
        ...(head.path === null ? {} : { fileName: basename(head.path) }),
      }))
    },
    async dropRecovery({ recoveryId }) {
      if (documents.has(recoveryId)) return failed('openElsewhere')
      await recovery.remove(recoveryId)
      return ok({})
    },
  }
}

function keptVersionsOf(
  { versions }: FileRoom,
  { find }: WindowDocuments,
): Pick<WindowFiles, 'listVersions' | 'versionText'> {
  return {
    async listVersions({ docId }) {
      const path = find(docId)?.path
      if (path === undefined) return failed('unknownId')
      if (path === null) return ok([])
      const rows = await versions.list(path)
      return ok(rows.map(({ versionId, savedAt, bytes }) => ({ versionId, savedAt, bytes })))
    },
    async versionText({ docId, versionId }) {
      const path = find(docId)?.path
      if (path === undefined || path === null) return failed('unknownId')
      if (!(await versions.list(path)).some(version => version.versionId === versionId)) return failed('unknownId')
      try {
        const text = decodeUtf8(await versions.read(path, versionId))
        return text === undefined ? failed('notText') : ok({ text })
      } catch (error) {
        return failed(reasonOf(error))
      }
    },
  }
}

function puttingAway(
  { documents, locks, recovery, atRecovery }: FileRoom,
  { find, all }: WindowDocuments,
): Pick<WindowFiles, 'close' | 'leave'> {
  const putAway = async ({ docId, path }: OpenDocument, keepRecovery: boolean) => {
    documents.delete(docId)
    if (path !== null) await locks.release(path, docId)
    if (!keepRecovery) await atRecovery(docId, () => recovery.remove(docId))
  }
  return {
    async close({ docId, keepRecovery = false }) {
      const document = find(docId)
      if (document !== undefined) await putAway(document, keepRecovery)
    },
    async leave() {
      for (const document of all()) await putAway(document, true)
    },
  }
}
