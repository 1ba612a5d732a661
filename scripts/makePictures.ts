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
import { browserFlags, findBrowser } from './findBrowser'

const folder = join(root, 'samples', 'pictures')
const { path: executablePath, env } = findBrowser()

interface Shot {
  readonly file: string
  /** How its sample is called on the first page. */
  readonly sample: RegExp
  readonly prepare: (page: Page) => Promise<void>
}

const stage = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Stages' }).getByRole('button', { name: new RegExp(`^${name}`) })

const patio = /^Alder Court patio, three pours/
/** Of the files named on the command line, else all. */
const wanted = process.argv.slice(2)

const shots: readonly Shot[] = [
  { file: 'slab.png', sample: patio, prepare: async page => stage(page, 'Slab').click() },
  { file: 'sun.png', sample: patio, prepare: async page => stage(page, 'Sun').click() },
  { file: 'pours.png', sample: patio, prepare: async page => stage(page, 'Pours').click() },
  {
    file: 'client.png',
    sample: patio,
    prepare: async page => {
      await stage(page, 'Slab').click()
      await page.getByRole('button', { name: 'Client view' }).click()
      await stage(page, 'Sheets').click()
      await page.getByRole('img', { name: 'Drawing for the client' }).waitFor()
    },
  },
  {
    file: 'at-slab.png',
    sample: /^Juniper Row court/,
    prepare: async page => {
      await page.clock.setFixedTime('2026-07-22T06:26:00-06:00')
      await stage(page, 'Pours').click()
      await page.getByRole('button', { name: /^At the slab/ }).click()
      await page.getByRole('button', { name: 'Seen, go on' }).click()
      await page.getByRole('button', { name: 'Load 1: Batched' }).click()
      await page.clock.setFixedTime('2026-07-22T07:01:00-06:00')
      for (const done of ['Load 1: On site', 'Measure load 1']) await page.getByRole('button', { name: done }).click()
      // The screen looks at the clock once a second.
      await page.getByText('in 12 min').waitFor()
    },
  },
  {
    file: 'log.png',
    sample: /^Juniper Row court/,
    prepare: async page => {
      await stage(page, 'Pours').click()
      await page.getByRole('list', { name: 'The day of each pour' }).getByRole('listitem').first().waitFor()
      await stage(page, 'Log').click()
      await page.getByRole('region', { name: 'Log of pour 1' }).scrollIntoViewIfNeeded()
    },
  },
]

/** Nothing is on its way any more: the plan is renewed, and no letters are missing. */
const settle = async (page: Page) => {
  await page.waitForFunction(
    () =>
      // biome-ignore lint/performance/useDomNodeTextContent: as it is read; in the text content one word runs into the next
      !/\bworking\b|being renewed/i.test(document.body.innerText) &&
      document.querySelector('.work-line') === null &&
      document.fonts.status === 'loaded',
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
const browser = await chromium.launch({ executablePath, env: { ...process.env, ...env }, args: [...browserFlags] })
try {
  mkdirSync(folder, { recursive: true })
  for (const { file, sample, prepare } of shots) {
    if (wanted.length > 0 && !wanted.includes(file)) continue
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, reducedMotion: 'reduce' })
    await page.goto(host.address)
    await page.getByRole('button', { name: sample }).and(page.locator('.sample')).click()
    await page.getByRole('navigation', { name: 'Stages' }).waitFor()
    await prepare(page)
    await settle(page)
    await page.screenshot({ path: join(folder, file) })
    console.log(file)
    await page.close()
  }
} finally {
  await browser.close()
  await host.close()
  rmSync(disk, { recursive: true, force: true })
}
