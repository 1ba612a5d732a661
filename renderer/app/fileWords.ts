/** All that the page says of files: whether the work is kept, and what went wrong. */
import type { Site } from '../../shared/document/site'
import type { FileFailure, FileReason, SaveReport } from '../../shared/host'
import { fileStem } from './fileStem'
import { printClock } from './printClock'

const words: Readonly<Record<FileReason, string>> = {
  diskFull: 'The drive is full. Make room and save again.',
  readOnly: 'The file may not be changed. Save it under another name.',
  noPermission: 'This program may not write there. Save it under another name or in another folder.',
  inUse: 'Another program holds the file. Close it there and save again.',
  openElsewhere: 'The file is open in another window. Here it can be looked at, or saved under another name.',
  vanished: 'The file is not there any more. Saving again puts it back.',
  changedOutside: 'Another program changed the file since it was opened.',
  exists: 'A file of that name is there already.',
  nameRefused: 'That name cannot be used for a file: leave out / \\ : * ? " < > |, and let it begin with no dot.',
  notAFile: 'That is not a file.',
  fileTooLarge: 'The file is too large to open.',
  notText: 'The file is not a site.',
  wouldNotOpen: 'What was to be saved would not open again, so it was not written.',
  driveFault: 'The drive reported a fault.',
  unknownId: 'That file was not opened here.',
  untitled: 'The site has no file yet. Give it a name.',
  canceled: 'Left as it was.',
  notHere: 'This page has no files of its own. Start the program to open and keep them.',
  hostGone: 'The program behind this page has ended. Start it again: what was kept is offered there.',
}

export const fileWords = ({ reason, name }: FileFailure): string =>
  name === undefined ? words[reason] : `${fileStem(name)}: ${words[reason]}`

/** How the last attempt to write went wrong, as far as the page was told. */
export interface WriteTrouble {
  /** The file the user saves to, one that was to be made, or the area where unsaved work is kept by itself. */
  readonly where: 'file' | 'newFile' | 'recovery'
  readonly outcome: Exclude<SaveReport['outcome'], 'saved'>
  readonly failure: FileFailure
}

const withoutOldFile: ReadonlySet<FileReason> = new Set(['untitled', 'nameRefused', 'unknownId', 'vanished'])

/** What went wrong, what stands now, what to do. */
export function troubleWords({ where, outcome, failure }: WriteTrouble): string {
  const why = fileWords(failure)
  if (failure.reason === 'hostGone') return why
  if (outcome === 'unsure')
    return `Not sure it is saved. The drive stopped answering at the last step: the file is all as before or all new. Save again, or under another name. ${why}`
  if (where === 'recovery') return `Your last changes are not kept yet. ${why}`
  const isOldWhole = where === 'file' && !withoutOldFile.has(failure.reason)
  return isOldWhole ? `Not saved; the old file is whole. ${why}` : `Not saved. ${why}`
}

/** What a save left undone although the file is written; null where all of it was done. */
export function savedWithWords({
  folderSynced,
  versionKept,
}: Extract<SaveReport, { outcome: 'saved' }>): string | null {
  const undone = [
    ...(folderSynced
      ? []
      : ['Saved, but the drive did not confirm it. Keep the computer and the drive on a little, then save again.']),
    ...(versionKept ? [] : ['Saved, but no version was kept to go back to. See whether the drive is full.']),
  ]
  return undone.length === 0 ? null : undone.join(' ')
}

export interface KeptFacts {
  readonly committed: Site | null
  readonly kept: Site | null
  readonly keptAt: string | null
  readonly filed: Site | null
  readonly filedAt: string | null
  readonly fileName: string | null
  readonly readOnly: 'openElsewhere' | 'readOnly' | null
  readonly trouble: WriteTrouble | null
}

/** One short line on whether the document is kept: "Kept 9:31 am in yard". */
export function keptWords({ committed, kept, keptAt, filed, filedAt, fileName, readOnly, trouble }: KeptFacts): string {
  if (trouble?.failure.reason === 'hostGone') return 'Nothing is kept any more'
  if (trouble) return trouble.outcome === 'unsure' ? 'Not sure it is saved' : 'Not saved'
  if (committed === filed && filedAt !== null) {
    return `Kept ${printClock(new Date(filedAt))}${fileName === null ? '' : ` in ${fileStem(fileName)}`}`
  }
  if (readOnly !== null && committed === filed) return 'Only to look at'
  const where =
    fileName === null ? 'in no file yet' : readOnly === null ? 'not in the file yet' : 'in no file of its own'
  if (committed === kept && keptAt !== null) return `Kept ${printClock(new Date(keptAt))}, ${where}`
  if (committed === filed) return fileName === null ? 'Nothing to keep yet' : 'As it was opened'
  return committed === kept ? `Kept, ${where}` : 'Not kept yet'
}
