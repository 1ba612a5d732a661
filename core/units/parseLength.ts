import type { UnitSystem } from '../../shared/document/site'
import { err, ok, type Result } from '../../shared/problem'
import { feetToMeters, inchesToMeters } from './convert'

export interface Misread {
  /** Says what was typed and how a length is written. */
  readonly message: string
}

const glyphs: Readonly<Record<string, string>> = {
  '⅛': '1/8',
  '¼': '1/4',
  '⅜': '3/8',
  '½': '1/2',
  '⅝': '5/8',
  '¾': '3/4',
  '⅞': '7/8',
}

const decimal = String.raw`(?:\d+(?:\.\d+)?|\.\d+)`
const fraction = String.raw`(\d+)\/(2|4|8|16|32)`
const feetMark = String.raw`\s*(?:'|′|’|ft|feet|foot)`
const inchMark = String.raw`\s*(?:"|″|”|''|in|inch|inches)`
/** `6`, `6.5`, `6 1/2` or `1/2`. */
const figure = String.raw`(?:(${decimal})|(?:(\d+)\s+)?${fraction})`

const inchesAlone = new RegExp(`^${figure}${inchMark}$`)
/** Feet may be grouped as they are printed: `3,010′`. */
const grouped = String.raw`\d{1,3}(?:,\d{3})+`
const feetAlone = new RegExp(`^(${grouped}|${decimal})${feetMark}$`)
/** After a mark of feet a figure can only mean inches, so that their own mark may be left out. */
const feetAndInches = new RegExp(String.raw`^(${grouped}|\d+)${feetMark}\s*${figure}(?:${inchMark})?$`)
const metricAlone = new RegExp(String.raw`^(${decimal})\s*(mm|cm|m)$`)
const bare = new RegExp(`^${decimal}$`)

/** How many of each unit make a meter: whole numbers, so that a quotient is the double nearest to the length. */
const perMeter: Readonly<Record<string, number>> = { m: 1, cm: 100, mm: 1000 }

/** Inches of the four groups of `figure`; `undefined` for a fraction of one or more, which is a slip. */
const readInches = (groups: readonly (string | undefined)[]): number | undefined => {
  const [plain, whole, over, under] = groups
  if (plain !== undefined) return Number(plain)
  const part = Number(over) / Number(under)
  return part < 1 ? Number(whole ?? 0) + part : undefined
}

const ungroup = (digits: string): number => Number(digits.replaceAll(',', ''))

const inchesPerFoot = 12

const readUnsigned = (text: string, system: UnitSystem): number | 'inches over a foot' | undefined => {
  if (bare.test(text)) return system === 'ftin' ? feetToMeters(Number(text)) : Number(text)
  const metric = metricAlone.exec(text)
  if (metric !== null) return Number(metric[1]) / perMeter[metric[2]!]!
  const feet = feetAlone.exec(text)
  if (feet !== null) return feetToMeters(ungroup(feet[1]!))
  const short = inchesAlone.exec(text)
  if (short !== null) {
    const read = readInches(short.slice(1))
    return read === undefined ? undefined : inchesToMeters(read)
  }
  const both = feetAndInches.exec(text)
  if (both === null) return undefined
  const read = readInches(both.slice(2))
  if (read === undefined) return undefined
  return read < inchesPerFoot ? inchesToMeters(ungroup(both[1]!) * inchesPerFoot + read) : 'inches over a foot'
}

const examples: Readonly<Record<UnitSystem, string>> = {
  ftin: `12' 6 1/2", 12.5, 150in or 3.81m`,
  metric: `3.81, 3.81m, 381cm or 12' 6"`,
}

/**
 * Reads a length as a contractor types it, in meters: `12'6"`, `12' 6 1/2"`, `12′ 6½″`, `12' 6` (the figure after the
 * feet is inches), `12.5` (feet, or meters on a metric site), `12.5ft`, `150in`, `3.81m`, `381cm`, `3810mm`; a leading
 * minus for elevations. Anything else is refused and quoted; commas too, as they mean thousands to one reader and
 * decimals to the next, unless a mark of feet says which, `3,010′ 8"`.
 */
export const parseLength = (text: string, system: UnitSystem): Result<number, Misread> => {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/[⅛¼⅜½⅝¾⅞]/g, glyph => ` ${glyphs[glyph]}`)
  const negative = /^[-−]/.test(plain)
  const read = readUnsigned((negative ? plain.slice(1) : plain).trim(), system)
  if (read === 'inches over a foot')
    return err({
      message: `“${text.trim()}” has 12 inches or more after the feet, which may be a slip. Write it as ${examples[system]}.`,
    })
  if (read === undefined || !Number.isFinite(read))
    return err({ message: `“${text.trim()}” is not a length. Write it as ${examples[system]}.` })
  return ok(negative && read !== 0 ? -read : read)
}
