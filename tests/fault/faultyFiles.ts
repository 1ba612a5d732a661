import { type FileLayer, type FreshFile, nodeFiles } from '../../electron/files/fileLayer'

export interface Fault {
  /** The code the failing operation rejects with; `short`: a write reports success with half the bytes on the disk. */
  readonly code: string
  /** Whether the operation is done before it is reported as failed. */
  readonly done: 'before' | 'after'
  readonly lasts: 'once' | 'for good'
}

export interface FaultyFiles {
  readonly layer: FileLayer
  /** Operations asked for so far, by name. */
  readonly asked: readonly string[]
}

/** The real disk, except that operation number `failing` (from 0) and, for good, all after it go wrong. */
export function faultyFiles(failing: number, { code, done, lasts }: Fault): FaultyFiles {
  const asked: string[] = []
  const operate = async <T>(name: string, action: () => Promise<T>, half?: () => Promise<T>): Promise<T> => {
    const number = asked.push(name) - 1
    const fails = lasts === 'once' ? number === failing : number >= failing
    if (!fails) return action()
    if (code === 'short') return half === undefined ? action() : half()
    if (done === 'after') await action()
    throw Object.assign(new Error(`${code}: injected into ${name}`), { code })
  }
  const layer: FileLayer = {
    create: async (path, mode) => {
      let made: FreshFile | undefined
      const file = await operate('create', async () => (made = await nodeFiles.create(path, mode))).catch(
        async error => {
          await made?.close()
          throw error
        },
      )
      return {
        write: bytes =>
          operate(
            'write',
            () => file.write(bytes),
            () => file.write(bytes.subarray(0, bytes.length >> 1)),
          ),
        sync: () => operate('sync', () => file.sync()),
        facts: () => operate('fileFacts', () => file.facts()),
        // The handle is always given back: the test process must not run out of them.
        close: async () => {
          await file.close()
          await operate('close', async () => {})
        },
      }
    },
    read: path => operate('read', () => nodeFiles.read(path)),
    facts: path => operate('facts', () => nodeFiles.facts(path)),
    follow: path => operate('follow', () => nodeFiles.follow(path)),
    mayWrite: path => operate('mayWrite', () => nodeFiles.mayWrite(path)),
    rename: (from, to) => operate('rename', () => nodeFiles.rename(from, to)),
    remove: path => operate('remove', () => nodeFiles.remove(path)),
    list: folder => operate('list', () => nodeFiles.list(folder)),
    makeFolder: folder => operate('makeFolder', () => nodeFiles.makeFolder(folder)),
    syncFolder: folder => operate('syncFolder', () => nodeFiles.syncFolder(folder)),
  }
  return { layer, asked }
}
