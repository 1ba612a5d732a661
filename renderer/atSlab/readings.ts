/** What is measured of a load, in the units of the site: steps for gloved hands, words, and how typed words are read. */
import { printNumber } from '../../core/units/printNumber'
import type { LogLoad } from '../../shared/document/day'
import type { UnitSystem } from '../../shared/document/site'

export type Reading = keyof Pick<LogLoad, 'tempC' | 'slumpMm' | 'airC' | 'waterL'>

const inchMm = 25.4
const gallonL = 3.785411784
const fahrenheit = (tempC: number): number => tempC * 1.8 + 32
const celsius = (tempF: number): number => (tempF - 32) / 1.8

const printTemp = (tempC: number, units: UnitSystem): string =>
  units === 'ftin' ? `${printNumber(fahrenheit(tempC), 0)} °F` : `${printNumber(tempC, 0)} °C`

const roundTemp = (tempC: number, units: UnitSystem): number =>
  units === 'ftin' ? celsius(Math.round(fahrenheit(tempC))) : Math.round(tempC)

interface ReadingOf {
  readonly of: Reading
  readonly name: string
  /** One tap of the stepper, SI. */
  readonly step: Readonly<Record<UnitSystem, number>>
  readonly least: number
  readonly most: number
  readonly round: (value: number, units: UnitSystem) => number
  /** With its unit, as a box shows it. */
  readonly print: (value: number, units: UnitSystem) => string
  /** From a number and the unit typed after it; the site's where none is. NaN for a unit of another kind. */
  readonly read: (value: number, unit: string, units: UnitSystem) => number
}

/** The unit typed, else the site's. */
const unitOr = (unit: string, units: UnitSystem, us: string, metric: string): string =>
  unit === '' ? (units === 'ftin' ? us : metric) : unit

const readTemp = (value: number, typed: string, units: UnitSystem): number => {
  const unit = unitOr(typed, units, 'f', 'c')
  return unit === 'f' ? celsius(value) : unit === 'c' ? value : Number.NaN
}

/** Slump is told to the nearest ¼ in or 5 mm, as in ASTM C143; temperature to 1 °F or 0.5 °C in ASTM C1064, here 1 °C. */
export const readings: readonly ReadingOf[] = [
  {
    ...{ of: 'tempC', name: 'Concrete', least: -5, most: 60 },
    step: { ftin: 1 / 1.8, metric: 1 },
    round: roundTemp,
    print: printTemp,
    read: readTemp,
  },
  {
    ...{ of: 'slumpMm', name: 'Slump', least: 0, most: 300 },
    step: { ftin: inchMm / 4, metric: 5 },
    round: (value, units) =>
      units === 'ftin' ? (Math.round((4 * value) / inchMm) * inchMm) / 4 : Math.round(value / 5) * 5,
    print: (value, units) =>
      units === 'ftin' ? `${printNumber(value / inchMm, 2)} in` : `${printNumber(value, 0)} mm`,
    read: (value, typed, units) => {
      const unit = unitOr(typed, units, 'in', 'mm')
      return unit === 'in' ? value * inchMm : unit === 'mm' ? value : unit === 'cm' ? 10 * value : Number.NaN
    },
  },
  {
    ...{ of: 'airC', name: 'Air', least: -30, most: 55 },
    step: { ftin: 1 / 1.8, metric: 1 },
    round: roundTemp,
    print: printTemp,
    read: readTemp,
  },
  {
    ...{ of: 'waterL', name: 'Water added', least: 0, most: 400 },
    step: { ftin: gallonL, metric: 5 },
    round: (value, units) => (units === 'ftin' ? Math.round(value / gallonL) * gallonL : Math.round(value / 5) * 5),
    print: (value, units) =>
      units === 'ftin' ? `${printNumber(value / gallonL, 1)} gal` : `${printNumber(value, 0)} L`,
    read: (value, typed, units) => {
      const unit = unitOr(typed, units, 'gal', 'l')
      return unit === 'gal' ? value * gallonL : unit === 'l' ? value : Number.NaN
    },
  },
]

const typedForm = /^([+−-]?\d+(?:[.,]\d+)?)\s*(?:°|degrees)?\s*([a-z″"]*)$/i

/** SI; undefined for an empty text; null for what is no such reading. */
export function parseReading(
  { least, most, read }: ReadingOf,
  text: string,
  units: UnitSystem,
): number | undefined | null {
  const trimmed = text.trim()
  if (trimmed === '') return undefined
  const found = typedForm.exec(trimmed)
  if (!found) return null
  const unit = found[2]!.toLowerCase().replace(/^(?:″|")$/, 'in')
  const value = read(Number(found[1]!.replace('−', '-').replace(',', '.')), unit, units)
  return value >= least && value <= most ? value : null
}
