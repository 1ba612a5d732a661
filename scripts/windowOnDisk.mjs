import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { root } from './build.mjs'

/** The window's program, or null where it was never fetched. Looks only: the package itself is not loaded. */
export function windowOnDisk() {
  const folder = join(root, 'node_modules', 'electron')
  const pathFile = join(folder, 'path.txt')
  if (!existsSync(pathFile)) return null
  const program = join(folder, 'dist', readFileSync(pathFile, 'utf8'))
  return existsSync(program) ? program : null
}
