import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, renameSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { delimiter, join, resolve } from 'node:path'

export interface FoundBrowser {
  readonly path: string
  /** What the browser needs in its environment besides what is there. */
  readonly env: Readonly<Record<string, string>>
  readonly origin: 'named' | 'installed' | 'package'
}

/** Quiet and offline; without a sandbox only where the user is root, who has none to give. */
export const browserFlags: readonly string[] = [
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

const commands = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge', 'chrome']

const places = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  ...['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap(name => {
    const folder = process.env[name]
    if (folder === undefined) return []
    return ['Google\\Chrome\\Application\\chrome.exe', 'Microsoft\\Edge\\Application\\msedge.exe'].map(path =>
      join(folder, path),
    )
  }),
]

/**
 * A Chromium-based browser to run the tests in, and to take pictures with: the one SLABWRIGHT_BROWSER names, else one
 * that is installed, else the one that comes as a package (Linux on x64). Throws when there is none.
 */
export function findBrowser({
  named = process.env.SLABWRIGHT_BROWSER,
  lookFor = installedBrowsers(),
}: {
  named?: string | undefined
  lookFor?: readonly string[]
} = {}): FoundBrowser {
  if (named !== undefined) return { path: named, env: {}, origin: 'named' }
  const installed = lookFor.find(path => existsSync(path))
  if (installed !== undefined) return { path: installed, env: {}, origin: 'installed' }
  return unpackBrowser()
}

function installedBrowsers(): string[] {
  const folders = (process.env.PATH ?? '').split(delimiter)
  return [...commands.flatMap(command => folders.map(folder => join(folder, command))), ...places]
}

function unpackBrowser(): FoundBrowser {
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    throw new Error('No Chrome, Edge or Chromium was found. Install one, or name it in SLABWRIGHT_BROWSER.')
  }
  const folder = join(tmpdir(), `slabwright-browser-143-${process.getuid?.() ?? 0}`)
  if (!existsSync(folder)) unpackInto(folder)
  const path = join(folder, 'chromium')
  const fonts = { FONTCONFIG_PATH: join(folder, 'fonts') }
  // Where the system lacks fonts, or a library the browser is linked to, the package brings its own.
  const env = [
    existsSync('/etc/fonts/fonts.conf') ? {} : fonts,
    { ...fonts, LD_LIBRARY_PATH: join(folder, 'al2023', 'lib') },
  ].find(candidate => starts(path, candidate))
  if (env === undefined) throw new Error(`The browser unpacked at ${path} does not start.`)
  return { path, env, origin: 'package' }
}

/**
 * Unpacks in a folder of its own and renames it, so that a second run never sees half a browser. The variable is what
 * makes the package unpack the libraries it brings.
 */
function unpackInto(folder: string): void {
  const fresh = mkdtempSync(`${folder}-`)
  const { status, stderr } = spawnSync(process.execPath, [resolve('scripts/unpackBrowser.mjs')], {
    env: { ...process.env, TMPDIR: fresh, AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs20.x' },
    encoding: 'utf8',
  })
  if (status !== 0) throw new Error(`The packaged browser could not be unpacked: ${stderr}`)
  try {
    renameSync(fresh, folder)
  } catch (error) {
    if (!existsSync(folder)) throw error
    rmSync(fresh, { recursive: true, force: true })
  }
}

function starts(path: string, env: Readonly<Record<string, string>>): boolean {
  return spawnSync(path, ['--version'], { env: { ...process.env, ...env }, timeout: 20_000 }).status === 0
}
