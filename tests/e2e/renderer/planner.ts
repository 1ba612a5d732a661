import { test as base, expect, type Page } from 'playwright/test'
import { nodeFiles } from '../../../electron/files/fileLayer'
import { hostApi } from '../../../electron/host/hostApi'
import { loopbackHost } from '../../../electron/loopback/loopbackHost'
import { pageFiles } from '../../../electron/page/pageFiles'
import { buildPage } from '../../../scripts/build.mjs'
import { hostFolders } from '../../fault/hostFolders'

export interface Served {
  readonly address: string
  /** Where files are written to. */
  readonly folder: string
  stop(): Promise<void>
}

/** The built page over the real loopback host, with folders of its own, on a day of high summer. */
export async function servePlanner(): Promise<Served> {
  const disk = hostFolders()
  const program = disk.start({ confined: true })
  const host = await loopbackHost({
    page: pageFiles(await buildPage()),
    openWindow() {
      const files = program.openWindow()
      const info = { appVersion: '0.0.0', folder: disk.folder, today: () => '2026-07-21', zone: 'America/Boise' }
      return { files, api: hostApi({ files, layer: nodeFiles, ...info }) }
    },
  })
  return {
    address: host.address,
    folder: disk.folder,
    async stop() {
      await host.close()
      disk.remove()
    },
  }
}

export const test = base.extend<object, { planner: Served }>({
  planner: [
    // biome-ignore lint/correctness/noEmptyPattern: the runner reads the names of what is used
    async ({}, use) => {
      const served = await servePlanner()
      await use(served)
      await served.stop()
    },
    { scope: 'worker' },
  ],
})

const sample = /^Alder Court patio(?!,)/

export async function openSample(page: Page, planner: Served, name: RegExp = sample): Promise<void> {
  await page.goto(planner.address)
  // The host remembers the theme an earlier journey left.
  await page.getByRole('radio', { name: 'light', exact: true }).check()
  // Work of an earlier test is offered under the same name: the sample is meant.
  await page.getByRole('button', { name }).and(page.locator('.sample')).click()
  await expect(page.getByRole('navigation', { name: 'Stages' })).toBeVisible()
}

export const stageButton = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Stages' }).getByRole('button', { name: new RegExp(`^${name}`) })
