import { once } from 'node:events'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { join } from 'node:path'
import { test as base, expect, type Page } from 'playwright/test'
import { nodeFiles } from '../../electron/files/fileLayer'
import { hostApi } from '../../electron/host/hostApi'
import { type LoopbackHost, loopbackHost } from '../../electron/loopback/loopbackHost'
import { pageFiles } from '../../electron/page/pageFiles'
import { buildHostPage } from '../desktop/buildHostPage'
import type { HostPage } from '../desktop/page/page'
import { type HostFolders, hostFolders, siteText } from '../fault/hostFolders'

const one = siteText('One')
const two = siteText('Two')

const test = base.extend<{ disk: HostFolders; host: LoopbackHost }>({
  // biome-ignore lint/correctness/noEmptyPattern: the runner reads the names of what is used
  disk: async ({}, use) => {
    const disk = hostFolders()
    await buildHostPage(disk.root)
    await use(disk)
    disk.remove()
  },
  host: async ({ disk }, use) => {
    const program = disk.start({ confined: true })
    const host = await loopbackHost({
      page: pageFiles(join(disk.root, 'page')),
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

const ready = (page: Page) => page.waitForFunction(() => (window as { hostPage?: HostPage }).hostPage !== undefined)
const hasHost = (page: Page) => page.evaluate(() => (window as { hostPage?: HostPage }).hostPage?.host !== null)

// biome-ignore lint/suspicious/noExplicitAny: what a page answers is checked by each test
const call = (page: Page, name: string, input: unknown = {}): Promise<any> =>
  page.evaluate(
    ([name, input]) => {
      const { host } = (window as unknown as { hostPage: HostPage }).hostPage
      return (host?.api as Record<string, (input: unknown) => unknown> | undefined)?.[name as string]?.(input)
    },
    [name, input] as const,
  )

test('the token goes from the address bar into the tab, and a reload keeps it', async ({ page, host }) => {
  await page.goto(host.address)
  await ready(page)
  expect(page.url()).not.toContain('#')
  expect(await call(page, 'start')).toMatchObject({ ok: true, value: { host: 'browser' } })
  await page.reload()
  await ready(page)
  expect(await call(page, 'start')).toMatchObject({ ok: true })
  expect(await page.evaluate(() => (window as unknown as { hostPage: HostPage }).hostPage.violations)).toEqual([])
})

test('an address for one window opens it, survives a reload, and opens no second', async ({ page, host, context }) => {
  const address = host.addressForOne()
  await page.goto(address)
  await ready(page)
  await page.reload()
  await ready(page)
  expect(await call(page, 'start')).toMatchObject({ ok: true })
  const other = await context.newPage()
  await other.goto(address)
  await ready(other)
  expect(await hasHost(other)).toBe(false)
})

test('another tab without the token is let in to nothing', async ({ page, host, context }) => {
  await page.goto(host.address)
  await ready(page)
  const other = await context.newPage()
  await other.goto(new URL(host.address).origin)
  await ready(other)
  expect(await hasHost(other)).toBe(false)
  const stranger = await context.newPage()
  await stranger.goto(`${new URL(host.address).origin}/#${'A'.repeat(43)}`)
  await ready(stranger)
  expect(await hasHost(stranger)).toBe(false)
})

test('a page of another origin can neither call, read nor frame it, even holding the token', async ({ page, host }) => {
  const { origin, hash } = new URL(host.address)
  const foreign = createServer((_request, response) => {
    response.setHeader('Content-Type', 'text/html')
    response.end(`<!doctype html><iframe src="${origin}/"></iframe>`)
  }).listen(0, '127.0.0.1')
  await once(foreign, 'listening')
  try {
    await page.goto(`http://127.0.0.1:${(foreign.address() as AddressInfo).port}/`)
    const tried = await page.evaluate(
      async ([origin, token]) => {
        const attempt = (init: RequestInit) =>
          fetch(`${origin}/api/stay`, { method: 'POST', body: '{}', ...init }).then(
            response => `${response.type} ${response.status}`,
            () => 'refused',
          )
        return [
          await attempt({ headers: { Authorization: `Bearer ${token}`, 'Content-Type': 'application/json' } }),
          await attempt({ headers: { 'Content-Type': 'text/plain' } }),
          // Sent, but answered with a refusal nobody can read.
          await attempt({ mode: 'no-cors' }),
        ]
      },
      [origin, hash.slice(1)] as const,
    )
    expect(tried).toEqual(['refused', 'refused', 'refused'])
    const frame = page.frames()[1]
    expect(await frame?.evaluate(() => document.body?.textContent ?? '').catch(() => '')).not.toContain('page')
    expect(frame?.url()).not.toBe(`${origin}/`)
  } finally {
    foreign.close()
  }
})

test('opens, saves and keeps a site in the working folder', async ({ page, host, disk }) => {
  disk.put('yard.slabwright.json', one)
  await page.goto(host.address)
  await ready(page)
  const listed = await call(page, 'listFolder')
  const opened = await call(page, 'openFile', { fileId: listed.value[0].fileId })
  expect(opened.value.text).toBe(one)
  const saved = await call(page, 'save', { docId: opened.value.docId, text: two, order: 1 })
  expect(saved).toMatchObject({ ok: true, value: { outcome: 'saved', versionKept: true } })
  expect(await call(page, 'openDialog')).toEqual({ ok: false, error: { reason: 'notHere' } })
})

test('a page that is killed in mid-edit leaves its work to be offered', async ({ page, host, context }) => {
  await page.goto(host.address)
  await ready(page)
  const { value } = await call(page, 'newSite', { title: 'New site' })
  await call(page, 'autosave', { docId: value.docId, title: 'New site', text: one, order: 1 })
  const next = await context.newPage()
  await page.close()
  await next.goto(host.address)
  await ready(next)
  await expect.poll(async () => (await call(next, 'start')).value.recoveries).toMatchObject([{ title: 'New site' }])
})

test('a page whose host is killed is told, and every call says so', async ({ page, host }) => {
  await page.goto(host.address)
  await ready(page)
  await host.close()
  await page.waitForFunction(() => (window as unknown as { hostPage: HostPage }).hostPage.heard.length > 0, null, {
    timeout: 15_000,
  })
  expect(await page.evaluate(() => (window as unknown as { hostPage: HostPage }).hostPage.heard)).toEqual([
    { kind: 'lost' },
  ])
  expect(await call(page, 'start')).toEqual({ ok: false, error: { reason: 'hostGone' } })
})
