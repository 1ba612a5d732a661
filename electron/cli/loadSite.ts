import { readFile } from 'node:fs/promises'
import { readSite } from '../../core/document/readSite'
import { wordProblem } from '../../core/problems/wordProblem'
import { printMeasures } from '../../core/units/printMeasures'
import type { Site } from '../../shared/document/site'
import { err, ok, type Result } from '../../shared/problem'
import { printProblems } from './printProblems'

const reasons: Record<string, string> = {
  ENOENT: 'there is no such file',
  EISDIR: 'it is a folder',
  EACCES: 'it may not be read',
}

/** Reads a site file; what is wrong with it comes back as lines for the person at the terminal. */
export async function loadSite(file: string): Promise<Result<Site, string>> {
  let bytes: Uint8Array
  try {
    bytes = await readFile(file)
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? ''
    return err(`${file} cannot be opened: ${reasons[code] ?? code}.\n`)
  }
  const site = readSite(bytes)
  if (site.ok) return ok(site.value)
  // The unit system is not known when the file cannot be read.
  const print = printMeasures('ftin')
  return err(`${file} cannot be used:\n${printProblems(site.error.map(finding => wordProblem(finding, print)))}`)
}
