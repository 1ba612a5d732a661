import { join } from 'node:path'
import * as z from 'zod/mini'
import type { FileLayer } from './fileLayer'
import { type Pause, replaceFile } from './replaceFile'

const Recent = z.strictObject({
  format: z.literal('slabwright-recent'),
  files: z.array(z.strictObject({ path: z.string(), openedAt: z.iso.datetime() })),
})
export type RecentEntry = z.infer<typeof Recent>['files'][number]

const longest = 20

export interface RecentFiles {
  /** Newest first; an unreadable list is an empty one. */
  list(): Promise<RecentEntry[]>
  add(path: string, at: Date): Promise<void>
  forget(path: string): Promise<void>
}

export function recentFiles(layer: FileLayer, folder: string, pause?: Pause): RecentFiles {
  const file = join(folder, 'recent.json')
  const list = async () => {
    try {
      return Recent.parse(JSON.parse(Buffer.from(await layer.read(file)).toString('utf8'))).files
    } catch {
      return []
    }
  }
  const write = async (files: readonly RecentEntry[]) => {
    await layer.makeFolder(folder).catch(() => {})
    const text = `${JSON.stringify({ format: 'slabwright-recent', files: files.slice(0, longest) }, null, 2)}\n`
    await replaceFile(layer, file, Buffer.from(text), { pause })
  }
  return {
    list,
    async add(path, at) {
      await write([{ path, openedAt: at.toISOString() }, ...(await list()).filter(entry => entry.path !== path)])
    },
    async forget(path) {
      await write((await list()).filter(entry => entry.path !== path))
    },
  }
}
