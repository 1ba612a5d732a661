/**
 * Stands in for the `electron` module, so that the real main and preload sources run against Chromium where the window's
 * program is not on disk. It proves nothing about process isolation, native dialogs, fuses or packaging. What it offers
 * is checked against the types of the real module: a member that Electron lacks does not compile.
 */
import { EventEmitter } from 'node:events'
import { readFileSync } from 'node:fs'
import type * as Electron from 'electron'
import type { BrowserContext, Page } from 'playwright'

export const testOrigin = 'https://slabwright-app.test'
const realOrigin = 'slabwright://app'

type Offer<T> = { readonly [K in keyof T]?: unknown }
type Listener = (...given: never[]) => unknown
type Handler = (event: unknown, ...given: unknown[]) => unknown

export interface StandInState {
  context: BrowserContext | null
  readonly handlers: Map<string, Handler>
  readonly windows: StandInWindow[]
  readonly dialogs: { kind: string; answer: unknown }[]
  readonly asked: { kind: string; options: unknown }[]
  readonly schemes: unknown[]
  readonly session: Map<string, Listener>
  scheme: ((request: Request) => Response | Promise<Response>) | null
  menu: Electron.MenuItemConstructorOptions[]
  isSandboxed: boolean
  isFirst: boolean
  hasQuit: boolean
}

export interface StandInWindow extends EventEmitter {
  readonly options: Electron.BrowserWindowConstructorOptions
  readonly webContents: EventEmitter & { readonly openHandler: () => { action: string } }
  readonly page: Promise<Page>
  isGone: boolean
}

