import { spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { build } from 'esbuild'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { nodeFiles } from '../../electron/files/fileLayer'
import { sweepTemps } from '../../electron/files/sweepTemps'
import { mulberry32 } from '../geometry/mulberry32'
import { bigSiteText } from './bigSite'

let folder: string
let script: string
let basePath: string
const base = bigSiteText(0)
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'killed-'))
  script = join(folder, 'saveLoop.mjs')
  basePath = join(folder, 'base.json')
  writeFileSync(basePath, base)
  await build({
    entryPoints: ['tests/fault/saveLoop.ts'],
    bundle: true,
    platform: 'node',
    format: 'esm',
    outfile: script,
  })
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const isPart = (name: string) => name.endsWith('.slabwright-part')

/** The generation a file holds, after checking that every byte of it is there. */
function wholeGeneration(path: string): number {
  const text = readFileSync(path, 'utf8')
  const generation = Number(/"name": "Generation (\d+)"/.exec(text)?.[1])
  expect(text === base.replace('Generation 0', `Generation ${generation}`)).toBe(true)
  return generation
}

/**
 * Starts a writer of several files, kills it `afterMs` after it began, or after its first finished save, and gives each
 * file's last reported generation.
 */
async function killOne(
  paths: readonly string[],
  standing: readonly number[],
  since: 'ready' | 'saved',
  afterMs: number,
): Promise<number[]> {
  const files = paths.flatMap((path, file) => [path, String((standing[file] ?? 0) + 1)])
  const child = spawn(process.execPath, [script, basePath, 'Infinity', ...files], {
    cwd: resolve('.'),
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  const lines: string[] = []
  let isTimed = false
  child.stdout.setEncoding('utf8').on('data', (chunk: string) => {
    lines.push(chunk)
    if (!isTimed && lines.join('').includes(since)) {
      isTimed = true
      setTimeout(() => child.kill('SIGKILL'), afterMs)
    }
  })
  await once(child, 'close')
  const told = lines.join('')
  return paths.map((_path, file) => {
    const saved = [...told.matchAll(new RegExp(`^${file} (\\d+) saved$`, 'gm'))]
    return Number(saved.at(-1)?.[1] ?? standing[file])
  })
}

const kills = 20
const filesAtOnce = 6

describe('a writer of sites of 3 MB', () => {
  it(`killed in the middle of ${2 * kills * filesAtOnce} saves leaves all old or all new, and never less than it reported`, async () => {
    expect(base.length).toBeGreaterThan(3_000_000)
    const random = mulberry32(41)
    let cutShort = 0
    const series = async (lane: number) => {
      const home = mkdtempSync(join(folder, `lane${lane}-`))
      const names = Array.from({ length: filesAtOnce }, (_, file) => `yard${file}.slabwright.json`)
      const paths = names.map(name => join(home, name))
      for (const path of paths) writeFileSync(path, base)
      let standing = paths.map(() => 0)
      for (let kill = 0; kill < kills; kill += 1) {
        const reported = await killOne(paths, standing, kill % 2 === 0 ? 'ready' : 'saved', random() * 120)
        const found = paths.map(wholeGeneration)
        for (const [file, generation] of found.entries()) {
          expect(generation).toBeGreaterThanOrEqual(reported[file] ?? 0)
          expect(generation).toBeLessThanOrEqual((reported[file] ?? 0) + 1)
        }
        standing = found
        const parts = readdirSync(home).filter(isPart)
        cutShort += parts.length
        const newestMs = Math.max(...paths.map(path => statSync(path).mtimeMs))
        expect(await sweepTemps(nodeFiles, home, newestMs)).toBe(parts.length)
        expect(readdirSync(home).sort()).toEqual(names)
      }
      return standing
    }
    const standing = (await Promise.all([series(1), series(2)])).flat()
    // Otherwise the kills missed the saves, and the test says nothing.
    expect(cutShort).toBeGreaterThan(40)
    expect(standing.reduce((sum, generation) => sum + generation, 0)).toBeGreaterThanOrEqual(kills)
  }, 300_000)

  it('that may write no more than 1 MB says so, the old file whole', () => {
    // Only where a shell can set such a limit.
    if (process.platform === 'win32') return
    const path = join(folder, 'small.slabwright.json')
    writeFileSync(path, 'old')
    const limited = (before: string) =>
      spawnSync(
        'bash',
        ['-c', `${before}ulimit -f 1024; exec "$@"`, 'bash', process.execPath, script, basePath, '1', path, '1'],
        { encoding: 'utf8' },
      )
    const told = limited("trap '' XFSZ; ")
    expect(told.stdout).toBe('ready\n0 1 diskFull\n')
    expect(readFileSync(path, 'utf8')).toBe('old')
    expect(readdirSync(folder).filter(isPart)).toEqual([])
    // Without the trap the system may end the writer at the limit; the file stands all the same.
    limited('')
    expect(readFileSync(path, 'utf8')).toBe('old')
  })
})
