import { spawnSync } from 'node:child_process'
import { readdirSync } from 'node:fs'
import { basename, join } from 'node:path'
import { buildCli, buildDesktop, buildLoopback, buildPage, bundle, root } from './build.mjs'

// Benches run as bundles: a loader that rewrites functions on the way would be measured along with them.
const names = readdirSync(join(root, 'tests/bench'))
  .filter(name => name.endsWith('.bench.ts'))
  .map(name => basename(name, '.ts'))
await Promise.all([buildCli(), buildLoopback(), buildDesktop(), buildPage()])
await bundle(Object.fromEntries(['index', ...names].map(name => [name, `tests/bench/${name}.ts`])), 'dist/bench', [
  'playwright',
])
const { status } = spawnSync(
  process.execPath,
  ['--expose-gc', join(root, 'dist/bench/index.mjs'), ...names, '--', ...process.argv.slice(2)],
  { stdio: 'inherit', cwd: root },
)
process.exitCode = status ?? 1
