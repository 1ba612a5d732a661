/** Sites opened in a window: new, out of a file, a sample, or work that was left behind. */
import { basename, dirname } from 'node:path'
import { readSite } from '../../core/document/readSite'
import { serializeSite } from '../../core/document/serializeSite'
import type { OpenedSite } from '../../shared/host'
import { ok } from '../../shared/problem'
import { failed, reasonOf } from './fileFault'
import type { FileLists } from './fileLists'
import { titleOf } from './fileNames'
import type { FileRoom } from './fileRoom'
import { freshId, type OpenDocument, type WindowDocuments } from './openDocuments'
import { findFile, readText } from './readFile'
import type { WindowFiles } from './windowFiles'

type OpenSites = Pick<WindowFiles, 'newSite' | 'openFile' | 'openPath' | 'openSample' | 'openRecovery'>

const opened = ({ docId, path, title, readOnly }: OpenDocument, text: string): OpenedSite => ({
  docId,
  title,
  text,
  ...(path === null ? {} : { fileName: basename(path) }),
  ...(readOnly === null ? {} : { readOnly }),
})

export function openSites(room: FileRoom, { track }: WindowDocuments, { pathOf }: FileLists): OpenSites {
  const { layer, documents, recent, recovery, locks, samples, now, sweepOnce } = room
  /** How a file may be used by this window: for saving, or only to look at. */
  const claim = async (path: string, docId: string): Promise<OpenDocument['readOnly']> => {
    if (!(await locks.take(path, docId))) return 'openElsewhere'
    return (await layer.mayWrite(path).catch(() => true)) ? null : 'readOnly'
  }
  const openPath: WindowFiles['openPath'] = async given => {
    const found = await findFile(room, given)
    if (!found.ok) return found
    const { path, facts } = found.value
    await sweepOnce(dirname(path))
    const text = await readText(room, found.value)
    if (!text.ok) return text
    const docId = freshId()
    const readOnly = await claim(path, docId)
    const document = track({ path, title: titleOf(basename(path)), known: facts, readOnly }, docId)
    await recent.add(path, now())
    return ok(opened(document, text.value))
  }
  return {
    openPath,
    newSite: ({ title }) => ({
      docId: track({ path: null, title, known: null, readOnly: null }).docId,
      siteId: `site-${freshId()}`,
    }),
    async openFile({ fileId }) {
      const path = await pathOf(fileId)
      return path === undefined ? failed('unknownId') : openPath(path)
    },
    async openSample({ sampleId }) {
      const text = await samples.read(sampleId)
      if (text === null) return failed('unknownId')
      const site = readSite(text)
      const copy = site.ok ? serializeSite({ ...site.value, id: `site-${freshId()}` }) : text
      const title = site.ok ? site.value.name : sampleId
      return ok(opened(track({ path: null, title, known: null, readOnly: null }), copy))
    },
    async openRecovery({ recoveryId }) {
      if (documents.has(recoveryId)) return failed('openElsewhere')
      let left: Awaited<ReturnType<typeof recovery.read>>
      try {
        left = await recovery.read(recoveryId)
      } catch (error) {
        return failed(reasonOf(error))
      }
      const { head, text } = left
      const docId = freshId()
      const found = head.path === null ? null : await findFile(room, head.path)
      const home = found?.ok ? found.value : null
      const document = track(
        {
          path: home?.path ?? null,
          title: head.title,
          known: home?.facts ?? null,
          readOnly: home === null ? null : await claim(home.path, docId),
        },
        docId,
      )
      // Under its new name before the old one goes: at no moment is the work nowhere.
      const again = await recovery.write(docId, { ...head, path: document.path }, text)
      if (again.replaced) await recovery.remove(recoveryId)
      return ok(opened(document, text))
    },
  }
}
