import { readFile } from 'node:fs/promises'
import { readSite } from '../../core/document/readSite'
import { wordProblem } from '../../core/problems/wordProblem'
import { printMeasures } from '../../core/units/printMeasures'
import type { Site, UnitSystem } from '../../shared/document/site'
import { err, ok, type Problem, type Result } from '../../shared/problem'
import { printProblems } from './printProblems'
import { terminalText } from './terminalText'

const reasons: Record<string, string> = {
  ENOENT: 'there is no such file',
  EISDIR: 'it is a folder',
  EACCES: 'it may not be read',
}

/** What keeps a file from being taken as a site. */
export interface Refused {
  /** 1: a site whose values cannot be planned with; 2: not readable as a site at all. */
  readonly exitCode: 1 | 2
  /** Lines for the person at the terminal. */
  readonly text: string
  readonly problems: readonly Problem[]
  /** As far as the file tells. */
  readonly siteId: string
}

/** A file with one of these holds a site in the right form, with values that cannot be. */
const valueCodes: ReadonlySet<string> = new Set([
  'outOfRange',
  'badNumber',
  'unknownZone',
  'badDate',
  'badTime',
  'repeatedId',
  'danglingId',
  'limitExceeded',
])

interface Header {
  readonly units: UnitSystem
  readonly siteId: string
}

function readHeader(bytes: Uint8Array): Header {
  try {
    const raw = JSON.parse(new TextDecoder().decode(bytes)) as { units?: unknown; id?: unknown } | null
    return {
      units: raw?.units === 'metric' ? 'metric' : 'ftin',
      siteId: typeof raw?.id === 'string' ? raw.id : '',
    }
  } catch {
    return { units: 'ftin', siteId: '' }
  }
}

export async function loadSite(file: string): Promise<Result<Site, Refused>> {
  let bytes: Uint8Array
  try {
    bytes = await readFile(file)
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? ''
    return err({
      exitCode: 2,
      text: `${file} cannot be opened: ${reasons[code] ?? code}.\n`,
      problems: [],
      siteId: '',
    })
  }
  const site = readSite(bytes)
  if (site.ok) return ok(site.value)
  const { units, siteId } = readHeader(bytes)
  const problems = site.error.map(finding => wordProblem(finding, printMeasures(units)))
  return err({
    exitCode: problems.every(p => valueCodes.has(p.code)) ? 1 : 2,
    text: terminalText(`${file} cannot be planned:\n${printProblems(problems, units)}`),
    problems,
    siteId,
  })
}
