import { join } from 'node:path'
import * as z from 'zod/mini'
import type { FileLayer } from './fileLayer'
import { isRunning } from './isRunning'
import { type Pause, type ReplaceReport, replaceFile } from './replaceFile'

const Head = z.strictObject({
  format: z.literal('slabwright-recovery'),
  title: z.string(),
  /** Where the work belongs; null while it was never saved. */
  path: z.nullable(z.string()),
  savedAt: z.iso.datetime(),
  pid: z.number(),
  bytes: z.number(),
})
export type RecoveryHead = z.infer<typeof Head>

export interface LeftWork {
  readonly recoveryId: string
  readonly head: RecoveryHead
}

export interface RecoveryArea {
  write(recoveryId: string, head: Omit<RecoveryHead, 'format' | 'pid' | 'bytes'>, text: string): Promise<ReplaceReport>
  /** What was left behind: by programs that no longer run, and here by documents no longer open. Newest first. */
  listLeft(isOpen: (recoveryId: string) => boolean): Promise<LeftWork[]>
  read(recoveryId: string): Promise<{ head: RecoveryHead; text: string }>
  remove(recoveryId: string): Promise<void>
}

/**
 * Unsaved work, one file for each open document: a line that says whose it is, then the text of the site. One file, so
 * that both are old or both are new.
 */
export function recoveryArea(
  layer: FileLayer,
  folder: string,
  { pid = process.pid, pause }: { pid?: number | undefined; pause?: Pause | undefined } = {},
): RecoveryArea {
  const pathOf = (recoveryId: string) => join(folder, `${recoveryId}.recovery`)
  const read = async (recoveryId: string) => {
    const all = Buffer.from(await layer.read(pathOf(recoveryId)))
    const end = all.indexOf('\n')
    const head = Head.parse(JSON.parse(all.subarray(0, end).toString('utf8')))
    const body = all.subarray(end + 1)
    if (body.byteLength !== head.bytes) throw new Error('a recovery file was cut short')
    return { head, text: body.toString('utf8') }
  }
  return {
    read,
    async write(recoveryId, head, text) {
      const body = Buffer.from(text, 'utf8')
      const line = JSON.stringify({
        format: 'slabwright-recovery',
        ...head,
        pid,
        bytes: body.byteLength,
      } satisfies RecoveryHead)
      await layer.makeFolder(folder).catch(() => {})
      return replaceFile(layer, pathOf(recoveryId), Buffer.concat([Buffer.from(`${line}\n`), body]), { pause })
    },
    async listLeft(isOpen) {
      const left: LeftWork[] = []
      for (const name of await layer.list(folder).catch(() => [])) {
        if (!name.endsWith('.recovery')) continue
        const recoveryId = name.slice(0, -'.recovery'.length)
        const found = await read(recoveryId).catch(() => null)
        // One that cannot be understood is left alone: it may be another version's.
        if (found === null) continue
        const isHeld = found.head.pid === pid ? isOpen(recoveryId) : isRunning(found.head.pid)
        if (!isHeld) left.push({ recoveryId, head: found.head })
      }
      return left.sort((a, b) => (a.head.savedAt < b.head.savedAt ? 1 : -1))
    },
    async remove(recoveryId) {
      await layer.remove(pathOf(recoveryId)).catch(() => {})
    },
  }
}
