import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

export interface PackageLicense {
  readonly name: string
  readonly version: string
  /** SPDX expression, or what the package wrote instead. */
  readonly license: string
}

export interface LicenseReport {
  readonly packages: readonly PackageLicense[]
  readonly unlisted: readonly PackageLicense[]
}

/** SPDX identifiers that ask for no more than keeping a notice. */
const permissive: ReadonlySet<string> = new Set([
  '0BSD',
  'Apache-2.0',
  'BlueOak-1.0.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'BSL-1.0',
  'CC0-1.0',
  'EDL-1.0',
  'ISC',
  'MIT',
  'MIT-0',
  'OFL-1.1',
  'Python-2.0',
  'Unlicense',
  'WTFPL',
  'Zlib',
])

interface Exception {
  readonly name: RegExp
  /** What the package states; another statement is looked at again. */
  readonly states: string
  readonly because: string
}

const exceptions: readonly Exception[] = [
  { name: /^png-js$/, states: 'none stated', because: 'its LICENSE file is MIT' },
  { name: /^suncalc$/, states: 'none stated', because: 'its LICENSE file is BSD-2-Clause' },
  { name: /^arc$/, states: 'BSD', because: 'its LICENSE file is BSD-2-Clause' },
  { name: /^splaytree-ts$/, states: 'BDS-3-Clause', because: 'misspelled; its LICENSE file is BSD-3-Clause' },
  { name: /^lightningcss(-|$)/, states: 'MPL-2.0', because: 'build tool, unchanged and not shipped' },
  { name: /^@resvg\/resvg-js(-|$)/, states: 'MPL-2.0', because: 'test tool, unchanged and not shipped' },
  { name: /^(?:@axe-core\/playwright|axe-core)$/, states: 'MPL-2.0', because: 'test tool, unchanged and not shipped' },
  { name: /^ical\.js$/, states: 'MPL-2.0', because: 'test tool, unchanged and not shipped' },
]

/**
 * Every package the lock file installs, with its license read from the installed package (else from the lock file),
 * and those whose license is not on the list.
 */
export function listLicenses(root: string): LicenseReport {
  const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as {
    packages?: Record<string, { version?: string; license?: string; link?: boolean }>
  }
  const packages = new Map<string, PackageLicense>()
  for (const [path, entry] of Object.entries(lock.packages ?? {})) {
    if (path === '' || entry.link === true) continue
    const name = path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length)
    const version = entry.version ?? '?'
    const license = readInstalled(join(root, path)) ?? entry.license ?? 'none stated'
    packages.set(`${name} ${version}`, { name, version, license })
  }
  const all = [...packages.values()].sort((a, b) => (a.name < b.name ? -1 : 1))
  return { packages: all, unlisted: all.filter(found => !isListed(found.license) && !isExcepted(found)) }
}

function readInstalled(folder: string): string | undefined {
  const path = join(folder, 'package.json')
  if (!existsSync(path)) return undefined
  const { license, licenses } = JSON.parse(readFileSync(path, 'utf8')) as {
    license?: string | { type?: string }
    licenses?: readonly { type?: string }[]
  }
  return typeof license === 'string' ? license : (license?.type ?? licenses?.[0]?.type)
}

/** An expression is listed when one side of each OR, and both sides of each AND, are. */
function isListed(expression: string): boolean {
  const text = expression.trim().replace(/^\((.*)\)$/, '$1')
  if (/\sAND\s/.test(text)) return text.split(/\sAND\s/).every(isListed)
  if (/\sOR\s/.test(text)) return text.split(/\sOR\s/).some(isListed)
  return permissive.has(text)
}

function isExcepted({ name, license }: PackageLicense): boolean {
  return exceptions.some(exception => exception.name.test(name) && exception.states === license)
}
