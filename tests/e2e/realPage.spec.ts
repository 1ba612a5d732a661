import { test as base, expect } from 'playwright/test'
import { nodeFiles } from '../../electron/files/fileLayer'
import { hostApi } from '../../electron/host/hostApi'
import { type LoopbackHost, loopbackHost } from '../../electron/loopback/loopbackHost'
import { pageFiles } from '../../electron/page/pageFiles'
import { buildPage } from '../../scripts/build.mjs'
import { type HostFolders, hostFolders } from '../fault/hostFolders'

const test = base.extend<{ disk: HostFolders; host: LoopbackHost }>({
  // biome-ignore lint/correctness/noEmptyPattern: the runner reads the names of what is used
  disk: async ({}, use) => {
    const disk = hostFolders()
    await use(disk)
    disk.remove()
  },
  host: async ({ disk }, use) => {
    const program = disk.start({ confined: true })
    const host = await loopbackHost({
      page: pageFiles(await buildPage()),
      graceMs: 300,
      openWindow() {
        const files = program.openWindow()
        const info = { appVersion: '0.0.0', folder: disk.folder, today: () => '2026-07-14', zone: 'America/Boise' }
        return { files, api: hostApi({ files, layer: nodeFiles, ...info }) }
      },
    })
    await use(host)
    await host.close()
  },
})

test('the planner opens over the loopback host, under its policy, with the samples', async ({ page, host }) => {
  const faults: string[] = []
  page.on('console', message => {
    if (message.type() === 'error' || message.type() === 'warning') faults.push(message.text())
  })
  page.on('pageerror', error => faults.push(error.message))
  await page.goto(host.address)
  await page.getByRole('button', { name: /^Alder Court patio(?!,)/ }).click()
  await expect(page.getByRole('navigation', { name: 'Stages' })).toBeVisible()
  await expect(page.getByText('1,588').first()).toBeVisible()
  expect(faults).toEqual([])
})
