import { test as base, expect, type Page } from 'playwright/test'
import { nodeFiles } from '../../../electron/files/fileLayer'
import { type HostApiOptions, hostApi } from '../../../electron/host/hostApi'
import { loopbackHost } from '../../../electron/loopback/loopbackHost'
import { pageFiles } from '../../../electron/page/pageFiles'
import { buildPage } from '../../../scripts/build.mjs'
import { ok } from '../../../shared/problem'
import { hostFolders } from '../../fault/hostFolders'

export interface Served {
  readonly address: string
  /** Where files are written to. */
  readonly folder: string
  stop(): Promise<void>
}

/** Two days from midnight of the sample's yard, cloudless; nothing is asked of anybody. */
const askForecast: NonNullable<HostApiOptions['askForecast']> = async () =>
  ok({
    hours: Array.from({ length: 48 }, (_, hour) => ({
      startUtc: `${new Date(Date.UTC(2026, 6, 21, 6 + hour)).toISOString().slice(0, 19)}Z`,
      airC: 22 - 8 * Math.cos((2 * Math.PI * ((hour % 24) - 4)) / 24),
      ...{ dewPointC: 7, wind10mMs: 3, cloud: 0.1, rainChance: 0.05 },
    })),
    ...{ findings: [], source: 'made for a test', fetchedMs: Date.UTC(2026, 6, 21, 9), ageMs: 40 * 60_000 },
  })

/** The built page over the real loopback host, with folders of its own, on a day of high summer. */
export async function servePlanner(): Promise<Served> {
  const disk = hostFolders()
  const program = disk.start({ confined: true })
  const host = await loopbackHost({
    page: pageFiles(await buildPage()),
    openWindow() {
      const files = program.openWindow()
      const info = { appVersion: '0.0.0', folder: disk.folder, today: () => '2026-07-21', zone: 'America/Boise' }
      return { files, api: hostApi({ files, layer: nodeFiles, askForecast, ...info }) }
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
