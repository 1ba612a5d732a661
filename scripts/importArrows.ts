import { readdirSync, readFileSync, statSync } from 'node:fs'
import { dirname, join, posix, relative, sep } from 'node:path'
import { stripSource } from './sourceText'

export interface ArrowViolation {
  readonly file: string
  readonly line: number
  readonly what: string
}

export interface ArrowReport {
  readonly modules: number
  readonly violations: readonly ArrowViolation[]
}

const layers = ['shared', 'core', 'electron', 'renderer', 'scripts', 'tests', 'samples'] as const
type Layer = (typeof layers)[number]

/** Which layer may import which; a layer may always import itself. */
const mayImport: Readonly<Record<Layer, readonly Layer[]>> = {
  shared: [],
  core: ['shared'],
  electron: ['core', 'shared'],
  renderer: ['core', 'shared'],
  scripts: ['core', 'shared', 'electron'],
  samples: ['core', 'shared'],
  tests: ['core', 'shared', 'electron', 'renderer', 'scripts', 'samples'],
}

/** Packages the pure layers may import. */
const purePackages: Readonly<Record<'shared' | 'core', readonly string[]>> = {
  shared: ['zod'],
  core: [
    'zod',
    'luxon',
    'immer',
    'polylabel',
    'flatbush',
    'big.js',
    'clipper2-ts',
    'suncalc',
    'geojson',
    '@turf/turf',
    '@photostructure/tz-lookup',
  ],
}

/** Packages with one door: everything else goes through that file. Tests may look behind it. */
const oneDoor: Readonly<Record<string, string>> = {
  'clipper2-ts': 'core/geometry/clip.ts',
  suncalc: 'core/sun/sunPosition.ts',
}

/** Loading the package outside its own program starts a download: only these, which run inside it, may. */
const insideWindow = ['electron/main/', 'electron/preload/']

interface Ban {
  readonly pattern: RegExp
  readonly what: string
}

/** What would make the same input give another answer, or reach out of a pure layer. */
const bans: readonly Ban[] = [
  { pattern: /\bDate\s*(?:\.|\?\.)\s*now\b/g, what: 'reads the clock: Date.now' },
  { pattern: /\bnew\s+Date\s*(?:\(\s*\)|(?![\s(\w$]))/g, what: 'reads the clock: new Date()' },
  { pattern: /(?<![.\w$]|new\s)Date\s*\(/g, what: 'reads the clock: Date()' },
  { pattern: /\bDateTime\s*\.\s*(?:now|local|utc)\s*\(\s*\)/g, what: 'reads the clock: DateTime' },
  { pattern: /\bMath\s*(?:\.|\?\.)\s*random\b/g, what: 'is random: Math.random' },
  { pattern: /=\s*Math\b(?!\s*\.)/g, what: 'hides members of Math' },
  { pattern: /\bMath\s*\[/g, what: 'hides members of Math' },
  { pattern: /(?<![.\w$])performance\b(?!\s*:)/g, what: 'reads the clock: performance' },
  {
    pattern: /(?<![.\w$])(?:setTimeout|setInterval|setImmediate|queueMicrotask|requestAnimationFrame)\b/g,
    what: 'uses a timer',
  },
  { pattern: /(?<![.\w$])console\b(?!\s*:)/g, what: 'writes to the console' },
  { pattern: /(?<![.\w$])(?:process|globalThis|fetch|crypto)\s*[.([]/g, what: 'reaches out of a pure layer' },
  { pattern: /(?<![.\w$])(?:eval|Function)\s*\(/g, what: 'makes code from text' },
]

/**
 * Reads every module under `root` and checks which imports which, and that core and shared stay pure.
 * `modules` counts what was read: a run that saw none proves nothing, and the caller must fail on it.
 */
export function checkArrows(root: string): ArrowReport {
  const violations: ArrowViolation[] = []
  let modules = 0
  for (const layer of layers) {
    for (const path of modulesUnder(join(root, layer))) {
      modules += 1
      const file = relative(root, path).split(sep).join('/')
      const source = readFileSync(path, 'utf8')
      violations.push(...importViolations(layer, file, source))
      if (layer === 'core' || layer === 'shared') violations.push(...banViolations(file, source))
    }
  }
  return { modules, violations }
}

function modulesUnder(folder: string): string[] {
  if (!statSync(folder, { throwIfNoEntry: false })?.isDirectory()) return []
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter(name => /\.(?:ts|tsx|mts|cts|mjs|cjs|js)$/.test(name) && !name.split(sep).includes('node_modules'))
    .map(name => join(folder, name))
    .sort()
}

const importForms = [
  /\b(?:import|export)\b(?:\s+type\b)?\s*[\w$*{},\s]*?\bfrom\s*(['"])(?<name>[^'"\n]+)\1/g,
  /\bimport\s*(['"])(?<name>[^'"\n]+)\1/g,
  /\b(?:import|require|require\.resolve)\s*\(\s*(['"`])(?<name>[^'"`\n]+)\1/g,
]

function importViolations(layer: Layer, file: string, source: string): ArrowViolation[] {
  const code = stripSource(source, 'keep')
  const found: ArrowViolation[] = []
  for (const form of importForms) {
    for (const match of code.matchAll(form)) {
      const name = match.groups?.name
      const what = name === undefined ? null : judgeImport(layer, file, name)
      if (what !== null) found.push({ file, line: lineOf(code, match.index), what })
    }
  }
  if (layer === 'core' || layer === 'shared') {
    for (const match of code.matchAll(/\b(?:import|require)\s*\(\s*[^'"`\s)]/g)) {
      found.push({ file, line: lineOf(code, match.index), what: 'imports a name that is not written out' })
    }
  }
  return found
}

/** Why a module of `layer` may not import `name`, or null. */
function judgeImport(layer: Layer, file: string, name: string): string | null {
  if (name.startsWith('.')) {
    const target = posix.join(dirname(file), name)
    const top = target.split('/')[0] ?? ''
    if (top === layer || !isLayer(top)) return target.startsWith('../') ? `leaves the project: ${name}` : null
    return mayImport[layer].includes(top) ? null : `${layer} may not import ${top}: ${name}`
  }
  const packageName = name.startsWith('@') ? name.split('/').slice(0, 2).join('/') : (name.split('/')[0] ?? name)
  if (packageName === 'electron' && layer !== 'tests' && !insideWindow.some(folder => file.startsWith(folder))) {
    return `only ${insideWindow.join(' and ')} may import electron`
  }
  if (layer === 'tests' || layer === 'scripts') return null
  if (packageName === 'zod' && name !== 'zod/mini') return `import zod/mini, not ${name}`
  const door = oneDoor[packageName]
  if (door !== undefined && door !== file) return `only ${door} may import ${packageName}`
  if (layer === 'core' || layer === 'shared') {
    return purePackages[layer].includes(packageName) ? null : `${layer} may not import ${name}`
  }
  if (layer === 'renderer' && packageName.startsWith('node:')) return `renderer may not import ${name}`
  return null
}

function isLayer(name: string): name is Layer {
  return (layers as readonly string[]).includes(name)
}

function banViolations(file: string, source: string): ArrowViolation[] {
  const code = stripSource(source, 'blank')
  return bans.flatMap(({ pattern, what }) =>
    [...code.matchAll(pattern)].map(match => ({ file, line: lineOf(code, match.index), what })),
  )
}

function lineOf(text: string, index: number): number {
  return text.slice(0, index).split('\n').length
}
