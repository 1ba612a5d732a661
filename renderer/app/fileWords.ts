import type { FileFailure, FileReason } from '../../shared/host'

const words: Readonly<Record<FileReason, string>> = {
  diskFull: 'The drive is full. Nothing was written; make room and save again.',
  readOnly: 'The file may not be changed. Save it under another name.',
  noPermission: 'This program may not write there. Save it under another name or in another folder.',
  inUse: 'Another program holds the file. Close it there and save again.',
  openElsewhere: 'The file is open in another window. It can be looked at here, or saved under another name.',
  vanished: 'The file is not there any more.',
  changedOutside: 'Another program changed the file since it was opened.',
  exists: 'A file of that name is there already.',
  nameRefused: 'That name cannot be used for a file.',
  notAFile: 'That is not a file.',
  fileTooLarge: 'The file is too large to open.',
  notText: 'The file is not a site.',
  wouldNotOpen: 'The file could not be opened.',
  driveFault: 'The drive reported a fault.',
  unknownId: 'That file was not opened here.',
  untitled: 'The site has no file yet. Give it a name.',
  canceled: 'Left as it was.',
  notHere: 'This page has no files of its own. Start the program to open and keep them.',
  hostGone: 'The program behind this page has ended. Start it again: what was kept is offered there.',
}

export const fileWords = ({ reason, name }: FileFailure): string =>
  name === undefined ? words[reason] : `${name}: ${words[reason]}`
