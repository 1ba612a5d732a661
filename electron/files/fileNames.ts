import type * as z from 'zod/mini'
import type { ExportKind } from '../../shared/host'

export const siteEnding = '.slabwright.json'

// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is refused
const refused = /[\u0000-\u001f\u007f<>:"/\\|?*]/
/** Device names of one system, refused on all so that a file can move between them. */
const devices = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/i

/** A bare name that is safe on every system, or null. Bytes, not letters, are what drives count: at most 200. */
export function plainName(name: string): string | null {
  const trimmed = name.normalize('NFC').trim()
  if (trimmed === '' || trimmed.startsWith('.') || /[. ]$/.test(trimmed)) return null
  if (refused.test(trimmed) || devices.test(trimmed) || Buffer.byteLength(trimmed) > 200) return null
  return trimmed
}

/** The name of a site file: the ending is added where it is missing. */
export function siteFileName(name: string): string | null {
  const plain = plainName(name)
  if (plain === null) return null
  return plain.toLowerCase().endsWith(siteEnding) ? plain : `${plain.replace(/\.json$/i, '')}${siteEnding}`
}

export function exportFileName(name: string, kind: z.infer<typeof ExportKind>): string | null {
  const plain = plainName(name)
  if (plain === null) return null
  return plain.toLowerCase().endsWith(`.${kind}`) ? plain : `${plain}.${kind}`
}

/** What a person calls the file: its name without the ending. */
export function titleOf(fileName: string): string {
  return fileName.toLowerCase().endsWith(siteEnding) ? fileName.slice(0, -siteEnding.length) : fileName
}
