import { spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { alone, putInPlace } from '../../scripts/build.mjs'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'build-'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

describe('the page that is built aside', () => {
  it('takes the place of the old one whole, and leaves nothing beside it', () => {
    for (const name of ['fresh', 'page']) mkdirSync(join(folder, name))
    writeFileSync(join(folder, 'page', 'old.js'), 'old')
    writeFileSync(join(folder, 'fresh', 'new.js'), 'new')
    putInPlace(join(folder, 'fresh'), join(folder, 'page'))
    expect(readdirSync(folder)).toEqual(['page'])
    expect(readdirSync(join(folder, 'page'))).toEqual(['new.js'])
  })

  it.each(['free', 'left by a process that has ended'])(
    'is built by one process at a time, the lock %s',
    async found => {
      if (found !== 'free') writeFileSync(join(folder, 'lock'), String(spawnSync(process.execPath, ['-e', '']).pid))
      const script = [
        `import { alone } from ${JSON.stringify(pathToFileURL('scripts/build.mjs').href)}`,
        "import { appendFileSync } from 'node:fs'",
        `const log = ${JSON.stringify(join(folder, 'log'))}`,
        `await alone(${JSON.stringify(join(folder, 'lock'))}, async () => {`,
        "  appendFileSync(log, 'in ')",
        '  await new Promise(wake => setTimeout(wake, 150))',
        "  appendFileSync(log, 'out ')",
        '})',
      ].join('\n')
      const runs = Array.from({ length: 3 }, () => spawn(process.execPath, ['--input-type=module', '-e', script]))
      expect(await Promise.all(runs.map(async run => (await once(run, 'exit'))[0]))).toEqual([0, 0, 0])
      expect(readFileSync(join(folder, 'log'), 'utf8')).toBe('in out in out in out ')
      expect(readdirSync(folder)).toEqual(['log'])
    },
  )

  it('gives the lock back when the build fails', async () => {
    const lock = join(folder, 'lock')
    await expect(
      alone(lock, async () => {
        throw new Error('no build')
      }),
    ).rejects.toThrow('no build')
    expect(existsSync(lock)).toBe(false)
  })
})
