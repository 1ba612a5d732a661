import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  cubicYardsToM3,
  feetToMeters,
  inchesToMeters,
  kgToPounds,
  m2ToSquareFeet,
  m3ToCubicYards,
  metersToFeet,
  metersToInches,
  poundsToKg,
  squareFeetToM2,
} from '../../core/units/convert'
import { parseLength } from '../../core/units/parseLength'
import { printMeasures } from '../../core/units/printMeasures'
import { printNumber } from '../../core/units/printNumber'

const ftin = printMeasures('ftin')
const metric = printMeasures('metric')

describe('conversions', () => {
  // A. Thompson, B. N. Taylor, Guide for the Use of the International System of Units, NIST Special Publication 811,
  // 2008 edition, appendix B.8: the printed factors; those in bold there are exact, the others are cut to 7 digits.
  it.each([
    ['foot (international) to meter', feetToMeters(1), 3.048e-1, 0],
    ['inch to meter', inchesToMeters(1), 2.54e-2, 0],
    ['yard to meter, as 3 ft', feetToMeters(3), 9.144e-1, 0],
    ['square foot to square meter', squareFeetToM2(1), 9.290304e-2, 0],
    ['cubic yard to cubic meter', cubicYardsToM3(1), 7.645549e-1, 5e-8],
    ['pound (avoirdupois) to kilogram', poundsToKg(1), 4.535924e-1, 5e-8],
  ])('%s agrees with NIST SP 811', (_, ours, printed, tolerance) => {
    expect(Math.abs(ours - printed)).toBeLessThanOrEqual(tolerance)
  })

  it('gives the same double for the same length in feet, inches and meters', () => {
    expect(feetToMeters(12.5)).toBe(3.81)
    expect(inchesToMeters(150)).toBe(3.81)
    expect(squareFeetToM2(800)).toBeCloseTo(74.322432, 12)
  })

  it('comes back to where it started', () => {
    const there = fc.double({ min: -1e6, max: 1e6, noNaN: true })
    const pairs: [(x: number) => number, (x: number) => number][] = [
      [feetToMeters, metersToFeet],
      [inchesToMeters, metersToInches],
      [squareFeetToM2, m2ToSquareFeet],
      [cubicYardsToM3, m3ToCubicYards],
      [poundsToKg, kgToPounds],
    ]
    fc.assert(
      fc.property(there, x => {
        for (const [to, from] of pairs)
          expect(Math.abs(from(to(x)) - x)).toBeLessThanOrEqual(4e-15 * Math.abs(x) + 1e-300)
      }),
      { seed: 811 },
    )
  })
})

