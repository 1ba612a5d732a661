import { createHash, randomBytes } from 'node:crypto'
import { basename, dirname, join } from 'node:path'
import { decodeUtf8 } from '../../core/document/decodeUtf8'
import { readSite } from '../../core/document/readSite'
import { serializeSite } from '../../core/document/serializeSite'
import type {
  FileFailure,
  FileReason,
  HostAnswer,
  HostInput,
  HostOutput,
  OpenedSite,
  SaveReport,
} from '../../shared/host'
import { limits } from '../../shared/limits'
import { err, ok } from '../../shared/problem'
import { reasonOf } from './fileFault'
import type { FileFacts, FileLayer } from './fileLayer'
import { exportFileName, plainName, siteEnding, siteFileName, titleOf } from './fileNames'
import { versionShelf } from './keptVersions'
import { openLocks } from './openLocks'
import { queueByKey } from './queueByKey'
import { recentFiles } from './recentFiles'
import { recoveryArea } from './recoveryArea'
import { type Pause, type ReplaceReport, replaceFile } from './replaceFile'
import { sampleShelf } from './sampleShelf'
import { type KeptTheme, settingsFile } from './settingsFile'
import { sweepTemps } from './sweepTemps'

export interface SiteFilesOptions {
  readonly layer: FileLayer
  /** Where the user's sites are looked for and saved; made on the first save. */
  readonly folder: string
  /** Where the program keeps recovery, versions, recent files and locks. */
  readonly dataFolder: string
  readonly samplesFolder: string
  readonly now: () => Date
  /** The local day of an instant, as YYYY-MM-DD. */
  readonly dayOf: (at: Date) => string
  /** True where a page may reach only plain files of the working folder. */
  readonly confined: boolean
  readonly pid?: number
  readonly pause?: Pause
}

/** What one window may do with files; each document belongs to the window that opened it. */
export interface WindowFiles {
  listRecent(): Promise<HostOutput<'start'>['recent']>
  listSamples(): Promise<HostOutput<'start'>['samples']>
  listRecoveries(): Promise<HostOutput<'start'>['recoveries']>
  listFolder(): Promise<HostOutput<'listFolder'>>
  theme(): Promise<KeptTheme | null>
  keepTheme(theme: KeptTheme): Promise<void>
  newSite(input: HostInput<'newSite'>): HostOutput<'newSite'>
  openFile(input: HostInput<'openFile'>): Promise<HostAnswer<OpenedSite>>
  openPath(path: string): Promise<HostAnswer<OpenedSite>>
  openSample(input: HostInput<'openSample'>): Promise<HostAnswer<OpenedSite>>
  sampleText(input: HostInput<'sampleText'>): Promise<HostAnswer<{ text: string }>>
  openRecovery(input: HostInput<'openRecovery'>): Promise<HostAnswer<OpenedSite>>
  dropRecovery(input: HostInput<'dropRecovery'>): Promise<HostAnswer<Record<string, never>>>
  forgetRecent(input: HostInput<'forgetRecent'>): Promise<void>
  save(input: HostInput<'save'>): Promise<HostAnswer<SaveReport>>
  saveNamed(input: HostInput<'saveAs'>): Promise<HostAnswer<HostOutput<'saveAs'>>>
  /** As `saveNamed`, to a path the user chose in the system's dialog, which asked before replacing. */
  savePath(input: HostInput<'saveAs'>, path: string): Promise<HostAnswer<HostOutput<'saveAs'>>>
  autosave(input: HostInput<'autosave'>): Promise<HostAnswer<SaveReport>>
  close(input: HostInput<'close'>): Promise<void>
  listVersions(input: HostInput<'listVersions'>): Promise<HostAnswer<HostOutput<'listVersions'>>>
  versionText(input: HostInput<'versionText'>): Promise<HostAnswer<{ text: string }>>
  exportNamed(input: HostInput<'exportFile'>): Promise<HostAnswer<{ fileName: string }>>
  exportPath(path: string, bytes: Uint8Array): Promise<HostAnswer<{ fileName: string }>>
  /** The folder of a document's file, else the working folder: where a dialog opens. */
  folderOf(docId: string): string
  /** The window is gone: its files are free again, unsaved work stays to be offered. */
  leave(): Promise<void>
}

export interface SiteFiles {
  openWindow(): WindowFiles
}

