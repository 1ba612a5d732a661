/** The pictures of the README: the planner's own page on a sample, in a headless Chromium, at a fixed day and hour. */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, type Page } from 'playwright/test'
import { nodeFiles } from '../electron/files/fileLayer'
import { siteFiles } from '../electron/files/siteFiles'
import { hostApi } from '../electron/host/hostApi'
import { loopbackHost } from '../electron/loopback/loopbackHost'
import { pageFiles } from '../electron/page/pageFiles'
import { buildPage, root } from './build.mjs'

const folder = join(root, 'samples', 'pictures')
const executablePath = process.env.SLABWRIGHT_BROWSER ?? '/usr/bin/chromium'

interface Shot {
  readonly file: string
  readonly prepare: (page: Page) => Promise<void>
}

const stage = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Stages' }).getByRole('button', { name: new RegExp(`^${name}`) })

const shots: readonly Shot[] = [
  { file: 'slab.png', prepare: async page => stage(page, 'Slab').click() },
  { file: 'sun.png', prepare: async page => stage(page, 'Sun').click() },
  { file: 'pours.png', prepare: async page => stage(page, 'Pours').click() },
  {
    file: 'client.png',
    prepare: async page => {
      await stage(page, 'Slab').click()
      await page.getByRole('button', { name: 'Client view' }).click()
      await stage(page, 'Sheets').click()
      await page.getByRole('img', { name: 'Drawing for the client' }).waitFor()
    },
  },
]

/** Nothing is on its way any more: the plan is renewed, and no letters are missing. */
const settle = async (page: Page) => {
  await page.waitForFunction(
    () => !/\bworking\b/i.test(document.body.textContent ?? '') && document.fonts.status === 'loaded',
  )
  await page.mouse.move(2, 2)
}

const disk = mkdtempSync(join(tmpdir(), 'slabwright-pictures-'))
const program = siteFiles({
  layer: nodeFiles,
  folder: join(disk, 'documents'),
  dataFolder: join(disk, 'data'),
  samplesFolder: join(root, 'samples'),
  now: () => new Date(Date.UTC(2026, 6, 21, 16)),
  dayOf: at => at.toISOString().slice(0, 10),
  confined: true,
})
const host = await loopbackHost({
  page: pageFiles(await buildPage()),
  openWindow() {
    const files = program.openWindow()
    const info = { appVersion: '0', folder: disk, today: () => '2026-07-21', zone: 'America/Boise' }
    return { files, api: hostApi({ files, layer: nodeFiles, ...info }) }
  },
})
const isRoot = process.getuid?.() === 0
const browser = await chromium.launch({
  executablePath,
  args: ['--disable-gpu', ...(isRoot ? ['--no-sandbox'] : [])],
})
try {
  mkdirSync(folder, { recursive: true })
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, reducedMotion: 'reduce' })
  await page.goto(host.address)
  await page
    .getByRole('button', { name: /^Alder Court patio, three pours/ })
    .and(page.locator('.sample'))
    .click()
  await page.getByRole('navigation', { name: 'Stages' }).waitFor()
  for (const { file, prepare } of shots) {
    await prepare(page)
    await settle(page)
    await page.screenshot({ path: join(folder, file) })
    console.log(file)
  }
} finally {
  await browser.close()
  await host.close()
  rmSync(disk, { recursive: true, force: true })
}