describe('printing', () => {
  it.each([
    [3.81, '12′ 6″', '3.81 m'],
    [inchesToMeters(150.5), '12′ 6½″', '3.823 m'],
    [inchesToMeters(0.5), '½″', '0.013 m'],
    [inchesToMeters(0.375), '⅜″', '0.01 m'],
    [inchesToMeters(11.9375), '1′ 0″', '0.303 m'],
    [0, '0″', '0.00 m'],
    [-0, '0″', '0.00 m'],
    [-0.001, '0″', '−0.001 m'],
    [-3.81, '−12′ 6″', '−3.81 m'],
    [2000, '6,561′ 8⅛″', '2000.00 m'],
    // Two feet and three eighths: as framing and layout sheets write it, the whole inches stand (common practice, no source).
    [inchesToMeters(24.375), '2′ 0⅜″', '0.619 m'],
  ])('a length of %d m', (lengthM, inFeet, inMeters) => {
    expect(ftin.length(lengthM)).toBe(inFeet)
    expect(metric.length(lengthM)).toBe(inMeters)
  })

  it.each([
    [inchesToMeters(12), '12″', '305 mm'],
    [inchesToMeters(4.5), '4½″', '114 mm'],
    [feetToMeters(4), '4′ 0″', '1,219 mm'],
    [-inchesToMeters(12), '−12″', '−305 mm'],
  ])('a size of %d m', (lengthM, inFeet, inMeters) => {
    expect(ftin.size(lengthM)).toBe(inFeet)
    expect(metric.size(lengthM)).toBe(inMeters)
  })

  it.each([
    [squareFeetToM2(1587.98), '1,588 ft²', '147.5 m²'],
    [squareFeetToM2(800), '800 ft²', '74.3 m²'],
    [squareFeetToM2(127.34), '127.3 ft²', '11.8 m²'],
    [squareFeetToM2(999.97), '1,000 ft²', '92.9 m²'],
    [squareFeetToM2(50_000), '50,000 ft²', '4,645 m²'],
    [squareFeetToM2(0.0234), '0.023 ft²', '0.0022 m²'],
    [0, '0 ft²', '0 m²'],
  ])('an area of %d m²', (areaM2, inFeet, inMeters) => {
    expect(ftin.area(areaM2)).toBe(inFeet)
    expect(metric.area(areaM2)).toBe(inMeters)
  })

  it('prints volumes and temperatures', () => {
    expect(ftin.volume(cubicYardsToM3(24.5))).toBe('24.5 yd³')
    expect(metric.volume(18.75)).toBe('18.75 m³')
    expect(ftin.temperature(22)).toBe('72 °F')
    expect(ftin.temperature(-20)).toBe('−4 °F')
    expect(metric.temperature(-0.4)).toBe('0 °C')
  })

  it.each([
    ['0:05', '12:05 am', '0:05'],
    ['07:00', '7:00 am', '7:00'],
    ['12:00', '12:00 pm', '12:00'],
    ['23:59', '11:59 pm', '23:59'],
  ])('the clock time %s', (clock, twelve, twentyFour) => {
    expect(ftin.time(clock)).toBe(twelve)
    expect(metric.time(clock)).toBe(twentyFour)
  })

  it('groups thousands and keeps no idle zeros', () => {
    expect(printNumber(1234567.5, 2)).toBe('1,234,567.5')
    expect(printNumber(-0.0004, 3)).toBe('0')
    expect(printNumber(100, 2)).toBe('100')
    expect(printNumber(2, 3, 2)).toBe('2.00')
  })
})

