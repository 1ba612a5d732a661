import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { serializeSite } from '../../core/document/serializeSite'
import { type FileLayer, nodeFiles } from '../../electron/files/fileLayer'
import { type SiteFiles, siteFiles } from '../../electron/files/siteFiles'
import type { Site } from '../../shared/document/site'
import { patio } from './bigSite'

const deadPid = 2 ** 30

export interface HostFolders {
  readonly root: string
  readonly folder: string
  readonly dataFolder: string
  /** A program over these folders; a `crashed` one leaves its recoveries as a dead process does. */
  start(options?: { layer?: FileLayer; confined?: boolean; crashed?: boolean; now?: () => Date }): SiteFiles
  put(name: string, text: string): string
  remove(): void
}

export function hostFolders(): HostFolders {
  const root = mkdtempSync(join(tmpdir(), 'host-'))
  const folder = join(root, 'documents')
  const dataFolder = join(root, 'data')
  return {
    root,
    folder,
    dataFolder,
    start: ({ layer = nodeFiles, confined = false, crashed = false, now = tick() } = {}) =>
      siteFiles({
        layer,
        folder,
        dataFolder,
        samplesFolder: 'samples',
        now,
        dayOf: at => at.toISOString().slice(0, 10),
        confined,
        pause: async () => {},
        ...(crashed ? { pid: deadPid } : {}),
      }),
    put(name, text) {
      mkdirSync(folder, { recursive: true })
      writeFileSync(join(folder, name), text)
      return join(folder, name)
    },
    remove: () => rmSync(root, { recursive: true, force: true }),
  }
}

/** A clock that goes on by a second each time it is read. */
function tick(): () => Date {
  let at = Date.UTC(2026, 6, 14, 8)
  return () => new Date((at += 1000))
}

export const siteText = (name: string, changes: Partial<Site> = {}) => serializeSite({ ...patio(), name, ...changes })

/** The value of an answer that must not have failed. */
export function mustHave<T>(answer: { ok: true; value: T } | { ok: false; error: unknown }): T {
  if (!answer.ok) throw new Error(`failed: ${JSON.stringify(answer.error)}`)
  return answer.value
}
