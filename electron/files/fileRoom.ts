/** What all windows of one program share of the files. */
import { join } from 'node:path'
import type { FileLayer } from './fileLayer'
import { type VersionShelf, versionShelf } from './keptVersions'
import type { OpenDocument } from './openDocuments'
import { type OpenLocks, openLocks } from './openLocks'
import { queueByKey } from './queueByKey'
import { type RecentFiles, recentFiles } from './recentFiles'
import { type RecoveryArea, recoveryArea } from './recoveryArea'
import type { Pause } from './replaceFile'
import { type SampleShelf, sampleShelf } from './sampleShelf'
import { type SettingsFile, settingsFile } from './settingsFile'
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

export interface FileRoom extends Pick<SiteFilesOptions, 'layer' | 'folder' | 'confined' | 'now' | 'pause'> {
  readonly documents: Map<string, OpenDocument>
  readonly recent: RecentFiles
  readonly settings: SettingsFile
  readonly recovery: RecoveryArea
  readonly recoveryFolder: string
  readonly versions: VersionShelf
  readonly locks: OpenLocks
  readonly samples: SampleShelf
  /** One after the other at one path; at others side by side. */
  atPath<T>(path: string, action: () => Promise<T>): Promise<T>
  /** One after the other for the recovered work of one document. */
  atRecovery<T>(docId: string, action: () => Promise<T>): Promise<T>
  /** The folder where sites are saved, by the path a link leads to. */
  home(): Promise<string>
  /** Takes away what writers left behind that were cut off, once for each folder. */
  sweepOnce(folder: string): Promise<void>
}

export function fileRoom(options: SiteFilesOptions): FileRoom {
  const { layer, folder, dataFolder, samplesFolder, now, dayOf, confined, pid, pause } = options
  const queue = queueByKey()
  const swept = new Set<string>()
  const recent = recentFiles(layer, dataFolder, pause)
  const settings = settingsFile(layer, dataFolder, pause)
  const recoveryFolder = join(dataFolder, 'recovery')
  return {
    ...{ layer, folder, confined, now, recoveryFolder },
    ...(pause === undefined ? {} : { pause }),
    documents: new Map(),
    recent: {
      list: () => queue('recent', recent.list),
      add: (path, at) => queue('recent', () => recent.add(path, at)),
      forget: path => queue('recent', () => recent.forget(path)),
    },
    settings: {
      theme: () => queue('settings', settings.theme),
      keepTheme: theme => queue('settings', () => settings.keepTheme(theme)),
    },
    recovery: recoveryArea(layer, recoveryFolder, { pid, pause }),
    versions: versionShelf(layer, join(dataFolder, 'versions'), at => dayOf(new Date(at)), pause),
    locks: openLocks(layer, join(dataFolder, 'locks'), pid),
    samples: sampleShelf(layer, samplesFolder),
    atPath: (path, action) => queue(`path ${path}`, action),
    atRecovery: (docId, action) => queue(`recovery ${docId}`, action),
    home: () => layer.follow(folder).catch(() => folder),
    async sweepOnce(where) {
      if (swept.has(where)) return
      swept.add(where)
      await sweepTemps(layer, where, now().getTime())
    },
  }
}
