import { join } from 'node:path'
import * as z from 'zod/mini'
import { HostTheme } from '../../shared/host'
import type { FileLayer } from './fileLayer'
import { type Pause, replaceFile } from './replaceFile'

const Settings = z.strictObject({ format: z.literal('slabwright-settings'), theme: HostTheme })
export type KeptTheme = z.infer<typeof HostTheme>

export interface SettingsFile {
  /** Null where none was kept, or what was kept cannot be read. */
  theme(): Promise<KeptTheme | null>
  /** Never fails: a theme that could not be kept is chosen again. */
  keepTheme(theme: KeptTheme): Promise<void>
}

/** What the program remembers of how it is looked at, apart from any site. */
export function settingsFile(layer: FileLayer, folder: string, pause?: Pause): SettingsFile {
  const file = join(folder, 'settings.json')
  return {
    async theme() {
      try {
        return Settings.parse(JSON.parse(Buffer.from(await layer.read(file)).toString('utf8'))).theme
      } catch {
        return null
      }
    },
    async keepTheme(theme) {
      await layer.makeFolder(folder).catch(() => {})
      const text = `${JSON.stringify({ format: 'slabwright-settings', theme } satisfies z.infer<typeof Settings>)}\n`
      await replaceFile(layer, file, Buffer.from(text), { pause })
    },
  }
}
