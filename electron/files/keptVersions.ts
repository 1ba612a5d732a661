import { createHash } from 'node:crypto'
import { join } from 'node:path'
import type { FileLayer } from './fileLayer'
import { type Pause, replaceFile } from './replaceFile'

export interface KeptVersion {
  /** `20260714T081500123Z-1f3a…`: when it was saved and the start of its digest. */
  readonly versionId: string
  readonly savedAt: string
}

const newest = 20
const idPattern = /^(\d{4})(\d{2})(\d{2})T(\d{2})(\d{2})(\d{2})(\d{3})Z-([0-9a-f]{16})$/

/**
 * Which versions to let go: all but the newest twenty and the last of each day. `dayOf` says on which local day an
 * instant fell.
 */
export function versionsToDrop(versions: readonly KeptVersion[], dayOf: (savedAt: string) => string): KeptVersion[] {
  const falling = [...versions].sort((a, b) => (a.versionId < b.versionId ? 1 : -1))
  const days = new Set<string>()
  return falling.filter(({ savedAt }, rank) => {
    const day = dayOf(savedAt)
    const isLastOfDay = !days.has(day)
    days.add(day)
    return rank >= newest && !isLastOfDay
  })
}

export interface VersionShelf {
  /** Newest first. */
  list(path: string): Promise<(KeptVersion & { readonly bytes: number })[]>
  read(path: string, versionId: string): Promise<Uint8Array>
  /** Keeps `bytes` unless the newest version holds the same. False when it could not be kept. */
  keep(path: string, bytes: Uint8Array, at: Date): Promise<boolean>
}

/** Kept versions of site files, each whole and readable by itself, in a folder per file. */
export function versionShelf(
  layer: FileLayer,
  folder: string,
  dayOf: (savedAt: string) => string,
  pause?: Pause,
): VersionShelf {
  const shelfOf = (path: string) => join(folder, digest(Buffer.from(path)))
  const named = async (path: string) =>
    (await layer.list(shelfOf(path)).catch(() => []))
      .map(readName)
      .filter(version => version !== null)
      .sort((a, b) => (a.versionId < b.versionId ? 1 : -1))
  return {
    async list(path) {
      const rows = await named(path)
      const sizes = await Promise.all(
        rows.map(({ versionId }) => layer.facts(join(shelfOf(path), fileNameOf(versionId))).catch(() => null)),
      )
      return rows.flatMap((row, index) => {
        const facts = sizes[index]
        return facts === null || facts === undefined ? [] : [{ ...row, bytes: facts.bytes }]
      })
    },
    read: (path, versionId) => layer.read(join(shelfOf(path), fileNameOf(versionId))),
    async keep(path, bytes, at) {
      const shelf = shelfOf(path)
      const before = await named(path)
      const mark = digest(bytes)
      if (before[0]?.versionId.endsWith(mark)) return true
      const versionId = `${at.toISOString().replace(/[-:.]/g, '')}-${mark}`
      const made = await layer.makeFolder(shelf).then(
        () => true,
        () => false,
      )
      if (!made) return false
      const report = await replaceFile(layer, join(shelf, fileNameOf(versionId)), bytes, { pause })
      if (!report.replaced) return false
      for (const old of versionsToDrop(await named(path), dayOf)) {
        await layer.remove(join(shelf, fileNameOf(old.versionId))).catch(() => {})
      }
      return true
    },
  }
}

const digest = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex').slice(0, 16)
const fileNameOf = (versionId: string) => `${versionId}.slabwright.json`

function readName(name: string): KeptVersion | null {
  const versionId = name.replace(/\.slabwright\.json$/, '')
  const parts = idPattern.exec(versionId)
  if (parts === null || versionId === name) return null
  const [, year, month, day, hour, minute, second, ms] = parts
  return { versionId, savedAt: `${year}-${month}-${day}T${hour}:${minute}:${second}.${ms}Z` }
}
