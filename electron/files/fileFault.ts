import { basename } from 'node:path'
import type { FileFailure, FileReason } from '../../shared/host'
import { err } from '../../shared/problem'
import { codeOf } from './fileLayer'

const reasons: Readonly<Record<string, FileReason>> = {
  ENOSPC: 'diskFull',
  EDQUOT: 'diskFull',
  EFBIG: 'diskFull',
  EROFS: 'readOnly',
  EACCES: 'noPermission',
  EPERM: 'noPermission',
  EBUSY: 'inUse',
  ETXTBSY: 'inUse',
  ENOENT: 'vanished',
  ENOTDIR: 'vanished',
  ENAMETOOLONG: 'nameRefused',
  EINVAL: 'nameRefused',
  EISDIR: 'notAFile',
  EEXIST: 'exists',
}

/** What a refused operation means to the user. */
export function reasonOf(error: unknown): FileReason {
  return error instanceof ShortWrite ? 'diskFull' : (reasons[codeOf(error)] ?? 'driveFault')
}

/** The system said all was written, and it was not. */
export class ShortWrite extends Error {
  constructor(wrote: number, wanted: number) {
    super(`${wrote} of ${wanted} bytes reached the disk`)
  }
}

/** Refusals that often pass by themselves: another program looks at the file, the drive stumbles. */
export function mayPass(error: unknown): boolean {
  return ['EBUSY', 'EPERM', 'EACCES', 'EAGAIN', 'EINTR', 'EMFILE', 'ENFILE', 'ETXTBSY', 'EIO', 'EEXIST'].includes(
    codeOf(error),
  )
}

/** The answer to what could not be done; of a path only the name is told. */
export const failed = (reason: FileReason, path?: string): { ok: false; error: FileFailure } =>
  err(path === undefined ? { reason } : { reason, name: basename(path) })
