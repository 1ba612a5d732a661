import { copyFileSync } from 'node:fs'
import { join } from 'node:path'
import { type BuildOptions, build } from 'esbuild'

/** Bundles the test page and the real preload into a folder; gives the path of the preload. */
export async function buildHostPage(folder: string): Promise<string> {
  const shared = { bundle: true, logLevel: 'warning' as const, external: ['electron'] } satisfies BuildOptions
  await build({
    ...shared,
    entryPoints: ['tests/desktop/page/page.ts'],
    outfile: join(folder, 'page', 'page.js'),
    format: 'esm',
    target: 'es2022',
  })
  copyFileSync('tests/desktop/page/index.html', join(folder, 'page', 'index.html'))
  const preload = join(folder, 'preload.cjs')
  await build({ ...shared, entryPoints: ['electron/preload/preload.ts'], outfile: preload, format: 'cjs' })
  return preload
}