interface OpenDocument {
  readonly docId: string
  readonly owner: symbol
  path: string | null
  title: string
  /** The file as we last read or wrote it; null where it was not there. */
  known: FileFacts | null
  /** Whether what the file holds is already among the kept versions. */
  isKept: boolean
  readOnly: 'openElsewhere' | 'readOnly' | null
  savedOrder: number
  /** The newest order asked to be kept, and the newest that may stand in the recovery area. */
  autosavedOrder: number
  recoveredOrder: number
  lastAutosave: Promise<SaveReport | null>
}

/** Files of sites for every host: opening, crash-safe saving, kept versions, recovery, recent files, exports. */
export function siteFiles(options: SiteFilesOptions): SiteFiles {
  const { layer, folder, dataFolder, now, confined, pid, pause } = options
  const pauseOption = pause === undefined ? {} : { pause }
  const pidOption = pid === undefined ? {} : { pid }
  const documents = new Map<string, OpenDocument>()
  const pathsById = new Map<string, string>()
  const queue = queueByKey()
  const recent = recentFiles(layer, dataFolder, pause)
  const recovery = recoveryArea(layer, join(dataFolder, 'recovery'), { ...pauseOption, ...pidOption })
  const versions = versionShelf(layer, join(dataFolder, 'versions'), at => options.dayOf(new Date(at)), pause)
  const locks = openLocks(layer, join(dataFolder, 'locks'), pid)
  const settings = settingsFile(layer, dataFolder, pause)
  const samples = sampleShelf(layer, options.samplesFolder)
  const sweptFolders = new Set<string>()

  const sweepOnce = async (where: string) => {
    if (sweptFolders.has(where)) return
    sweptFolders.add(where)
    await sweepTemps(layer, where, now().getTime())
  }
  const idOfPath = (path: string) => {
    const fileId = createHash('sha256').update(path).digest('base64url').slice(0, 22)
    pathsById.set(fileId, path)
    return fileId
  }
  const freshId = () => randomBytes(12).toString('base64url')
  const failed = (reason: FileReason, path?: string): { ok: false; error: FileFailure } =>
    err(path === undefined ? { reason } : { reason, name: basename(path) })

  /** The file a path leads to; where pages are confined, only a plain file of the working folder. */
  const settle = async (path: string): Promise<HostAnswer<{ path: string; facts: FileFacts }>> => {
    try {
      const direct = await layer.facts(path)
      if (direct === null) return failed('vanished', path)
      const real = await layer.follow(path)
      if (confined) {
        const home = await layer.follow(folder)
        if (direct.kind === 'link' || dirname(real) !== home) return failed('notAFile', path)
      }
      const facts = direct.kind === 'link' ? await layer.facts(real) : direct
      if (facts === null) return failed('vanished', path)
      if (facts.kind !== 'file') return failed('notAFile', path)
      return ok({ path: real, facts })
    } catch (error) {
      return failed(reasonOf(error), path)
    }
  }

  const readText = async (path: string, facts: FileFacts): Promise<HostAnswer<string>> => {
    if (facts.bytes > limits.fileBytes) return failed('fileTooLarge', path)
    try {
      const bytes = await layer.read(path)
      if (bytes.byteLength > limits.fileBytes) return failed('fileTooLarge', path)
      const text = decodeUtf8(bytes)
      return text === undefined ? failed('notText', path) : ok(text)
    } catch (error) {
      return failed(reasonOf(error), path)
    }
  }

  const listFolderPaths = async () => {
    const names = await layer.list(folder).catch(() => [])
    return names
      .filter(name => name.toLowerCase().endsWith(siteEnding) && plainName(name) === name)
      .map(name => join(folder, name))
  }

  const reportOf = (report: ReplaceReport, bytes: number, versionKept: boolean): SaveReport =>
    report.replaced
      ? { outcome: 'saved', at: now().toISOString(), bytes, folderSynced: report.folderSynced, versionKept }
      : { outcome: report.sure ? 'notSaved' : 'unsure', reason: report.reason }

  const openWindow = (): WindowFiles => {
    const owner = Symbol('window')

    const track = (
      made: Pick<OpenDocument, 'path' | 'title' | 'known' | 'readOnly'>,
      docId = freshId(),
    ): OpenDocument => {
      const document: OpenDocument = {
        ...made,
        docId,
        owner,
        isKept: false,
        savedOrder: -1,
        autosavedOrder: -1,
        recoveredOrder: -1,
        lastAutosave: Promise.resolve(null),
      }
      documents.set(docId, document)
      return document
    }
    const find = (docId: string) => {
      const document = documents.get(docId)
      return document?.owner === owner ? document : undefined
    }
    const opened = ({ docId, path, title, readOnly }: OpenDocument, text: string): OpenedSite => ({
      docId,
      title,
      text,
      ...(path === null ? {} : { fileName: basename(path) }),
      ...(readOnly === null ? {} : { readOnly }),
    })
    /** How a file may be used by this window: for saving, or only to look at. */
    const claim = async (path: string, docId: string): Promise<OpenDocument['readOnly']> => {
      if (!(await locks.take(path, docId))) return 'openElsewhere'
      return (await layer.mayWrite(path).catch(() => true)) ? null : 'readOnly'
    }

    const openPath: WindowFiles['openPath'] = async given => {
      const found = await settle(given)
      if (!found.ok) return found
      const { path, facts } = found.value
      await sweepOnce(dirname(path))
      const text = await readText(path, facts)
      if (!text.ok) return text
      const docId = freshId()
      const readOnly = await claim(path, docId)
      const document = track({ path, title: titleOf(basename(path)), known: facts, readOnly }, docId)
      await queue('recent', () => recent.add(path, now()))
      return ok(opened(document, text.value))
    }

    const pathOf = async (fileId: string) => {
      if (!pathsById.has(fileId)) await Promise.all([listRecent(), listFolder()])
      return pathsById.get(fileId)
    }

    const listRecent: WindowFiles['listRecent'] = async () => {
      const entries = await queue('recent', recent.list)
      const home = await layer.follow(folder).catch(() => folder)
      return Promise.all(
        entries
          .filter(({ path }) => !confined || dirname(path) === home)
          .map(async ({ path, openedAt }) => ({
            fileId: idOfPath(path),
            name: titleOf(basename(path)),
            openedAt,
            missing: (await layer.facts(path).catch(() => null)) === null,
          })),
      )
    }

    const listFolder: WindowFiles['listFolder'] = async () => {
      await sweepOnce(folder)
      const rows = await Promise.all(
        (await listFolderPaths()).map(async path => {
          const facts = await layer.facts(path).catch(() => null)
          if (facts?.kind !== 'file') return []
          return [
            {
              fileId: idOfPath(path),
              name: titleOf(basename(path)),
              changedAt: new Date(facts.changedMs).toISOString(),
              bytes: facts.bytes,
            },
          ]
        }),
      )
      return rows.flat().sort((a, b) => (a.changedAt < b.changedAt ? 1 : -1))
    }

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
      await queue(`recovery ${document.docId}`, async () => {
        if (document.recoveredOrder <= document.savedOrder) await recovery.remove(document.docId)
      })
    }

    const save: WindowFiles['save'] = async ({ docId, text, order, overwrite = false }) => {
      const document = find(docId)
      if (document === undefined) return failed('unknownId')
      const { path } = document
      if (path === null) return ok({ outcome: 'notSaved', reason: 'untitled' })
      return ok(
        await queue<SaveReport>(path, async () => {
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
          const report = await replaceFile(layer, path, bytes, {
            ...pauseOption,
            ...(standing === null ? {} : { mode: standing.mode }),
          })
          if (!report.replaced) return reportOf(report, bytes.length, false)
          document.known = report.facts
          document.isKept = await versions.keep(path, bytes, now())
          await afterSave(document, order)
          return reportOf(report, bytes.length, oldKept && document.isKept)
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
      return queue<HostAnswer<HostOutput<'saveAs'>>>(path, async () => {
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
        const report = await replaceFile(layer, path, bytes, pauseOption)
        if (!report.replaced) {
          if (before !== path) await locks.release(path, docId)
          return ok({ report: reportOf(report, bytes.length, false) })
        }
        if (before !== null && before !== path) await locks.release(before, docId)
        document.path = path
        document.title = titleOf(basename(path))
        document.readOnly = null
        document.known = report.facts
        document.isKept = await versions.keep(path, bytes, now())
        await afterSave(document, order)
        await queue('recent', () => recent.add(path, now()))
        return ok({ report: reportOf(report, bytes.length, oldKept && document.isKept), fileName: basename(path) })
      })
    }

    const autosave: WindowFiles['autosave'] = async ({ docId, title, text, order }) => {
      const document = find(docId)
      if (document === undefined) return failed('unknownId')
      document.title = title
      if (order > document.autosavedOrder) {
        document.autosavedOrder = order
        document.lastAutosave = queue(`recovery ${docId}`, async () => {
          // A newer text is waiting behind this one, or the file already holds this one.
          if (order < document.autosavedOrder || order <= document.savedOrder || !documents.has(docId)) return null
          const head = { title, path: document.path, savedAt: now().toISOString() }
          const report = reportOf(await recovery.write(docId, head, text), Buffer.byteLength(text), false)
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
      return ok(
        report ?? { outcome: 'saved', at: now().toISOString(), bytes: 0, folderSynced: true, versionKept: false },
      )
    }

    const putAway = async (document: OpenDocument, keepRecovery: boolean) => {
      documents.delete(document.docId)
      if (document.path !== null) await locks.release(document.path, document.docId)
      if (!keepRecovery) await queue(`recovery ${document.docId}`, () => recovery.remove(document.docId))
    }

    const exportBytes = async (path: string, bytes: Uint8Array): Promise<HostAnswer<{ fileName: string }>> => {
      try {
        await layer.makeFolder(dirname(path))
      } catch (error) {
        return failed(reasonOf(error), path)
      }
      const report = await replaceFile(layer, path, bytes, pauseOption)
      if (!report.replaced) return failed(report.reason, path)
      return ok({ fileName: basename(path) })
    }

    return {
      listRecent,
      listFolder,
      openPath,
      save,
      autosave,
      listSamples: samples.list,
      theme: () => queue('settings', settings.theme),
      keepTheme: theme => queue('settings', () => settings.keepTheme(theme)),
      async listRecoveries() {
        await sweepOnce(join(dataFolder, 'recovery'))
        return (await recovery.listLeft(docId => documents.has(docId))).map(({ recoveryId, head }) => ({
          recoveryId,
          title: head.title,
          savedAt: head.savedAt,
          bytes: head.bytes,
          ...(head.path === null ? {} : { fileName: basename(head.path) }),
        }))
      },
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
      async sampleText({ sampleId }) {
        const text = await samples.read(sampleId)
        return text === null ? failed('unknownId') : ok({ text })
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
        const found = head.path === null ? null : await settle(head.path)
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
      async dropRecovery({ recoveryId }) {
        if (documents.has(recoveryId)) return failed('openElsewhere')
        await recovery.remove(recoveryId)
        return ok({})
      },
      async forgetRecent({ fileId }) {
        const path = await pathOf(fileId)
        if (path !== undefined) await queue('recent', () => recent.forget(path))
      },
      async saveNamed(input) {
        const name = siteFileName(input.name)
        if (name === null) return ok({ report: { outcome: 'notSaved', reason: 'nameRefused' } })
        const home = await layer.follow(folder).catch(() => folder)
        return saveTo(input, join(home, name), input.replace === true)
      },
      async savePath(input, given) {
        const name = siteFileName(basename(given))
        if (name === null) return ok({ report: { outcome: 'notSaved', reason: 'nameRefused' } })
        const path = join(dirname(given), name)
        // The dialog asked about the name it saw; one that grew an ending was not asked about.
        const mayReplace = path === given
        return saveTo(input, await layer.follow(path).catch(() => path), mayReplace)
      },
      async close({ docId, keepRecovery = false }) {
        const document = find(docId)
        if (document !== undefined) await putAway(document, keepRecovery)
      },
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
      async exportNamed({ name, kind, base64 }) {
        const plain = exportFileName(name, kind)
        if (plain === null) return failed('nameRefused')
        const home = await layer.follow(folder).catch(() => folder)
        return queue(`export ${home}`, async () => {
          try {
            const path = await freeName(layer, join(home, plain), kind)
            return await exportBytes(path, Buffer.from(base64, 'base64'))
          } catch (error) {
            return failed(reasonOf(error))
          }
        })
      },
      exportPath: exportBytes,
      folderOf(docId) {
        const path = find(docId)?.path
        return path === undefined || path === null ? folder : dirname(path)
      },
      async leave() {
        for (const document of [...documents.values()].filter(one => one.owner === owner)) {
          await putAway(document, true)
        }
      },
    }
  }
  return { openWindow }
}

function isSame(a: FileFacts, b: FileFacts | null): boolean {
  return b !== null && a.identity === b.identity && a.bytes === b.bytes && a.changedMs === b.changedMs
}

/** `plan.pdf`, else `plan 2.pdf` and so on: an export replaces nothing by itself. */
async function freeName(layer: FileLayer, path: string, kind: string): Promise<string> {
  const stem = path.slice(0, -(kind.length + 1))
  for (let number = 1; ; number += 1) {
    const candidate = number === 1 ? path : `${stem} ${number}.${kind}`
    if ((await layer.facts(candidate)) === null) return candidate
  }
}
