import { test as base, expect, type Page } from 'playwright/test'
import { nodeFiles } from '../../../electron/files/fileLayer'
import { hostApi } from '../../../electron/host/hostApi'
import { loopbackHost } from '../../../electron/loopback/loopbackHost'
import { pageFiles } from '../../../electron/page/pageFiles'
import { buildPage } from '../../../scripts/build.mjs'
import { type HostFolders, hostFolders } from '../../fault/hostFolders'
import { faultsInEveryTheme } from '../axe'
import { type SwitchableFiles, switchableFiles } from './switchableFiles'

export interface Desk {
  readonly disk: HostFolders
  readonly files: SwitchableFiles
  /** Another host over the same folders; `crashed`: its unsaved work is left as by a program that ended. */
  startHost(options?: { crashed?: boolean }): Promise<string>
}

export const test = base.extend<{ desk: Desk }>({
  // biome-ignore lint/correctness/noEmptyPattern: the runner reads the names of what is used
  desk: async ({}, use) => {
    const disk = hostFolders()
    const files = switchableFiles()
    const page = pageFiles(await buildPage())
    const hosts: Awaited<ReturnType<typeof loopbackHost>>[] = []
    await use({
      disk,
      files,
      async startHost({ crashed = false } = {}) {
        const program = disk.start({ confined: true, layer: files.layer, crashed })
        const host = await loopbackHost({
          page,
          graceMs: 300,
          openWindow() {
            const window = program.openWindow()
            const info = { appVersion: '0.0.0', folder: disk.folder, today: () => '2026-07-21', zone: 'America/Boise' }
            return { files: window, api: hostApi({ files: window, layer: nodeFiles, ...info }) }
          },
        })
        hosts.push(host)
        return host.address
      },
    })
    for (const host of hosts) await host.close()
    disk.remove()
  },
})

/** Notes every violation of the page's policy from now on, in each page that is loaded. */
export async function watchPolicy(page: Page): Promise<() => Promise<string[]>> {
  await page.addInitScript(() => {
    const seen: string[] = []
    Object.assign(window, { seenViolations: seen })
    document.addEventListener('securitypolicyviolation', event => {
      seen.push(`${event.violatedDirective} ${event.blockedURI}`)
    })
  })
  return () => page.evaluate(() => (window as unknown as { seenViolations: string[] }).seenViolations)
}

export async function expectAccessible(page: Page, what: string): Promise<void> {
  expect(await faultsInEveryTheme(page, what)).toEqual([])
}

/** Chooses from the list of acts on the file. */
export async function chooseFileAct(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name: 'File', exact: true }).click()
  await page.getByRole('menu', { name: 'File' }).getByRole('menuitem', { name, exact: true }).click()
}

/** Opens a file of the working folder by its name. */
export async function openFromFolder(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name: 'Open a file' }).click()
  await page
    .getByRole('dialog', { name: 'Open a file' })
    .getByRole('button', { name: new RegExp(`^${name}`) })
    .click()
}

/** One edit, one step: the units of the site. */
export async function changeUnits(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^(feet and inches|metric|meters)$/ }).click()
}
