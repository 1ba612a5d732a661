/** The files a window offers to open, each under an id of its own: a page never names a path. */
import { createHash } from 'node:crypto'
import { basename, dirname, join } from 'node:path'
import { plainName, siteEnding, titleOf } from './fileNames'
import type { FileRoom } from './fileRoom'
import type { WindowFiles } from './windowFiles'

export interface FileLists extends Pick<WindowFiles, 'listRecent' | 'listFolder'> {
  /** Undefined for an id that no list has. */
  pathOf(fileId: string): Promise<string | undefined>
}

export function fileLists({ layer, folder, confined, recent, home, sweepOnce }: FileRoom): FileLists {
  const pathsById = new Map<string, string>()
  const idOfPath = (path: string) => {
    const fileId = createHash('sha256').update(path).digest('base64url').slice(0, 22)
    pathsById.set(fileId, path)
    return fileId
  }
  const sitePaths = async () => {
    const names = await layer.list(folder).catch(() => [])
    return names
      .filter(name => name.toLowerCase().endsWith(siteEnding) && plainName(name) === name)
      .map(name => join(folder, name))
  }
  const lists: FileLists = {
    async listRecent() {
      const entries = await recent.list()
      const real = await home()
      return Promise.all(
        entries
          .filter(({ path }) => !confined || dirname(path) === real)
          .map(async ({ path, openedAt }) => ({
            fileId: idOfPath(path),
            name: titleOf(basename(path)),
            openedAt,
            missing: (await layer.facts(path).catch(() => null)) === null,
          })),
      )
    },
    async listFolder() {
      await sweepOnce(folder)
      const rows = await Promise.all(
        (await sitePaths()).map(async path => {
          const facts = await layer.facts(path).catch(() => null)
          if (facts?.kind !== 'file') return []
          return [
            {
              fileId: idOfPath(path),
              name: titleOf(basename(path)),
              changedAt: new Date(facts.changedMs).toISOString(),
              bytes: facts.bytes,
            },
          ]
        }),
      )
      return rows.flat().sort((a, b) => (a.changedAt < b.changedAt ? 1 : -1))
    },
    async pathOf(fileId) {
      if (!pathsById.has(fileId)) await Promise.all([lists.listRecent(), lists.listFolder()])
      return pathsById.get(fileId)
    },
  }
  return lists
}
