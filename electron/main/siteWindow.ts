import { BrowserWindow, dialog, type WebContents } from 'electron'
import { eventChannel, type HostApi, type HostEvent } from '../../shared/host'
import type { WindowFiles } from '../files/windowFiles'
import type { Dialogs } from '../host/hostApi'
import { systemDialogs } from './dialogs'
import { pageOrigin } from './scheme'

export interface SiteWindow {
  readonly contents: WebContents
  readonly api: HostApi
  tell(event: HostEvent): void
  /** Opens a file that was handed to the program from outside. */
  openPath(path: string): void
  show(): void
}

export interface SiteWindowOptions {
  readonly preload: string
  readonly files: WindowFiles
  readonly makeApi: (dialogs: Dialogs, tellState: (state: { title: string; unsaved: boolean }) => void) => HostApi
  readonly onGone: () => void
}

/** A window with our page in it, which does not close over unsaved work without asking the page. */
export function openSiteWindow({ preload, files, makeApi, onGone }: SiteWindowOptions): SiteWindow {
  const window = new BrowserWindow({
    width: 1440,
    height: 900,
    minWidth: 1024,
    minHeight: 700,
    show: false,
    title: 'Slabwright',
    webPreferences: {
      preload,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      webSecurity: true,
      webviewTag: false,
      spellcheck: false,
      devTools: process.env.NODE_ENV === 'development',
    },
  })
  const { webContents: contents } = window
  const waiting: HostEvent[] = []
  let isLoaded = false
  let unsaved = false

  const tell = (event: HostEvent) => {
    if (isLoaded) contents.send(eventChannel, event)
    else waiting.push(event)
  }
  const own = makeApi(systemDialogs(window), state => {
    unsaved = state.unsaved
    window.setTitle(state.title === '' ? 'Slabwright' : `${state.title} — Slabwright`)
    window.setDocumentEdited(state.unsaved)
  })
  const api: HostApi = {
    ...own,
    async close(input) {
      const answer = await own.close(input)
      unsaved = false
      if (input.leaving === true) window.destroy()
      return answer
    },
  }

  contents.on('did-finish-load', () => {
    isLoaded = true
    for (const event of waiting.splice(0)) tell(event)
  })
  contents.on('render-process-gone', () => {
    isLoaded = false
    unsaved = false
    // What was kept of the lost page is offered by the page that takes its place.
    void files.leave().then(() => contents.reload())
  })
  window.on('ready-to-show', () => window.show())
  window.on('close', event => {
    if (!unsaved) return
    event.preventDefault()
    tell({ kind: 'closing' })
  })
  window.on('unresponsive', () => {
    void dialog
      .showMessageBox(window, {
        type: 'warning',
        message: 'The plan does not answer.',
        detail: 'Your work up to about a second ago is kept and will be offered again.',
        buttons: ['Wait', 'Close the window'],
        defaultId: 0,
        cancelId: 0,
      })
      .then(({ response }) => {
        if (response === 1) window.destroy()
      })
  })
  window.on('closed', () => {
    void files.leave()
    onGone()
  })
  void window.loadURL(`${pageOrigin}/index.html`)

  return {
    contents,
    api,
    tell,
    openPath(path) {
      void files
        .openPath(path)
        .then(site =>
          tell(site.ok ? { kind: 'opened', site: site.value } : { kind: 'openFailed', failure: site.error }),
        )
    },
    show() {
      if (window.isMinimized()) window.restore()
      window.focus()
    },
  }
}
