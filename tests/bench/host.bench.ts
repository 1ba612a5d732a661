import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { type Browser, chromium, type Page } from 'playwright'
import { nodeFiles } from '../../electron/files/fileLayer'
import { replaceFile } from '../../electron/files/replaceFile'
import { browserFlags, findBrowser } from '../../scripts/findBrowser'
import type { Bench, BenchRow } from './row'

const sample = /^Alder Court patio(?!,)/
const idleSeconds = 60

const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN

const time = (id: string, what: string, value: number, target: string | null = null): BenchRow => ({
  id,
  what,
  value,
  unit: 'ms',
  peer: null,
  target,
  ok: null,
})

export const bench: Bench = async () => {
  const folder = mkdtempSync(join(tmpdir(), 'bench-host-'))
  const { path, env } = findBrowser()
  const browser = await chromium.launch({
    executablePath: path,
    args: [...browserFlags],
    env: { ...(process.env as Record<string, string>), ...env },
  })
  try {
    return [...(await measureSaves(folder)), ...(await measurePage(folder, browser)), ...measureBundles()]
  } finally {
    await browser.close()
    rmSync(folder, { recursive: true, force: true })
  }
}

async function measureSaves(folder: string): Promise<BenchRow[]> {
  const bytes = Buffer.alloc(3 * 2 ** 20, 'site ')
  const times: number[] = []
  for (let run = 0; run < 21; run += 1) {
    const startedAt = performance.now()
    const report = await replaceFile(nodeFiles, join(folder, 'yard.slabwright.json'), bytes)
    if (!report.replaced) throw new Error('not saved')
    times.push(performance.now() - startedAt)
  }
  return [time('host.save', 'a site of 3 MB saved, synced and renamed, median of 21', median(times.slice(1)))]
}

/** From the start of the host's process to the areas of the L patio on screen; then the page left alone. */
async function measurePage(folder: string, browser: Browser): Promise<BenchRow[]> {
  const starts: number[] = []
  let idle = Number.NaN
  const runs = 5
  for (let run = 0; run < runs; run += 1) {
    const page = await (await browser.newContext()).newPage()
    const startedAt = performance.now()
    const host = spawn(process.execPath, ['dist/loopback/serve.mjs', '--quiet', '--folder', folder, '--data', folder], {
      stdio: ['ignore', 'pipe', 'inherit'],
    })
    try {
      const [line] = (await once(host.stdout, 'data')) as [Buffer]
      const address = /http:\S+/.exec(line.toString())?.[0] ?? ''
      await page.goto(address)
      await page.getByRole('button', { name: sample }).click()
      await page.getByText('1,588').first().waitFor()
      starts.push(performance.now() - startedAt)
      if (run === runs - 1) idle = await measureIdle(page)
    } finally {
      host.kill('SIGTERM')
      await page.context().close()
    }
  }
  return [
    time('host.start', 'start of the loopback host to the first usable plan, median of 5', median(starts), '≤ 1500'),
    {
      id: 'host.idle',
      what: `share of a core the page takes over ${idleSeconds} s untouched`,
      value: idle,
      unit: '1',
      peer: null,
      target: '≤ 0.01',
      ok: idle <= 0.01,
    },
  ]
}

async function measureIdle(page: Page): Promise<number> {
  const session = await page.context().newCDPSession(page)
  await session.send('Performance.enable')
  const busySeconds = async () => {
    const { metrics } = await session.send('Performance.getMetrics')
    return metrics.find(({ name }) => name === 'ProcessTime')?.value ?? Number.NaN
  }
  // What the first plan still has to do is not idleness.
  await page.waitForTimeout(5_000)
  const before = await busySeconds()
  await page.waitForTimeout(idleSeconds * 1000)
  return ((await busySeconds()) - before) / idleSeconds
}

function measureBundles(): BenchRow[] {
  const assets = readdirSync('dist/renderer/assets').map(name => join('dist/renderer/assets', name))
  const sizeOf = (paths: readonly string[]) =>
    paths.reduce((sum, path) => sum + gzipSync(readFileSync(path)).length, 0) / 1024
  const size = (id: string, what: string, paths: readonly string[]): BenchRow => ({
    id: `bundle.${id}`,
    what: `${what}, packed`,
    value: sizeOf(paths),
    unit: 'kB',
    peer: null,
    target: null,
    ok: null,
  })
  const scripts = assets.filter(path => path.endsWith('.js'))
  // Read once a PDF is made or laid under the plan, or a zone is looked up; never before the first plan.
  const isOnDemand = (path: string) => /\/(pdf|tz-)/.test(path)
  const isWorker = (path: string) => /planWorker/.test(path)
  return [
    size(
      'page',
      'scripts of the page',
      scripts.filter(path => !isOnDemand(path) && !isWorker(path)),
    ),
    size('worker', 'scripts of the worker', scripts.filter(isWorker)),
    size('onDemand', 'scripts read where a PDF or a zone asks for them', scripts.filter(isOnDemand)),
    size(
      'styles',
      'styles of the page',
      assets.filter(path => path.endsWith('.css')),
    ),
    size(
      'fonts',
      'fonts of the page',
      assets.filter(path => path.endsWith('.woff2')),
    ),
    size(
      'cli',
      'command line',
      readdirSync('dist/cli').flatMap(name => (name.endsWith('.mjs') ? [join('dist/cli', name)] : [])),
    ),
    size('loopback', 'loopback host', ['dist/loopback/serve.mjs']),
    size('main', 'main process of the window', ['dist/desktop/main.cjs']),
    size('preload', 'preload of the window', ['dist/desktop/preload.cjs']),
  ]
}
