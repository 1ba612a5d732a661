/** The built page over its loopback host in a headless browser, for benches of what a hand feels. */
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { type CDPSession, chromium, type Page } from 'playwright'
import { browserFlags, findBrowser } from '../../scripts/findBrowser'

/** Hands the first page of a host that keeps its files in the folder to the work, and puts everything away after it. */
export async function withBenchPage<T>(
  folder: string,
  viewport: { readonly width: number; readonly height: number },
  work: (page: Page) => Promise<T>,
): Promise<T> {
  const { path, env } = findBrowser()
  const browser = await chromium.launch({
    executablePath: path,
    args: [...browserFlags],
    env: { ...(process.env as Record<string, string>), ...env },
  })
  const host = spawn(process.execPath, ['dist/loopback/serve.mjs', '--quiet', '--folder', folder, '--data', folder], {
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  try {
    const [line] = (await once(host.stdout, 'data')) as [Buffer]
    const page = await (await browser.newContext({ viewport })).newPage()
    await page.goto(/http:\S+/.exec(line.toString())?.[0] ?? '')
    return await work(page)
  } finally {
    host.kill('SIGTERM')
    await browser.close()
  }
}

/** Until the page has drawn what the last move changed. */
export const drawn = (page: Page): Promise<unknown> =>
  page.evaluate(() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done))))

/** Milliseconds the page's own thread has spent on script, style and layout so far. */
export async function ownMs(session: CDPSession): Promise<number> {
  const { metrics } = await session.send('Performance.getMetrics')
  const of = (name: string) => metrics.find(each => each.name === name)?.value ?? Number.NaN
  return 1000 * (of('ScriptDuration') + of('LayoutDuration') + of('RecalcStyleDuration'))
}

export const percentile = (values: readonly number[], share: number): number =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))]!
