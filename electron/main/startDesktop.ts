import { join, resolve } from 'node:path'
import { app } from 'electron'
import { nodeFiles } from '../files/fileLayer'
import { siteEnding } from '../files/fileNames'
import { siteFiles } from '../files/siteFiles'
import { hostApi } from '../host/hostApi'
import { localDay, localZone } from '../host/localDay'
import { dataFolder } from '../host/userFolders'
import { pageFiles } from '../page/pageFiles'
import { answerCalls } from './answerCalls'
import { guardContents, guardSession } from './guards'
import { setMenu } from './menu'
import { claimScheme, serveScheme } from './scheme'
import { openSiteWindow, type SiteWindow } from './siteWindow'

export interface DesktopOptions {
  /** The built page. */
  readonly pageFolder: string
  readonly samplesFolder: string
  /** The preload script, one file. */
  readonly preload: string
  readonly argv: readonly string[]
  /** Where the program keeps its own files. */
  readonly dataFolder?: string
}

/** The desktop window, from the claim of the scheme to the last window closed. */
export function startDesktop({ pageFolder, samplesFolder, preload, argv, ...options }: DesktopOptions): void {
  if (!app.requestSingleInstanceLock()) {
    app.quit()
    return
  }
  const windows = new Set<SiteWindow>()
  const early: string[] = []
  let openWindow: ((path?: string) => void) | null = null
  const openFromOutside = (path: string | undefined) => {
    if (openWindow === null) early.push(...(path === undefined ? [] : [path]))
    else openWindow(path)
  }

  claimScheme()
  guardContents()
  app.enableSandbox()
  app.on('second-instance', (_event, given) => openFromOutside(siteInArguments(given)))
  app.on('open-file', (event, path) => {
    event.preventDefault()
    openFromOutside(path)
  })
  app.on('window-all-closed', () => {
    if (process.platform !== 'darwin') app.quit()
  })

  void app.whenReady().then(() => {
    guardSession()
    serveScheme(pageFiles(pageFolder))
    const folder = folderInArguments(argv) ?? join(app.getPath('documents'), 'Slabwright')
    const program = siteFiles({
      layer: nodeFiles,
      folder,
      dataFolder: options.dataFolder ?? dataFolder(),
      samplesFolder,
      now: () => new Date(),
      dayOf: localDay,
      confined: false,
    })
    openWindow = path => {
      const files = program.openWindow()
      const window = openSiteWindow({
        preload,
        files,
        makeApi: (dialogs, tellState) =>
          hostApi({
            files,
            layer: nodeFiles,
            appVersion: app.getVersion(),
            folder,
            today: () => localDay(new Date()),
            zone: localZone(),
            dialogs,
            tellState,
          }),
        onGone: () => windows.delete(window),
      })
      windows.add(window)
      if (path !== undefined) window.openPath(path)
    }
    answerCalls(windows)
    setMenu(
      entry => [...windows].find(({ contents }) => contents.isFocused())?.tell({ kind: 'menu', entry }),
      () => openWindow?.(),
    )
    app.on('activate', () => {
      if (windows.size === 0) openWindow?.()
    })
    const paths = [...early, siteInArguments(argv)].filter(path => path !== undefined)
    if (paths.length === 0) openWindow()
    for (const path of paths) openWindow(path)
  })
}

function siteInArguments(argv: readonly string[]): string | undefined {
  return argv.slice(1).find(argument => !argument.startsWith('-') && argument.toLowerCase().endsWith(siteEnding))
}

function folderInArguments(argv: readonly string[]): string | undefined {
  const at = argv.indexOf('--folder')
  const given = at < 0 ? undefined : argv[at + 1]
  return given === undefined ? undefined : resolve(given)
}
