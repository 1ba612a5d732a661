import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { type Browser, chromium } from 'playwright'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { readSite } from '../../core/document/readSite'
import { startDesktop } from '../../electron/main/startDesktop'
import { buildPage } from '../../scripts/build.mjs'
import { browserFlags, findBrowser } from '../../scripts/findBrowser'
import { type HostFolders, hostFolders } from '../fault/hostFolders'
import { buildHostPage } from './buildHostPage'
import { clickMenu } from './electronStandIn'

const { state, module } = await vi.hoisted(async () => (await import('./electronStandIn')).createStandIn())
vi.mock('electron', () => module)

let browser: Browser
let disk: HostFolders
beforeAll(async () => {
  const { path, env } = findBrowser()
  browser = await chromium.launch({
    executablePath: path,
    args: [...browserFlags],
    env: { ...(process.env as Record<string, string>), ...env },
  })
  state.context = await browser.newContext()
  disk = hostFolders()
  startDesktop({
    pageFolder: await buildPage(),
    samplesFolder: 'samples',
    preload: await buildHostPage(disk.root),
    argv: ['slabwright', '--folder', disk.folder],
    dataFolder: disk.dataFolder,
  })
  await vi.waitFor(() => expect(state.windows).toHaveLength(1))
}, 120_000)
afterAll(async () => {
  await browser.close()
  disk.remove()
})

describe('the planner in the desktop window', () => {
  it('opens a sample, and saves it by the menu and the system dialog under a name', async () => {
    const page = await state.windows[0]?.page
    if (page === undefined) throw new Error('no page')
    const faults: string[] = []
    page.on('console', message => {
      if (message.type() === 'error') faults.push(message.text())
    })
    page.on('pageerror', error => faults.push(error.message))
    await page.getByRole('button', { name: /^Alder Court patio(?!,)/ }).click()
    await page.getByText('1,588').first().waitFor()
    const path = join(disk.folder, 'Alder.slabwright.json')
    state.dialogs.push({ kind: 'save', answer: { canceled: false, filePath: path } })
    clickMenu(state, 'Save')
    await vi.waitFor(() => expect(readSite(readFileSync(path)).ok).toBe(true), 20_000)
    expect(state.dialogs).toEqual([])

    // What is copied in one window is pasted in another, by buttons: the clipboard is ours to use, nothing else is.
    await page.getByRole('application').press('Control+a')
    await page.getByRole('button', { name: 'Copy', exact: true }).click()
    await page.getByText('Copied.').first().waitFor()
    clickMenu(state, 'New window')
    await vi.waitFor(() => expect(state.windows).toHaveLength(2))
    const other = await state.windows[1]?.page
    await other?.getByRole('button', { name: 'New site', exact: true }).click()
    await other?.getByRole('button', { name: 'Paste', exact: true }).click()
    await other?.getByText('1,588').first().waitFor()
    expect(faults).toEqual([])
  })
})
