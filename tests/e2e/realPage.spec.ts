import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { test as base, expect } from 'playwright/test'
import { nodeFiles } from '../../electron/files/fileLayer'
import { hostApi } from '../../electron/host/hostApi'
import { type LoopbackHost, loopbackHost } from '../../electron/loopback/loopbackHost'
import { pageFiles } from '../../electron/page/pageFiles'
import { buildLoopback, buildPage } from '../../scripts/build.mjs'
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

const sample = /^Alder Court patio(?!,)/

test('the planner opens over the loopback host, under its policy, with the samples', async ({ page, host }) => {
  const faults: string[] = []
  page.on('console', message => {
    if (message.type() === 'error' || message.type() === 'warning') faults.push(message.text())
  })
  page.on('pageerror', error => faults.push(error.message))
  await page.goto(host.address)
  await page.getByRole('button', { name: sample }).click()
  await expect(page.getByRole('navigation', { name: 'Stages' })).toBeVisible()
  await expect(page.getByText('1,588').first()).toBeVisible()
  expect(faults).toEqual([])
})

test('no stage and no theme asks for anything the policy forbids', async ({ page, host }) => {
  await page.addInitScript(() => {
    const seen: string[] = []
    Object.assign(window, { seenViolations: seen })
    document.addEventListener('securitypolicyviolation', event => {
      seen.push(`${event.violatedDirective} ${event.blockedURI} ${event.sourceFile}:${event.lineNumber}`)
    })
  })
  await page.goto(host.address)
  for (const theme of ['dark', 'sunlight', 'light']) await page.getByRole('radio', { name: theme, exact: true }).check()
  await page.getByRole('button', { name: sample }).click()
  const stages = page.getByRole('navigation', { name: 'Stages' })
  for (const stage of ['Sun', 'Pours', 'Numbers', 'Sheets', 'Log', 'Slab']) {
    await stages.getByRole('button', { name: new RegExp(`^${stage}`) }).click()
  }
  expect(await page.evaluate(() => (window as unknown as { seenViolations: string[] }).seenViolations)).toEqual([])
})

test('a site whose page was killed is offered at the next start and opens as it was', async ({
  page,
  host,
  context,
}) => {
  await page.goto(host.address)
  await page.getByRole('button', { name: 'New site' }).click()
  await expect(page.getByText(/^Kept \d/)).toBeVisible()
  const next = await context.newPage()
  await page.close()
  await expect(async () => {
    await next.goto('about:blank')
    await next.goto(host.address)
    await expect(next.getByRole('region', { name: 'Unsaved work' })).toBeVisible({ timeout: 1_000 })
  }).toPass({ timeout: 15_000 })
  await next.getByRole('region', { name: 'Unsaved work' }).getByRole('button').first().click()
  await expect(next.getByRole('navigation', { name: 'Stages' })).toBeVisible()
})

test('a site that is open when the host is killed says that nothing is kept any more', async ({ page, host }) => {
  await page.goto(host.address)
  await page.getByRole('button', { name: sample }).click()
  await host.close()
  await expect(page.getByText(/The program behind this page has ended/)).toBeVisible({ timeout: 15_000 })
})

test('a host that is killed in mid-edit offers the work when it is started again', async ({ page, disk }) => {
  await buildPage()
  const script = await buildLoopback()
  const startHost = async () => {
    const child = spawn(process.execPath, [script, '--quiet', '--folder', disk.folder, '--data', disk.dataFolder], {
      stdio: ['ignore', 'pipe', 'inherit'],
    })
    const [line] = (await once(child.stdout, 'data')) as [Buffer]
    return { child, address: /http:\S+/.exec(line.toString())?.[0] ?? '' }
  }
  const first = await startHost()
  await page.goto(first.address)
  await page.getByRole('button', { name: 'New site' }).click()
  await expect(page.getByText(/^Kept \d/)).toBeVisible()
  first.child.kill('SIGKILL')
  await expect(page.getByText(/The program behind this page has ended/)).toBeVisible({ timeout: 15_000 })
  const second = await startHost()
  try {
    await page.goto(second.address)
    await page.getByRole('region', { name: 'Unsaved work' }).getByRole('button').first().click()
    await expect(page.getByRole('navigation', { name: 'Stages' })).toBeVisible()
  } finally {
    second.child.kill('SIGTERM')
  }
})
