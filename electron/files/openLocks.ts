import { createHash } from 'node:crypto'
import { join } from 'node:path'
import * as z from 'zod/mini'
import { codeOf, type FileLayer } from './fileLayer'
import { isRunning } from './isRunning'

const Lock = z.strictObject({ pid: z.number(), path: z.string() })

export interface OpenLocks {
  /** True when the file is now ours to save; false when another window has it. */
  take(path: string, docId: string): Promise<boolean>
  release(path: string, docId: string): Promise<void>
}

/**
 * Who has a file open for saving: within this program by document, between programs by a lock file that outlives no
 * process. Where the lock file cannot be written the file is treated as ours: a full drive must not keep anyone out.
 */
export function openLocks(layer: FileLayer, folder: string, pid = process.pid): OpenLocks {
  const holders = new Map<string, string>()
  const pathOf = (path: string) => join(folder, `${createHash('sha256').update(path).digest('hex').slice(0, 16)}.lock`)
  const create = async (path: string) => {
    const file = await layer.create(pathOf(path), 0o644)
    try {
      await file.write(Buffer.from(JSON.stringify({ pid, path })))
    } finally {
      await file.close()
    }
  }
  const isHeldElsewhere = async (path: string) => {
    try {
      const { pid: holder } = Lock.parse(JSON.parse(Buffer.from(await layer.read(pathOf(path))).toString('utf8')))
      return holder !== pid && isRunning(holder)
    } catch {
      return false
    }
  }
  return {
    async take(path, docId) {
      const holder = holders.get(path)
      if (holder !== undefined) return holder === docId
      holders.set(path, docId)
      try {
        await layer.makeFolder(folder)
        await create(path)
      } catch (error) {
        if (codeOf(error) !== 'EEXIST') return true
        if (await isHeldElsewhere(path)) {
          holders.delete(path)
          return false
        }
        await layer.remove(pathOf(path)).catch(() => {})
        await create(path).catch(() => {})
      }
      return true
    },
    async release(path, docId) {
      if (holders.get(path) !== docId) return
      holders.delete(path)
      await layer.remove(pathOf(path)).catch(() => {})
    },
  }
}
