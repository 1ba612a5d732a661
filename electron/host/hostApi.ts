import { basename } from 'node:path'
import type * as z from 'zod/mini'
import type { ExportKind, HostApi, HostInput, ImportKind } from '../../shared/host'
import { limits } from '../../shared/limits'
import { err, ok } from '../../shared/problem'
import { reasonOf } from '../files/fileFault'
import type { FileLayer } from '../files/fileLayer'
import type { WindowFiles } from '../files/windowFiles'
import { fetchForecast } from '../weather/fetchForecast'

/** The system's own dialogs; each answers null when the user let it go. */
export interface Dialogs {
  openSite(folder: string): Promise<string | null>
  saveSite(folder: string, name: string): Promise<string | null>
  openImport(folder: string, kind: z.infer<typeof ImportKind>): Promise<string | null>
  saveExport(folder: string, name: string, kind: z.infer<typeof ExportKind>): Promise<string | null>
  /** False when the user let it go. */
  print(): Promise<boolean>
}

export interface HostApiOptions {
  readonly files: WindowFiles
  readonly layer: FileLayer
  readonly appVersion: string
  /** The working folder as the user would say it. */
  readonly folder: string
  /** The local date. */
  readonly today: () => string
  readonly zone: string
  /** Absent where there is no desktop: then the page has its own. */
  readonly dialogs?: Dialogs
  /** Only tests ask elsewhere. */
  readonly askForecast?: typeof fetchForecast
  readonly tellState?: (state: HostInput<'tellState'>) => void
}

/** What one window may ask for, the same behind every transport. */
export function hostApi({ files, layer, dialogs, ...info }: HostApiOptions): HostApi {
  const notHere = err({ reason: 'notHere' as const })
  const canceled = err({ reason: 'canceled' as const })
  return {
    async start() {
      const [recent, samples, recoveries, theme] = await Promise.all([
        files.listRecent(),
        files.listSamples(),
        files.listRecoveries(),
        files.theme(),
      ])
      return ok({
        host: dialogs === undefined ? 'browser' : 'desktop',
        appVersion: info.appVersion,
        folder: info.folder,
        today: info.today(),
        zone: info.zone,
        recent,
        samples,
        recoveries,
        ...(theme === null ? {} : { theme }),
      })
    },
    newSite: async input => ok(files.newSite(input)),
    listFolder: async () => ok(await files.listFolder()),
    openFile: input => files.openFile(input),
    async openDialog() {
      if (dialogs === undefined) return notHere
      const path = await dialogs.openSite(info.folder)
      return path === null ? canceled : files.openPath(path)
    },
    openSample: input => files.openSample(input),
    sampleText: input => files.sampleText(input),
    openRecovery: input => files.openRecovery(input),
    dropRecovery: input => files.dropRecovery(input),
    async forgetRecent(input) {
      await files.forgetRecent(input)
      return ok({})
    },
    save: input => files.save(input),
    async saveAs(input) {
      if (dialogs === undefined) return files.saveNamed(input)
      const path = await dialogs.saveSite(files.folderOf(input.docId), input.name)
      return path === null ? canceled : files.savePath(input, path)
    },
    autosave: input => files.autosave(input),
    async close(input) {
      await files.close(input)
      return ok({})
    },
    listVersions: input => files.listVersions(input),
    versionText: input => files.versionText(input),
    async importFile({ kind }) {
      if (dialogs === undefined) return notHere
      const path = await dialogs.openImport(info.folder, kind)
      if (path === null) return canceled
      const name = basename(path)
      try {
        const facts = await layer.facts(await layer.follow(path))
        if (facts?.kind !== 'file') return err({ reason: 'notAFile', name })
        if (facts.bytes > limits.fileBytes / 2) return err({ reason: 'fileTooLarge', name })
        return ok({ name, base64: Buffer.from(await layer.read(path)).toString('base64') })
      } catch (error) {
        return err({ reason: reasonOf(error), name })
      }
    },
    async exportFile(input) {
      if (dialogs === undefined) return files.exportNamed(input)
      const path = await dialogs.saveExport(info.folder, input.name, input.kind)
      return path === null ? canceled : files.exportPath(path, Buffer.from(input.base64, 'base64'))
    },
    async print() {
      if (dialogs === undefined) return notHere
      return (await dialogs.print()) ? ok({}) : canceled
    },
    async forecast({ latDeg, lonDeg }) {
      const made = await (info.askForecast ?? fetchForecast)(latDeg, lonDeg)
      if (!made.ok) return ok({ outcome: 'none', reason: String(made.error[0]?.values.reason ?? 'no answer') })
      const { hours, source, fetchedMs, ageMs } = made.value
      const fetchedAt = new Date(fetchedMs).toISOString()
      return ok({ outcome: 'hours', hours: [...hours], source, fetchedAt, ageMin: ageMs / 60_000 })
    },
    async keepTheme({ theme }) {
      await files.keepTheme(theme)
      return ok({})
    },
    async tellState(state) {
      info.tellState?.(state)
      return ok({})
    },
  }
}
