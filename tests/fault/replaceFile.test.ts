import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { nodeFiles } from '../../electron/files/fileLayer'
import { replaceFile } from '../../electron/files/replaceFile'
import { type Fault, faultyFiles } from './faultyFiles'

const old = Buffer.from('old '.repeat(1000))
const fresh = Buffer.from('fresh '.repeat(2000))
const pause = async () => {}
const far = Number.POSITIVE_INFINITY
const calm: Fault = { code: 'EIO', done: 'before', lasts: 'once' }

let folder: string
let path: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'replace-'))
  path = join(folder, 'yard.slabwright.json')
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

const codes = ['EIO', 'ENOSPC', 'EACCES', 'EPERM', 'EBUSY', 'EROFS', 'EMFILE', 'ENOENT', 'EDQUOT', 'short'] as const
const faults = codes.flatMap(code =>
  (['before', 'after'] as const).flatMap(done =>
    (['once', 'for good'] as const).map((lasts): Fault => ({ code, done, lasts })),
  ),
)

describe('replacing a file', () => {
  it('writes, syncs and counts before it renames, and syncs the folder after', async () => {
    writeFileSync(path, old)
    const { layer, asked } = faultyFiles(far, calm)
    const report = await replaceFile(layer, path, fresh, { pause })
    expect(report).toMatchObject({ replaced: true, folderSynced: true, facts: { bytes: fresh.length } })
    expect(asked).toEqual(['create', 'write', 'sync', 'fileFacts', 'close', 'rename', 'syncFolder'])
    expect(readFileSync(path)).toEqual(fresh)
    expect(readdirSync(folder)).toHaveLength(1)
  })

  it('makes a file that was not there, with the mode asked for', async () => {
    await replaceFile(nodeFiles, path, fresh, { mode: 0o640 })
    expect(readFileSync(path)).toEqual(fresh)
    if (process.platform !== 'win32') expect(statSync(path).mode & 0o777).toBe(0o640)
  })

  it.each(faults)('is all old or all new and tells which: $code, $done it is done, $lasts', async fault => {
    let failing = 0
    for (; ; failing += 1) {
      writeFileSync(path, old)
      const { layer, asked } = faultyFiles(failing, fault)
      const report = await replaceFile(layer, path, fresh, { pause })
      const now = readFileSync(path)
      const state = `${fault.code} at ${failing} (${asked[failing]}): ${JSON.stringify(report)}`
      expect(now.equals(old) || now.equals(fresh), state).toBe(true)
      if (report.replaced) expect(now.equals(fresh), state).toBe(true)
      else if (report.sure) expect(now.equals(old), state).toBe(true)
      else expect(fault.lasts, state).toBe('for good')
      if (asked.length <= failing) break
      // What can be cleared away is: only a drive that refuses for good leaves a part behind.
      if (fault.lasts === 'once') {
        const left = readdirSync(folder).filter(name => name.endsWith('.slabwright-part'))
        expect(left.length, state).toBeLessThanOrEqual(asked[failing] === 'remove' ? 1 : 0)
      }
      for (const name of readdirSync(folder)) rmSync(join(folder, name))
    }
    expect(failing).toBeGreaterThanOrEqual(7)
  })

  it.each(['EIO', 'EBUSY', 'EACCES', 'EPERM', 'EMFILE'])('gets over one %s by trying again', async code => {
    for (let failing = 0; failing < 7; failing += 1) {
      writeFileSync(path, old)
      const { layer } = faultyFiles(failing, { code, done: 'before', lasts: 'once' })
      expect(await replaceFile(layer, path, fresh, { pause })).toMatchObject({ replaced: true, folderSynced: true })
    }
  })

  it('says so when the folder cannot be synced', async () => {
    writeFileSync(path, old)
    const { layer } = faultyFiles(6, { code: 'EINVAL', done: 'before', lasts: 'for good' })
    expect(await replaceFile(layer, path, fresh, { pause })).toMatchObject({ replaced: true, folderSynced: false })
  })

  it.each([
    ['ENOSPC', 'diskFull'],
    ['EDQUOT', 'diskFull'],
    ['short', 'diskFull'],
    ['EROFS', 'readOnly'],
    ['EACCES', 'noPermission'],
    ['EBUSY', 'inUse'],
    ['EIO', 'driveFault'],
  ])('tells %s as %s, the old file whole', async (code, reason) => {
    writeFileSync(path, old)
    const { layer } = faultyFiles(1, { code, done: 'before', lasts: 'for good' })
    expect(await replaceFile(layer, path, fresh, { pause })).toMatchObject({ replaced: false, reason })
    expect(readFileSync(path)).toEqual(old)
  })

  it('pauses longer each time, and not at all for a full drive', async () => {
    const pauses: number[] = []
    const note = async (ms: number) => pauses.push(ms)
    await replaceFile(faultyFiles(0, { code: 'EBUSY', done: 'before', lasts: 'for good' }).layer, path, fresh, {
      pause: note,
    })
    expect(pauses).toEqual([20, 80, 320])
    pauses.length = 0
    await replaceFile(faultyFiles(0, { code: 'ENOSPC', done: 'before', lasts: 'for good' }).layer, path, fresh, {
      pause: note,
    })
    expect(pauses).toEqual([])
  })
})
