import type { Site } from '../../shared/document/site'
import { onceFrozen } from '../../shared/onceFrozen'

/** What the file opens with; every other key follows in alphabetical order, pictures last. */
const firstKeys = ['format', 'version', 'id', 'name']
const lineLength = 100

const writeNumber = (value: number): string => {
  if (!Number.isFinite(value)) throw new RangeError(`a site cannot hold the number ${value}`)
  return JSON.stringify(value === 0 ? 0 : value)
}

const keysOf = (value: object): string[] =>
  Object.keys(value)
    .filter(key => (value as Record<string, unknown>)[key] !== undefined)
    .sort()

/** Where the rows of a site's own lists stand, and those of a slab's. */
const rowIndents: ReadonlySet<string> = new Set([' '.repeat(4), ' '.repeat(8)])

const writeRow = onceFrozen(
  (row: object, indent: string) => ({ indent, text: writeNested(row, indent) }),
  (known, indent) => known.indent === indent,
)

const write = (value: unknown, indent: string): string => {
  if (typeof value === 'number') return writeNumber(value)
  if (typeof value !== 'object' || value === null) return JSON.stringify(value)
  return rowIndents.has(indent) ? writeRow(value, indent).text : writeNested(value, indent)
}

/** One line where it fits, else one entry a line. */
const writeNested = (value: object, indent: string): string => {
  const inner = `${indent}  `
  const list = Array.isArray(value)
  const entries = list
    ? value.map(entry => write(entry, inner))
    : keysOf(value).map(key => `${JSON.stringify(key)}: ${write((value as Record<string, unknown>)[key], inner)}`)
  const [open, close, pad] = list ? ['[', ']', ''] : ['{', '}', ' ']
  if (entries.length === 0) return open + close
  const width = entries.reduce((sum, entry) => sum + entry.length + 2, indent.length)
  if (width <= lineLength && !entries.some(entry => entry.includes('\n')))
    return `${open}${pad}${entries.join(', ')}${pad}${close}`
  return `${open}\n${inner}${entries.join(`,\n${inner}`)}\n${indent}${close}`
}

const writeAssets = (assets: NonNullable<Site['assets']>): string => {
  const lines = keysOf(assets).map(key => {
    const asset = assets[key]
    return `    ${JSON.stringify(key)}: { "base64": ${JSON.stringify(asset?.base64)}, "kind": ${JSON.stringify(asset?.kind)} }`
  })
  return lines.length === 0 ? '{}' : `{\n${lines.join(',\n')}\n  }`
}

/**
 * The text of a site file, always the same bytes for the same site: keys sorted, lists in the user's order, shortest
 * numbers that read back alike, no −0, pictures last with a line each, a newline at the end. Throws on a number that
 * is not finite: no computation of ours may put one into the document.
 */
export const serializeSite = (site: Site): string => {
  const rest = keysOf(site).filter(key => key !== 'assets' && !firstKeys.includes(key))
  const lines = [...firstKeys, ...rest].map(key => `  ${JSON.stringify(key)}: ${write(site[key as keyof Site], '  ')}`)
  if (site.assets !== undefined) lines.push(`  "assets": ${writeAssets(site.assets)}`)
  return `{\n${lines.join(',\n')}\n}\n`
}