describe('reading a length', () => {
  it.each([
    [`12'6"`, 3.81],
    [`12' 6"`, 3.81],
    [`12' 6 1/2"`, 3.8227],
    ['12′ 6½″', 3.8227],
    ['12′ 6 ½″', 3.8227],
    ['12.5', 3.81],
    ['12.5ft', 3.81],
    ['12.5 ft', 3.81],
    [`12.5'`, 3.81],
    ['12 ft 6 in', 3.81],
    ['150in', 3.81],
    ['150 in', 3.81],
    [`150"`, 3.81],
    ['3.81m', 3.81],
    ['3.81 m', 3.81],
    ['381cm', 3.81],
    ['3810mm', 3.81],
    ['381mm', 0.381],
    ['.5', 0.1524],
    [`1/8"`, 0.003175],
    ['½″', 0.0127],
    ['−12″', -0.3048],
    ['-1', -0.3048],
    ['0', 0],
    ['-0', 0],
  ])('takes %s on a site in feet and inches', (text, lengthM) => {
    expect(parseLength(text, 'ftin')).toEqual({ ok: true, value: lengthM })
  })

  it('takes a bare figure as meters on a metric site', () => {
    expect(parseLength('3.81', 'metric')).toEqual({ ok: true, value: 3.81 })
    expect(parseLength(`12'6"`, 'metric')).toEqual({ ok: true, value: 3.81 })
  })

  // Common practice, no source: a figure after the mark of feet is inches, with a mark of its own or without.
  it.each([
    [`14' 3`, 171],
    [`14'3`, 171],
    [`14' 0`, 168],
    [`14' 3 1/2`, 171.5],
    [`14'3.5`, 171.5],
    ['14′ 3½', 171.5],
    [`14' 1/2`, 168.5],
    [`14'11.875`, 179.875],
    ['14ft3', 171],
    ['14 ft 3', 171],
    ['3,010′ 8', 36128],
    [`-2' 6`, -30],
  ])('takes the figure after the feet of %s as inches', (text, inches) => {
    for (const system of ['ftin', 'metric'] as const)
      expect(parseLength(text, system)).toEqual({ ok: true, value: inchesToMeters(inches) })
  })

  it.each([`12'14"`, `12' 12`, `12'14`, `12' 12 1/2`, `12'12.0"`])('refuses %s, a foot or more of inches', text => {
    expect(parseLength(text, 'ftin')).toEqual({
      ok: false,
      error: {
        message: `“${text}” has 12 inches or more after the feet, which may be a slip. Write it as 12' 6 1/2", 12.5, 150in or 3.81m.`,
      },
    })
  })

  it('reads a length back that is printed without its mark of inches', () => {
    fc.assert(
      fc.property(fc.integer({ min: 96, max: 800_000 }), eighths => {
        const lengthM = inchesToMeters(eighths / 8)
        expect(parseLength(ftin.length(lengthM).replace('″', ''), 'ftin')).toEqual({ ok: true, value: lengthM })
      }),
      { seed: 3, numRuns: 1000 },
    )
  })

  it.each([
    '',
    'long',
    '12,5',
    '1,588',
    `12' 6 3/2"`,
    `12' 1/3"`,
    `12.5' 6"`,
    '1e3',
    'NaN',
    'Infinity',
    '12 6',
    `12.5' 6`,
    `12' 6' 3`,
    '3.81 km',
    '--3',
    '1..5',
    '0x10',
    '٣',
  ])('refuses “%s” and quotes it', text => {
    expect(parseLength(text, 'ftin')).toEqual({
      ok: false,
      error: { message: `“${text}” is not a length. Write it as 12' 6 1/2", 12.5, 150in or 3.81m.` },
    })
    expect(parseLength(text, 'metric')).toEqual({
      ok: false,
      error: { message: `“${text}” is not a length. Write it as 3.81, 3.81m, 381cm or 12' 6".` },
    })
  })

  it('reads back every eighth of an inch it prints, to the same double', () => {
    fc.assert(
      fc.property(fc.integer({ min: -800_000, max: 800_000 }), eighths => {
        const lengthM = inchesToMeters(eighths / 8)
        for (const text of [ftin.length(lengthM), ftin.size(lengthM)])
          expect(parseLength(text, 'ftin')).toEqual({ ok: true, value: lengthM === 0 ? 0 : lengthM })
      }),
      { seed: 1, numRuns: 2000 },
    )
  })

  it('reads back every millimeter it prints, to the same double', () => {
    fc.assert(
      fc.property(fc.integer({ min: -2_000_000, max: 2_000_000 }), mm => {
        const lengthM = mm / 1000
        expect(parseLength(metric.length(lengthM), 'metric')).toEqual({ ok: true, value: lengthM === 0 ? 0 : lengthM })
      }),
      { seed: 2, numRuns: 2000 },
    )
  })

  it('never throws, and prints and reads any length to within half a step', () => {
    fc.assert(
      fc.property(fc.string(), fc.double({ min: -2000, max: 2000, noNaN: true }), (text, lengthM) => {
        expect(typeof parseLength(text, 'ftin').ok).toBe('boolean')
        const inFeet = parseLength(ftin.length(lengthM), 'ftin')
        const inMeters = parseLength(metric.length(lengthM), 'metric')
        if (!inFeet.ok || !inMeters.ok) throw new Error(`did not read ${lengthM} back`)
        expect(Math.abs(inFeet.value - lengthM)).toBeLessThanOrEqual(inchesToMeters(1 / 16) + 1e-12)
        expect(Math.abs(inMeters.value - lengthM)).toBeLessThanOrEqual(0.0005 + 1e-12)
      }),
      { seed: 3, numRuns: 500 },
    )
  })
})
