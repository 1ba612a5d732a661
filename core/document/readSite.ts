import { Site, siteFormat, siteVersion } from '../../shared/document/site'
import { limits } from '../../shared/limits'
import { err, type Finding, ok, type Result } from '../../shared/problem'
import { checkSite } from './checkSite'
import { decodeUtf8 } from './decodeUtf8'
import { findExcess } from './findExcess'
import { findingsFromIssues } from './findingsFromIssues'
import { findJsonFault } from './findJsonFault'

const stop = (code: Finding['code'], values: Finding['values'] = {}, field?: string): Finding => ({
  code,
  severity: 'stop',
  values,
  ...(field === undefined ? {} : { field }),
})

// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what tells a binary file
const binary = /[\u0000-\u0008\u000b\u000e-\u001f]/

/** Bytes of a text in UTF-8, counted only as far as needed to compare with the limit. */
const utf8Bytes = (text: string): number => {
  if (text.length > limits.fileBytes || text.length * 3 <= limits.fileBytes) return text.length
  let bytes = 0
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i)
    // Each half of a surrogate pair counts two of the pair's four bytes.
    bytes += unit < 0x80 ? 1 : unit < 0x800 || (unit >= 0xd800 && unit < 0xe000) ? 2 : 3
  }
  return bytes
}

const readText = (source: string | Uint8Array): Result<string, Finding> => {
  const bytes = typeof source === 'string' ? utf8Bytes(source) : source.byteLength
  if (bytes > limits.fileBytes) return err(stop('fileTooLarge', { bytes, limitBytes: limits.fileBytes }))
  const text = typeof source === 'string' ? source.replace(/^\ufeff/, '') : decodeUtf8(source)
  if (text === undefined || binary.test(text)) return err(stop('notText'))
  return text.trim() === '' ? err(stop('fileEmpty')) : ok(text)
}

const readJson = (text: string): Result<unknown, Finding> => {
  try {
    return ok(JSON.parse(text))
  } catch {
    const fault = findJsonFault(text)
    if (fault === undefined) throw new Error('JSON.parse refused a text in which no fault was found')
    const { line, column, found, field, notANumber } = fault
    return err(
      notANumber && field !== '' ? stop('badNumber', { found }, field) : stop('notJson', { line, column, found }),
    )
  }
}

const readVersion = (raw: unknown): Result<object, Finding> => {
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) return err(stop('wrongFormat'))
  const { format, version } = raw as { format?: unknown; version?: unknown }
  if (format !== siteFormat) return err(stop('wrongFormat', typeof format === 'string' ? { found: format } : {}))
  if (typeof version === 'number' && version > siteVersion)
    return err(stop('newerVersion', { found: version, reads: siteVersion }))
  return ok(raw)
}

/** zod passes over a key of this name in a table of settings or pictures; dropping it in silence is not for us. */
const findDroppedKeys = (raw: object): readonly Finding[] =>
  ['settings', 'assets'].flatMap(name => {
    const table = (raw as Record<string, unknown>)[name]
    return typeof table === 'object' && table !== null && Object.hasOwn(table, '__proto__')
      ? [stop('unknownField', {}, `/${name}/__proto__`)]
      : []
  })

/**
 * The door: the text or bytes of a site file in, a site that keeps every rule of the document out, or what is wrong
 * with it. Shapes that cross or do not fit are not looked at here: they are findings of the slab they belong to.
 * Version 1 is the only one so far, so nothing is brought up to date; a newer file is refused, not guessed at.
 */
export const readSite = (source: string | Uint8Array): Result<Site, readonly Finding[]> => {
  const text = readText(source)
  if (!text.ok) return err([text.error])
  const json = readJson(text.value)
  if (!json.ok) return err([json.error])
  const raw = readVersion(json.value)
  if (!raw.ok) return err([raw.error])
  const excess = findExcess(raw.value)
  if (excess !== undefined) return err([excess])
  const parsed = Site.safeParse(raw.value)
  if (!parsed.success) return err(findingsFromIssues(parsed.error.issues, raw.value))
  const findings = [...findDroppedKeys(raw.value), ...checkSite(parsed.data)]
  return findings.length > 0 ? err(findings) : ok(parsed.data)
}
