import { readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { type Browser, chromium, type Page } from 'playwright'
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest'
import { startDesktop } from '../../electron/main/startDesktop'
import { browserFlags, findBrowser } from '../../scripts/findBrowser'
import { callChannel, hostMethodNames } from '../../shared/host'
import { type HostFolders, hostFolders, siteText } from '../fault/hostFolders'
import { buildHostPage } from './buildHostPage'
import { clickMenu, type StandInState, testOrigin } from './electronStandIn'

const { state, module } = await vi.hoisted(async () => (await import('./electronStandIn')).createStandIn())
vi.mock('electron', () => module)

const one = siteText('One')
const two = siteText('Two')

let browser: Browser
let disk: HostFolders
let preload: string
beforeAll(async () => {
  const { path, env } = findBrowser()
  browser = await chromium.launch({
    executablePath: path,
    args: [...browserFlags],
    env: { ...(process.env as Record<string, string>), ...env },
  })
  state.context = await browser.newContext()
  disk = hostFolders()
  preload = await buildHostPage(disk.root)
  startDesktop({
    pageFolder: join(disk.root, 'page'),
    samplesFolder: 'samples',
    preload,
    argv: ['slabwright', '--folder', disk.folder],
    dataFolder: disk.dataFolder,
  })
  await pageOf(0)
})
afterAll(async () => {
  await browser.close()
  disk.remove()
})
afterEach(() => {
  expect(state.dialogs).toEqual([])
})

/** The page of a window, once it speaks with its host. */
async function pageOf(index: number): Promise<Page> {
  await vi.waitFor(() => expect(state.windows.length).toBeGreaterThan(index), 10_000)
  const page = await (state.windows[index] as StandInState['windows'][number]).page
  await page.waitForFunction(() => window.hostPage !== undefined)
  return page
}

// biome-ignore lint/suspicious/noExplicitAny: what a page answers is checked by each test
type Answer = any
const call = (page: Page, name: string, input: unknown = {}): Promise<Answer> =>
  page.evaluate(
    ([name, input]) =>
      (window.hostPage?.host?.api as Record<string, (input: unknown) => unknown> | undefined)?.[name as string]?.(
        input,
      ),
    [name, input] as const,
  )
const heard = (page: Page) => page.evaluate(() => window.hostPage?.heard.splice(0))
const invoke = (page: Page, channel: string, ...given: unknown[]): Promise<Answer> =>
  page.evaluate(
    ([channel, given]) =>
      (window as unknown as { standInInvoke(channel: string, given: unknown): Promise<unknown> }).standInInvoke(
        channel,
        given,
      ),
    [channel, given] as const,
  )

describe('the desktop window', () => {
  it('shows our page over our own scheme, under a policy nothing violates', async () => {
    const page = await pageOf(0)
    expect(page.url()).toBe(`${testOrigin}/index.html`)
    const start = await call(page, 'start')
    expect(start).toMatchObject({ ok: true, value: { host: 'desktop', folder: disk.folder, appVersion: '0.0.0' } })
    expect(await page.evaluate(() => window.hostPage?.violations)).toEqual([])
    expect(
      await page.evaluate(() => document.querySelector<HTMLMetaElement>('meta[property=csp-nonce]')?.nonce),
    ).toMatch(/^[\w+/]{22}==$/)
  })

  it('blocks scripts and styles the page did not bring, and any other address', async () => {
    const page = await pageOf(0)
    const ran = await page.evaluate(async () => {
      const script = document.createElement('script')
      script.textContent = 'window.wasRun = true'
      document.head.append(script)
      const style = document.createElement('style')
      style.textContent = 'body { color: red }'
      document.head.append(style)
      const fetched = await fetch('https://plans.example/').then(
        () => true,
        () => false,
      )
      await new Promise(resolve => setTimeout(resolve, 50))
      return { ran: 'wasRun' in window, sheets: style.sheet?.cssRules.length ?? 0, fetched }
    })
    expect(ran).toEqual({ ran: false, sheets: 0, fetched: false })
    const violations = await page.evaluate(() => window.hostPage?.violations.splice(0).map(one => one.split(':')[0]))
    expect(violations?.sort()).toEqual(['connect-src', 'script-src-elem', 'style-src-elem'])
  })

  it('opens through the system dialog, saves, and saves under another name', async () => {
    const page = await pageOf(0)
    const path = disk.put('yard.slabwright.json', one)
    state.dialogs.push({ kind: 'open', answer: { canceled: false, filePaths: [path] } })
    const opened = await call(page, 'openDialog')
    expect(opened).toMatchObject({ ok: true, value: { fileName: 'yard.slabwright.json', text: one } })
    const { docId } = opened.value
    expect(await call(page, 'save', { docId, text: two, order: 1 })).toMatchObject({
      ok: true,
      value: { outcome: 'saved' },
    })
    expect(readFileSync(path, 'utf8')).toBe(two)
    const other = join(disk.folder, 'other')
    state.dialogs.push({ kind: 'save', answer: { canceled: false, filePath: other } })
    const named = await call(page, 'saveAs', { docId, text: one, order: 2, name: 'other' })
    expect(named).toMatchObject({
      ok: true,
      value: { fileName: 'other.slabwright.json', report: { outcome: 'saved' } },
    })
    expect(readFileSync(`${other}.slabwright.json`, 'utf8')).toBe(one)
    await call(page, 'close', { docId })
  })

  it('says so when a dialog is let go', async () => {
    const page = await pageOf(0)
    state.dialogs.push({ kind: 'open', answer: { canceled: true, filePaths: [] } })
    expect(await call(page, 'openDialog')).toEqual({ ok: false, error: { reason: 'canceled' } })
    state.dialogs.push({ kind: 'save', answer: { canceled: true, filePath: '' } })
    expect(await call(page, 'exportFile', { name: 'plan', kind: 'pdf', base64: '' })).toEqual({
      ok: false,
      error: { reason: 'canceled' },
    })
    state.dialogs.push({ kind: 'print', answer: false })
    expect(await call(page, 'print')).toEqual({ ok: false, error: { reason: 'canceled' } })
  })

  it('exports and imports through the dialogs', async () => {
    const page = await pageOf(0)
    const path = join(disk.folder, 'plan.csv')
    const base64 = Buffer.from('a,b\r\n').toString('base64')
    state.dialogs.push({ kind: 'save', answer: { canceled: false, filePath: path } })
    expect(await call(page, 'exportFile', { name: 'plan', kind: 'csv', base64 })).toEqual({
      ok: true,
      value: { fileName: 'plan.csv' },
    })
    state.dialogs.push({ kind: 'open', answer: { canceled: false, filePaths: [path] } })
    expect(await call(page, 'importFile', { kind: 'table' })).toEqual({ ok: true, value: { name: 'plan.csv', base64 } })
    rmSync(path)
    state.dialogs.push({ kind: 'open', answer: { canceled: false, filePaths: [path] } })
    expect(await call(page, 'importFile', { kind: 'table' })).toMatchObject({
      ok: false,
      error: { reason: 'vanished' },
    })
  })

  it.each([
    ['Save', 'save'],
    ['Save as', 'saveAs'],
    ['Undo', 'undo'],
    ['Kept versions', 'versions'],
  ])('passes the menu entry %s on to the page', async (label, entry) => {
    const page = await pageOf(0)
    clickMenu(state, label)
    await page.waitForFunction(() => (window.hostPage?.heard.length ?? 0) > 0)
    expect(await heard(page)).toEqual([{ kind: 'menu', entry }])
  })

  it('opens a file handed over by a second start in a window of its own; a third sees it open elsewhere', async () => {
    const path = disk.put('handed.slabwright.json', one)
    for (const index of [1, 2]) {
      module.app.emit('second-instance', {}, ['slabwright', '--flag', path])
      const page = await pageOf(index)
      await page.waitForFunction(() => (window.hostPage?.heard.length ?? 0) > 0)
      const [event] = (await heard(page)) ?? []
      expect(event).toMatchObject({ kind: 'opened', site: { text: one, title: 'handed' } })
      expect(event?.kind === 'opened' && event.site.readOnly).toBe(index === 1 ? undefined : 'openElsewhere')
    }
    for (const window of state.windows.slice(1)) (window as unknown as { close(): void }).close()
    expect(state.windows).toHaveLength(1)
  })

  it('does not close over unsaved work before the page has put it away', async () => {
    module.app.emit('second-instance', {}, ['slabwright', disk.put('open.slabwright.json', one)])
    const page = await pageOf(1)
    const shown = state.windows[1] as StandInState['windows'][number] & { close(): void }
    await page.waitForFunction(() => (window.hostPage?.heard.length ?? 0) > 0)
    const [event] = (await heard(page)) ?? []
    const docId = event?.kind === 'opened' ? event.site.docId : ''
    await call(page, 'tellState', { docId, title: 'open', unsaved: true })
    shown.close()
    expect(shown.isGone).toBe(false)
    await page.waitForFunction(() => (window.hostPage?.heard.length ?? 0) > 0)
    expect(await heard(page)).toEqual([{ kind: 'closing' }])
    await call(page, 'close', { docId, leaving: true }).catch(() => {})
    await vi.waitFor(() => expect(shown.isGone).toBe(true))
  })

  it('offers what a crashed page had kept, in the page that takes its place', async () => {
    module.app.emit('second-instance', {}, ['slabwright', disk.put('lost.slabwright.json', one)])
    const page = await pageOf(1)
    const shown = state.windows[1] as StandInState['windows'][number] & { destroy(): void }
    await page.waitForFunction(() => (window.hostPage?.heard.length ?? 0) > 0)
    const [event] = (await heard(page)) ?? []
    const docId = event?.kind === 'opened' ? event.site.docId : ''
    await call(page, 'autosave', { docId, title: 'lost', text: two, order: 1 })
    const reloaded = page.waitForEvent('load')
    shown.webContents.emit('render-process-gone', {}, { reason: 'crashed' })
    await reloaded
    await page.waitForFunction(() => window.hostPage !== undefined)
    const start = await call(page, 'start')
    expect(start.value.recoveries).toMatchObject([{ title: 'lost', fileName: 'lost.slabwright.json' }])
    const again = await call(page, 'openRecovery', { recoveryId: start.value.recoveries[0].recoveryId })
    expect(again.value).toMatchObject({ text: two, fileName: 'lost.slabwright.json' })
    expect(again.value.readOnly).toBeUndefined()
    shown.destroy()
  })

  it('does not start a second time beside itself', () => {
    state.isFirst = false
    startDesktop({ pageFolder: disk.root, samplesFolder: 'samples', preload, argv: [], dataFolder: disk.dataFolder })
    expect(state.hasQuit).toBe(true)
    expect(state.windows).toHaveLength(1)
  })
})

describe('calls that are refused', () => {
  it('has one channel for each method and no other', () => {
    expect([...state.handlers.keys()].sort()).toEqual(hostMethodNames.map(callChannel).sort())
  })

  it.each([
    ['another address', { url: 'https://plans.example/', parent: null }],
    ['an address that begins like ours', { url: 'slabwright://app.plans.example/', parent: null }],
    ['a file', { url: 'file:///index.html', parent: null }],
    ['a frame within our page', { url: 'slabwright://app/index.html', parent: {} }],
    ['a frame that is gone', null],
  ])('from %s', async (_, senderFrame) => {
    const handler = state.handlers.get(callChannel('start'))
    const sender = state.windows[0]?.webContents
    await expect(handler?.({ sender, senderFrame }, {})).rejects.toThrow('refused')
  })

  it('from contents that are no window of ours', async () => {
    const handler = state.handlers.get(callChannel('start'))
    const senderFrame = { url: 'slabwright://app/index.html', parent: null }
    await expect(handler?.({ sender: {}, senderFrame }, {})).rejects.toThrow('refused')
  })

  it.each([
    ['nothing', []],
    ['two things', [{}, {}]],
    ['null', [null]],
    ['a text', ['start']],
    ['an unknown field', [{ path: '/etc/passwd' }]],
  ])('with %s', async (_, given) => {
    await expect(invoke(await pageOf(0), callChannel('start'), ...given)).rejects.toThrow('not what this call takes')
  })

  it.each([
    ['a path in place of an id', 'openFile', { fileId: '/etc/passwd' }],
    ['a text beyond the limit', 'save', { docId: 'x', text: null, order: 1 }],
    ['an order that is no count', 'autosave', { docId: 'x', title: '', text: '', order: 1.5 }],
    ['a kind of export there is not', 'exportFile', { name: 'x', kind: 'exe', base64: '' }],
  ])('with %s', async (_, name, input) => {
    await expect(invoke(await pageOf(0), `slabwright:${name}`, input)).rejects.toThrow('not what this call takes')
  })

  it('on a channel that is none', async () => {
    await expect(invoke(await pageOf(0), 'slabwright:toString', {})).rejects.toThrow('no handler')
  })

  it('for an id of another window', async () => {
    const page = await pageOf(0)
    expect(await call(page, 'save', { docId: 'AAAAAAAAAAAAAAAA', text: one, order: 1 })).toEqual({
      ok: false,
      error: { reason: 'unknownId' },
    })
  })
})

/** https://www.electronjs.org/docs/latest/tutorial/security, its twenty items in order. */
describe('the twenty items of Electron’s security page', () => {
  const preferences = () => state.windows[0]?.options.webPreferences ?? {}
  const ask = (name: string, ...given: unknown[]) =>
    (state.session.get(name) as ((...given: unknown[]) => unknown) | undefined)?.(...given)
  const isCanceled = (url: string) => {
    let answer: { cancel?: boolean } = {}
    ask('request', { url }, (given: typeof answer) => (answer = given))
    return answer.cancel
  }

  it('1. loads only its own content: no request leaves the program', () => {
    for (const url of [
      'http://plans.example/',
      'https://plans.example/',
      'ws://plans.example/',
      'file:///etc/passwd',
      'slabwright://other/',
      'ftp://x/',
    ])
      expect(isCanceled(url)).toBe(true)
    for (const url of ['slabwright://app/index.html', 'blob:slabwright://app/1']) expect(isCanceled(url)).toBe(false)
  })
  it('2. gives the page no Node', () => {
    expect(preferences()).toMatchObject({ nodeIntegration: false, nodeIntegrationInWorker: false })
    expect(preferences().nodeIntegrationInSubFrames).toBeUndefined()
  })
  it('3. isolates the preload', () => expect(preferences().contextIsolation).toBe(true))
  it('4. sandboxes every process', () => {
    expect(preferences().sandbox).toBe(true)
    expect(state.isSandboxed).toBe(true)
  })
  it('5. grants the clipboard to our own page, no other permission and no device', () => {
    const page = 'slabwright://app/index.html'
    const isGranted = (permission: string, url: string, isMainFrame = true) => {
      let answer: unknown
      const request = { requestingUrl: url, isMainFrame }
      ask('permissionRequest', {}, permission, (given: unknown) => (answer = given), request)
      const checked = ask('permissionCheck', {}, permission, url, { isMainFrame })
      expect(answer).toBe(checked)
      return checked
    }
    for (const permission of ['clipboard-read', 'clipboard-sanitized-write']) {
      expect(isGranted(permission, page)).toBe(true)
      expect(isGranted(permission, 'slabwright://app')).toBe(true)
      expect(isGranted(permission, page, false)).toBe(false)
      for (const url of ['https://plans.example/', 'slabwright://app.plans.example/', 'slabwright://other/', ''])
        expect(isGranted(permission, url)).toBe(false)
    }
    for (const permission of ['media', 'geolocation', 'deprecated-sync-clipboard-read', 'fileSystem', 'unknown'])
      expect(isGranted(permission, page)).toBe(false)
    expect(ask('devicePermission', {})).toBe(false)
  })
  it('6. leaves web security on', () => expect(preferences().webSecurity).toBe(true))
  it('7. sends a policy with every page', async () => {
    const answer = await state.scheme?.(new Request('slabwright://app/index.html'))
    expect(answer?.headers.get('content-security-policy')).toMatch(/^default-src 'none'; script-src 'self' 'nonce-/)
    expect(answer?.headers.get('content-security-policy')).not.toContain('unsafe')
  })
  it('8. runs no insecure content', () => expect(preferences().allowRunningInsecureContent).toBeUndefined())
  it('9. uses no experimental features', () => expect(preferences().experimentalFeatures).toBeUndefined())
  it('10. switches on no features of the engine', () => expect(preferences().enableBlinkFeatures).toBeUndefined())
  it('11. has no pages within pages that could open windows', () => expect(preferences().webviewTag).toBe(false))
  it('12. lets no page within a page attach', () => {
    const preventDefault = vi.fn()
    state.windows[0]?.webContents.emit('will-attach-webview', { preventDefault })
    expect(preventDefault).toHaveBeenCalledOnce()
  })
  it('13. goes to no other address', () => {
    for (const name of ['will-navigate', 'will-redirect', 'will-frame-navigate']) {
      const preventDefault = vi.fn()
      for (const url of [
        'https://plans.example/',
        'file:///x',
        'javascript:1',
        'data:text/html,x',
        'slabwright://app.x/',
      ])
        state.windows[0]?.webContents.emit(name, { preventDefault, url })
      expect(preventDefault).toHaveBeenCalledTimes(5)
      state.windows[0]?.webContents.emit(name, { preventDefault, url: 'slabwright://app/index.html' })
      expect(preventDefault).toHaveBeenCalledTimes(5)
    }
  })
  it('14. opens no windows for a page', () =>
    expect(state.windows[0]?.webContents.openHandler()).toEqual({ action: 'deny' }))
  it('15. hands no address to the system: nothing of ours calls openExternal', () => {
    for (const file of ['dialogs', 'guards', 'menu', 'scheme', 'siteWindow', 'startDesktop', 'answerCalls', 'main'])
      expect(readFileSync(`electron/main/${file}.ts`, 'utf8')).not.toMatch(/openExternal|\bshell\b/)
  })
  it('16. names a current Electron, exactly', () => {
    const { devDependencies } = JSON.parse(readFileSync('package.json', 'utf8')) as {
      devDependencies: Record<string, string>
    }
    expect(Number(devDependencies.electron?.split('.')[0])).toBeGreaterThanOrEqual(45)
  })
  it('17. checks who sends each message: the group above', () =>
    expect(state.handlers.size).toBe(hostMethodNames.length))
  it('18. uses a scheme of its own, not files, and answers nothing outside the page', async () => {
    expect(state.schemes).toEqual([
      { scheme: 'slabwright', privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
    ])
    writeFileSync(join(disk.root, 'secret.js'), 'secret')
    for (const url of [
      'slabwright://app/../secret.js',
      'slabwright://app/%2e%2e/secret.js',
      'slabwright://other/index.html',
      'slabwright://app/index.html?x',
    ])
      expect((await state.scheme?.(new Request(url)))?.status).toBe(404)
  })
  it('19. sets the fuses when it is packed', () => {
    const packing = readFileSync('scripts/package.mjs', 'utf8')
    for (const fuse of [
      'RunAsNode',
      'EnableNodeOptionsEnvironmentVariable',
      'EnableNodeCliInspectArguments',
      'GrantFileProtocolExtraPrivileges',
    ])
      expect(packing).toMatch(new RegExp(`${fuse}: false`))
    for (const fuse of ['EnableCookieEncryption', 'EnableEmbeddedAsarIntegrityValidation', 'OnlyLoadAppFromAsar'])
      expect(packing).toMatch(new RegExp(`${fuse}: true`))
  })
  it('20. shows the page one function for each method and a way to hear, nothing of Electron', async () => {
    const page = await pageOf(0)
    const shown = await page.evaluate(() => ({
      names: Object.keys(window.slabwright ?? {}),
      calls: Object.keys(window.slabwright?.calls ?? {}),
      others: ['require', 'process', 'module', 'Buffer', 'electron', 'ipcRenderer'].filter(name => name in window),
    }))
    expect(shown).toEqual({ names: ['calls', 'listen'], calls: [...hostMethodNames], others: [] })
  })
})
