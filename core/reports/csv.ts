/** Comma-separated text after RFC 4180: CRLF after every record, a header, quotes doubled. */

export type CsvValue = string | number | null

/**
 * A text that a spreadsheet would run as a formula (it starts with = + − @, a tab or a carriage return) gets an
 * apostrophe in front, which spreadsheets show as text. Numbers are written as numbers, so −3.5 stays one.
 */
const harmless = (text: string): string => (/^[=+\-@\t\r]/.test(text) ? `'${text}` : text)

/** Quotes where RFC 4180 §2.6 asks for them: comma, quote, CR, LF; also at spaces on either end, which some readers eat. */
function csvField(value: CsvValue): string {
  if (value === null) return ''
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : ''
  const text = harmless(value)
  return /[",\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}

/** Every row must have as many fields as the header (RFC 4180 §2.4). */
export function writeCsv(header: readonly string[], rows: readonly (readonly CsvValue[])[]): string {
  const bad = rows.find(row => row.length !== header.length)
  if (bad !== undefined) throw new Error(`A row has ${bad.length} fields, the header ${header.length}`)
  return [header, ...rows].map(row => `${row.map(csvField).join(',')}\r\n`).join('')
}
