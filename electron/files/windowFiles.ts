import type { HostAnswer, HostInput, HostOutput, OpenedSite, SaveReport } from '../../shared/host'
import type { KeptTheme } from './settingsFile'

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
