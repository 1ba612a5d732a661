import { spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { buildCli, buildDesktop, buildLoopback, buildPage, root } from './build.mjs'
import { windowOnDisk } from './windowOnDisk.mjs'

const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'))
const installLimitMs = 20_000

/**
 * The planner in its window; in this machine's browser where the window cannot be had; and where nobody could see
 * either, the plan of a sample in the terminal besides. `--once` prints that plan and ends.
 */
export async function start(given) {
  const isOnce = given.includes('--once')
  const rest = given.filter(argument => argument !== '--once')
  if (isOnce) return printSample()
  const isSeen = hasDisplay()
  const window = isSeen && !rest.includes('--browser') ? findWindow() : null
  await buildPage()
  if (window !== null) return run(window, [...(isRoot() ? ['--no-sandbox'] : []), await buildDesktop(), ...rest])
  if (!isSeen) await printSample()
  const host = await buildLoopback()
  return run(process.execPath, [host, '--version', version, ...rest.filter(argument => argument !== '--browser')])
}

async function printSample() {
  return run(process.execPath, [await buildCli(), 'plan', join(root, 'samples', 'l-patio.slabwright.json')])
}

async function run(program, rest) {
  const child = spawn(program, rest, { stdio: 'inherit', cwd: root })
  // The child hears Ctrl-C itself and ends in its own time.
  process.on('SIGINT', () => {})
  process.on('SIGTERM', () => child.kill('SIGTERM'))
  const [code] = await once(child, 'exit')
  return code ?? 1
}

function hasDisplay() {
  if (process.platform === 'darwin' || process.platform === 'win32') return true
  return Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY)
}

const isRoot = () => process.getuid?.() === 0

/**
 * The window's program on disk, or null. The package itself is never loaded before that: loading it would start a
 * download without a limit. Its installer is tried once, with one.
 */
function findWindow() {
  const found = windowOnDisk()
  if (found !== null) return found
  const tried = join(root, 'dist', 'window-tried')
  const installer = join(root, 'node_modules', 'electron', 'install.js')
  if (!existsSync(installer) || (existsSync(tried) && readFileSync(tried, 'utf8') === process.version)) return null
  console.log('Fetching the desktop window; without it the planner opens in your browser.')
  spawnSync(process.execPath, [installer], { stdio: 'ignore', timeout: installLimitMs })
  mkdirSync(join(root, 'dist'), { recursive: true })
  writeFileSync(tried, process.version)
  return windowOnDisk()
}
