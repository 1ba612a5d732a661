import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { dirname, join, relative, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'

export const root = resolve(dirname(fileURLToPath(import.meta.url)), '..')

/** What the bundles for Node are made from; they are stale when any of these is newer than their stamp. */
const nodeSources = ['core', 'shared', 'electron', 'package-lock.json', 'scripts/build.mjs']
const pageSources = ['core', 'shared', 'renderer', 'samples', 'package-lock.json', 'vite.config.ts']

/** Bundles the command line when it is missing or older than its sources. Returns the file to run. */
export async function buildCli(options) {
  await whenStale('dist/cli', nodeSources, options, () => bundle({ main: 'electron/cli/main.ts' }, 'dist/cli'))
  return join(root, 'dist/cli/main.mjs')
}

/** The loopback host. Returns the file to run. */
export async function buildLoopback(options) {
  await whenStale('dist/loopback', nodeSources, options, () =>
    bundle({ serve: 'electron/loopback/serve.ts' }, 'dist/loopback'),
  )
  return join(root, 'dist/loopback/serve.mjs')
}

/** The desktop window: main and preload, one file each. Returns the file to run. */
export async function buildDesktop(options) {
  await whenStale('dist/desktop', nodeSources, options, async () => {
    const { build } = await import('esbuild')
    await build({
      absWorkingDir: root,
      entryPoints: { main: 'electron/main/main.ts', preload: 'electron/preload/preload.ts' },
      outdir: 'dist/desktop',
      outExtension: { '.js': '.cjs' },
      bundle: true,
      platform: 'node',
      target: 'node24',
      format: 'cjs',
      sourcemap: 'linked',
      external: ['electron'],
      logLevel: 'warning',
    })
  })
  return join(root, 'dist/desktop/main.cjs')
}

/** The page and its worker. Returns their folder. */
export async function buildPage(options) {
  const folder = join(root, 'dist/renderer')
  await alone('dist/page.lock', () =>
    whenStale('dist/page', pageSources, options, async () => {
      const { build } = await import('vite')
      const fresh = `${folder}.${process.pid}`
      await build({ configFile: join(root, 'vite.config.ts'), logLevel: 'error', build: { outDir: fresh } })
      putInPlace(fresh, folder)
    }),
  )
  return folder
}

/** Renames a finished folder into the place of another, which nobody then finds half emptied. */
export function putInPlace(fresh, folder) {
  const old = `${folder}.${process.pid}.old`
  if (existsSync(folder)) renameSync(folder, old)
  renameSync(fresh, folder)
  rmSync(old, { recursive: true, force: true })
}

/**
 * Runs `work` while no other process runs under the same lock: whoever waited finds the work done. A lock whose
 * process has ended is taken over.
 */
export async function alone(lock, work) {
  const path = resolve(root, lock)
  mkdirSync(dirname(path), { recursive: true })
  while (!takeLock(path)) await new Promise(wake => setTimeout(wake, 100))
  try {
    return await work()
  } finally {
    rmSync(path, { force: true })
  }
}

function takeLock(path) {
  try {
    writeFileSync(path, String(process.pid), { flag: 'wx' })
    return true
  } catch (error) {
    if (error.code !== 'EEXIST') throw error
  }
  const holder = holderOf(path)
  if (holder !== null && !isRunning(holder)) dropDeadLock(path, holder)
  return false
}

/** The process that holds the lock; null when it is free, or was made this moment and not yet written. */
function holderOf(path) {
  try {
    return Number(readFileSync(path, 'utf8')) || null
  } catch (error) {
    if (error.code !== 'ENOENT') throw error
    return null
  }
}

/** Of all who wait, one at a time may drop the lock of an ended process, and only while it is still that one's. */
function dropDeadLock(path, holder) {
  const claim = `${path}.${holder}`
  try {
    writeFileSync(claim, '', { flag: 'wx' })
  } catch (error) {
    if (error.code !== 'EEXIST') throw error
    return
  }
  try {
    if (holderOf(path) === holder) rmSync(path, { force: true })
  } finally {
    rmSync(claim, { force: true })
  }
}

function isRunning(pid) {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return error.code === 'EPERM'
  }
}

async function whenStale(folder, sources, { force = false } = {}, build) {
  const stamp = join(root, folder, 'stamp')
  if (!force && !isStale(stamp, sources)) return
  const startedAt = new Date()
  await build()
  mkdirSync(join(root, folder), { recursive: true })
  // Dated to the start: what is edited while bundling counts as newer.
  writeFileSync(stamp, '')
  utimesSync(stamp, startedAt, startedAt)
}

/**
 * Bundles for Node, each entry a file of its own; what is imported lazily stays in chunks of its own. Files are
 * written beside and renamed, entries last, so that a second process building at the same time finds them whole.
 */
export async function bundle(entries, folder, external = []) {
  const { build } = await import('esbuild')
  const outdir = join(root, folder)
  const { outputFiles } = await build({
    absWorkingDir: root,
    entryPoints: entries,
    outdir,
    bundle: true,
    splitting: true,
    write: false,
    platform: 'node',
    target: 'node20',
    format: 'esm',
    outExtension: { '.js': '.mjs' },
    chunkNames: 'chunk-[hash]',
    sourcemap: 'linked',
    // A short command spends a tenth of its time on reading its own code.
    minify: true,
    // Heavy or with files of their own beside them: left in node_modules, loaded only where used.
    external: ['pdfmake', 'pdfmake/*', 'electron', '@resvg/*', ...external],
    banner: {
      js: "import { createRequire as requireFrom } from 'node:module';const require = requireFrom(import.meta.url);",
    },
    logLevel: 'warning',
  })
  mkdirSync(outdir, { recursive: true })
  const isEntry = path => Object.keys(entries).some(name => path === join(outdir, `${name}.mjs`))
  for (const { path, contents } of [...outputFiles].sort((a, b) => isEntry(a.path) - isEntry(b.path))) {
    mkdirSync(dirname(path), { recursive: true })
    writeFileSync(`${path}.${process.pid}`, contents)
    renameSync(`${path}.${process.pid}`, path)
  }
  const fresh = new Set(outputFiles.map(({ path }) => relative(outdir, path)))
  for (const name of readdirSync(outdir)) {
    if (/^chunk-\w+\.mjs(?:\.map)?$/.test(name) && !fresh.has(name)) rmSync(join(outdir, name), { force: true })
  }
  return outdir
}

function isStale(stamp, sources) {
  const built = statSync(stamp, { throwIfNoEntry: false })
  return !built || sources.some(source => isNewer(join(root, source), built.mtimeMs))
}

function isNewer(path, thanMs) {
  const found = statSync(path, { throwIfNoEntry: false })
  if (!found) return false
  if (found.mtimeMs > thanMs) return true
  return found.isDirectory() && readdirSync(path).some(name => isNewer(join(path, name), thanMs))
}