export function createStandIn() {
  const state: StandInState = {
    context: null,
    handlers: new Map(),
    windows: [],
    dialogs: [],
    asked: [],
    schemes: [],
    session: new Map(),
    scheme: null,
    menu: [],
    isSandboxed: false,
    isFirst: true,
    hasQuit: false,
  }

  const appEvents = new EventEmitter()
  const app = Object.assign(appEvents, {
    requestSingleInstanceLock: () => state.isFirst,
    quit: () => {
      state.hasQuit = true
    },
    enableSandbox: () => {
      state.isSandboxed = true
    },
    whenReady: () => Promise.resolve(),
    getPath: (name: string) => `/nowhere/${name}`,
    getVersion: () => '0.0.0',
  } satisfies Offer<Electron.App>)

  const protocol = {
    registerSchemesAsPrivileged: (schemes: unknown[]) => state.schemes.push(...schemes),
    handle: (_scheme: string, handler: typeof state.scheme) => {
      state.scheme = handler
    },
  } satisfies Offer<Electron.Protocol>

  const keep = (name: string) => (listener: Listener) => state.session.set(name, listener)
  const defaultSession = {
    setPermissionRequestHandler: keep('permissionRequest'),
    setPermissionCheckHandler: keep('permissionCheck'),
    setDevicePermissionHandler: keep('devicePermission'),
    setSpellCheckerEnabled: () => {},
    webRequest: { onBeforeRequest: keep('request') } satisfies Offer<Electron.WebRequest>,
    on: (name: string, listener: Listener) => state.session.set(name, listener),
  } satisfies Offer<Electron.Session>

  const ipcMain = {
    handle: (channel: string, handler: Handler) => {
      if (state.handlers.has(channel)) throw new Error(`a second handler for ${channel}`)
      state.handlers.set(channel, handler)
    },
  } satisfies Offer<Electron.IpcMain>

  const answerDialog = async (kind: string, options: unknown) => {
    state.asked.push({ kind, options })
    const next = state.dialogs.shift()
    if (next?.kind !== kind) throw new Error(`an unexpected dialog: ${kind}`)
    return next.answer
  }
  const dialog = {
    showOpenDialog: (_window: unknown, options: unknown) => answerDialog('open', options),
    showSaveDialog: (_window: unknown, options: unknown) => answerDialog('save', options),
    showMessageBox: (_window: unknown, options: unknown) => answerDialog('message', options),
  } satisfies Offer<Electron.Dialog>

  const Menu = {
    buildFromTemplate: (template: Electron.MenuItemConstructorOptions[]) => template,
    setApplicationMenu: (template: unknown) => {
      state.menu = template as Electron.MenuItemConstructorOptions[]
    },
  } satisfies Offer<typeof Electron.Menu>

  /** The clipboard is the browser's, and given as far as the real handlers give it to the page. */
  const grantClipboard = async (context: BrowserContext, url: string) => {
    const isGranted = (permission: string): boolean => {
      let isAnswered = false
      const answer = (given: boolean) => (isAnswered = given)
      const [request, check] = [state.session.get('permissionRequest'), state.session.get('permissionCheck')]
      const details = { requestingUrl: url, isMainFrame: true }
      ;(request as Handler | undefined)?.({}, permission, answer, details)
      return isAnswered && (check as Handler | undefined)?.({}, permission, new URL(url).href, details) === true
    }
    const permissions = [
      ...(isGranted('clipboard-read') ? ['clipboard-read'] : []),
      ...(isGranted('clipboard-sanitized-write') ? ['clipboard-write'] : []),
    ]
    await context.grantPermissions(permissions, { origin: testOrigin })
  }

  /** Opens the page of a window: the preload first, its calls by one binding, our scheme by the real handler. */
  const openPage = async (window: StandInWindow, preload: string, address: string): Promise<Page> => {
    if (state.context === null) throw new Error('no browser was given')
    await grantClipboard(state.context, address)
    const page = await state.context.newPage()
    await page.route('**/*', async route => {
      const url = route.request().url()
      if (!url.startsWith(`${testOrigin}/`) || state.scheme === null) return route.abort()
      const answer = await state.scheme(new Request(url.replace(testOrigin, realOrigin)))
      return route.fulfill({
        status: answer.status,
        headers: Object.fromEntries(answer.headers),
        body: Buffer.from(await answer.arrayBuffer()),
      })
    })
    await page.exposeBinding('standInInvoke', async ({ frame }, channel: string, given: unknown[]) => {
      const handler = state.handlers.get(channel)
      if (handler === undefined) throw new Error(`no handler for ${channel}`)
      const parent = frame.parentFrame()
      const senderFrame = {
        url: frame.url().replace(testOrigin, realOrigin),
        parent: parent === null ? null : {},
      } satisfies Offer<Electron.WebFrameMain>
      return handler({ sender: window.webContents, senderFrame } satisfies Offer<Electron.IpcMainInvokeEvent>, ...given)
    })
    const shim = readFileSync(new URL('./preloadShim.js', import.meta.url), 'utf8')
    const source = readFileSync(preload, 'utf8')
    await page.addInitScript({
      content: `${shim};((require, module, exports) => {${source}\n})(standInRequire, { exports: {} }, {})`,
    })
    page.on('load', () => window.webContents.emit('did-finish-load'))
    await page.goto(address.replace(realOrigin, testOrigin))
    window.emit('ready-to-show')
    return page
  }

  class BrowserWindow extends EventEmitter implements StandInWindow {
    readonly webContents
    isGone = false
    page: Promise<Page> = Promise.reject(new Error('nothing was loaded'))
    constructor(readonly options: Electron.BrowserWindowConstructorOptions) {
      super()
      this.page.catch(() => {})
      let openHandler = () => ({ action: 'allow' })
      this.webContents = Object.assign(new EventEmitter(), {
        get openHandler() {
          return openHandler
        },
        ...({
          send: (channel: string, told: unknown) => {
            void this.page.then(page =>
              page.evaluate(`standInTell(${JSON.stringify(channel)}, ${JSON.stringify(told)})`),
            )
          },
          isFocused: () => state.windows.at(-1) === this,
          setWindowOpenHandler: (handler: typeof openHandler) => {
            openHandler = handler
          },
          reload: () => void this.page.then(page => page.reload()),
          print: (_options: unknown, done: (printed: boolean) => void) => {
            void answerDialog('print', _options).then(answer => done(answer === true))
          },
        } satisfies Offer<Electron.WebContents>),
      })
      // Object.assign copies what a getter gives at that moment.
      Object.defineProperty(this.webContents, 'openHandler', { get: () => openHandler })
      state.windows.push(this)
      appEvents.emit('web-contents-created', {}, this.webContents)
    }
    loadURL(address: string) {
      this.page = openPage(this, this.options.webPreferences?.preload ?? '', address)
      return this.page
    }
    setTitle() {}
    setDocumentEdited() {}
    show() {}
    focus() {}
    isMinimized() {
      return false
    }
    restore() {}
    destroy() {
      this.isGone = true
      state.windows.splice(state.windows.indexOf(this), 1)
      void this.page.then(page => page.close())
      this.emit('closed')
    }
    /** As the user does by the cross in the corner. */
    close() {
      let isPrevented = false
      this.emit('close', { preventDefault: () => (isPrevented = true) })
      if (!isPrevented) this.destroy()
    }
  }
  const offered = BrowserWindow.prototype satisfies Offer<Electron.BrowserWindow> & {
    isGone: boolean
    page: unknown
    options: unknown
  }

  return {
    state,
    module: { app, protocol, session: { defaultSession }, ipcMain, dialog, Menu, BrowserWindow },
    offered,
  }
}

/** Clicks an entry of the menu by its label. */
export function clickMenu({ menu }: StandInState, label: string): void {
  const entries = menu.flatMap(({ submenu }) => (Array.isArray(submenu) ? submenu : []))
  const entry = entries.find(one => one.label === label)
  if (entry?.click === undefined) throw new Error(`no entry ${label}`)
  ;(entry.click as () => void)()
}
