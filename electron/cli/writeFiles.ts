import { mkdir, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { err, ok, type Result } from '../../shared/problem'

export type NamedFile = readonly [name: string, content: string | Uint8Array]

/** Writes files into a folder, made if missing. Returns their paths; `what` begins the sentence of a failure. */
export async function writeFiles(
  what: string,
  files: readonly NamedFile[],
  folder: string,
): Promise<Result<readonly string[], string>> {
  try {
    await mkdir(folder, { recursive: true })
    const paths: string[] = []
    for (const [name, content] of files) {
      const path = join(folder, name)
      await writeFile(path, content)
      paths.push(path)
    }
    return ok(paths)
  } catch (error) {
    return err(`${what} cannot be written into ${folder}: ${(error as Error).message}.\n`)
  }
}
