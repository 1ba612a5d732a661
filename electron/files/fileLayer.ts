import { type BigIntStats, constants } from 'node:fs'
import { access, lstat, mkdir, open, readdir, readFile, realpath, rename, stat, unlink } from 'node:fs/promises'

export interface FileFacts {
  readonly bytes: number
  readonly changedMs: number
  readonly kind: 'file' | 'folder' | 'link' | 'other'
  /** Permission bits. */
  readonly mode: number
  /** The same file has the same identity, whatever it is called. */
  readonly identity: string
}

export interface FreshFile {
  write(bytes: Uint8Array): Promise<void>
  sync(): Promise<void>
  facts(): Promise<FileFacts>
  close(): Promise<void>
}

/** The few things done to the disk, so that tests can make each of them fail. Every member rejects with a code. */
export interface FileLayer {
  /** Makes a file that must not exist yet. */
  create(path: string, mode: number): Promise<FreshFile>
  read(path: string): Promise<Uint8Array>
  /** Facts about the path itself; a link is not followed. Null when nothing is there. */
  facts(path: string): Promise<FileFacts | null>
  /** Where the path leads once every link in it is followed. */
  follow(path: string): Promise<string>
  mayWrite(path: string): Promise<boolean>
  rename(from: string, to: string): Promise<void>
  remove(path: string): Promise<void>
  list(folder: string): Promise<string[]>
  makeFolder(folder: string): Promise<void>
  /** Makes a rename in the folder last; does nothing where the system keeps no such promise to be asked for. */
  syncFolder(folder: string): Promise<void>
}

// Big integers: an identity on some drives does not fit a double.
const factsOf = (found: BigIntStats): FileFacts => ({
  bytes: Number(found.size),
  changedMs: Number(found.mtimeMs),
  kind: found.isSymbolicLink() ? 'link' : found.isFile() ? 'file' : found.isDirectory() ? 'folder' : 'other',
  mode: Number(found.mode) & 0o777,
  identity: `${found.dev}:${found.ino}`,
})

export const nodeFiles: FileLayer = {
  async create(path, mode) {
    const handle = await open(path, 'wx', mode)
    return {
      write: bytes => handle.writeFile(bytes),
      sync: () => handle.sync(),
      facts: async () => factsOf(await handle.stat({ bigint: true })),
      close: () => handle.close(),
    }
  },
  read: path => readFile(path),
  async facts(path) {
    try {
      return factsOf(await lstat(path, { bigint: true }))
    } catch (error) {
      if (codeOf(error) === 'ENOENT') return null
      throw error
    }
  },
  follow: path => realpath(path),
  async mayWrite(path) {
    try {
      await access(path, constants.W_OK)
    } catch {
      return false
    }
    // The all-powerful user may write everything; the owner's wish is in the bits.
    return ((await stat(path)).mode & 0o222) !== 0
  },
  rename,
  remove: unlink,
  list: folder => readdir(folder),
  async makeFolder(folder) {
    await mkdir(folder, { recursive: true })
  },
  async syncFolder(folder) {
    if (process.platform === 'win32') return
    const handle = await open(folder, 'r')
    try {
      await handle.sync()
    } finally {
      await handle.close()
    }
  },
}

/** The system's code of an error, such as ENOSPC, else the empty string. */
export function codeOf(error: unknown): string {
  return typeof error === 'object' && error !== null && 'code' in error && typeof error.code === 'string'
    ? error.code
    : ''
}
