import { mkdirSync, readdirSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs'
import { dirname, join, relative, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'

export const root = resolve(dirname(fileURLToPath(import.meta.url)), '..')

/** What each bundle is made from; it is stale when any of these is newer than its stamp. */
const sources = ['core', 'shared', 'electron', 'package-lock.json', 'scripts/build.mjs']

const cli = { entries: { main: 'electron/cli/main.ts' }, folder: 'dist/cli' }

/** Bundles the command line when it is missing or older than its sources. Returns the file to run. */
export async function buildCli({ force = false } = {}) {
  const stamp = join(root, cli.folder, 'stamp')
  if (force || isStale(stamp)) await bundle(cli.entries, cli.folder, stamp)
  return join(root, cli.folder, 'main.mjs')
}

/**
 * Bundles for Node, each entry a file of its own; what is imported lazily stays in chunks of its own. Files are
 * written beside and renamed, entries last, so that a second process building at the same time finds them whole.
 */
export async function bundle(entries, folder, stamp) {
  const startedAt = new Date()
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
    // Heavy or with files of their own beside them: left in node_modules, loaded only where used.
    external: ['pdfmake', 'pdfmake/*', 'electron', '@resvg/*'],
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
  if (stamp) {
    // Dated to the start: what is edited while bundling counts as newer.
    writeFileSync(stamp, '')
    utimesSync(stamp, startedAt, startedAt)
  }
  return outdir
}

function isStale(stamp) {
  const built = statSync(stamp, { throwIfNoEntry: false })
  return !built || sources.some(source => isNewer(join(root, source), built.mtimeMs))
}

function isNewer(path, thanMs) {
  const found = statSync(path, { throwIfNoEntry: false })
  if (!found) return false
  if (found.mtimeMs > thanMs) return true
  return found.isDirectory() && readdirSync(path).some(name => isNewer(join(path, name), thanMs))
}
