import { describe, expect, it } from 'vitest'
import { feetToMeters, inchesToMeters } from '../../core/units/convert'
import { parseLength } from '../../core/units/parseLength'
import { oddSize, type TradeSize, tradeSizes } from '../../core/units/tradeSizes'
import type { UnitSystem } from '../../shared/document/site'

const told = (size: TradeSize, text: string, system: UnitSystem = 'ftin'): string | null => {
  const read = parseLength(text, system)
  if (!read.ok) throw new Error(read.error.message)
  return oddSize(size, text, read.value, system)
}

describe('a small measure of a slab', () => {
  // Sizes as they are met at work: common practice, no source.
  it.each([
    ['thickness', ['3.5in', '4in', '6in', '12in', '1', `1'6`]],
    ['base', ['0', '4in', '12in', '1.5', `2'`]],
    ['thickenedDepth', ['8in', '12in', '1', '42in', '3.5']],
    ['thickenedWidth', ['8in', '12in', '1', '2']],
    ['border', ['4in', '12in', '1', '1.5', '4']],
    ['band', ['4in', '2', '6']],
    ['riser', ['4in', '7in', '7 3/4in', '.5']],
    ['tread', ['11in', '12in', '1', '1.5', '6']],
    ['nosing', ['0', '1in', '1 1/2in']],
    ['overhang', ['0', '16in', '2', '8']],
  ] as const)('of %s stands as the trade has it', (size, texts) => {
    for (const text of texts) expect(told(size, text)).toBeNull()
  })

  it.each([
    ['thickness', ['4', '5.5', '12']],
    ['base', ['4', '6']],
    ['thickenedDepth', ['8', '12', '14']],
    ['thickenedWidth', ['8', '12']],
    ['border', ['8', '12', '18']],
    ['band', ['12', '24']],
    ['riser', ['6', '7', '7.5']],
    ['tread', ['11', '12', '14.5']],
    ['nosing', ['1', '1.5']],
    ['overhang', ['16', '24']],
  ] as const)('of %s without a unit that must be inches is asked about, with the way to type it', (size, texts) => {
    for (const text of texts) expect(told(size, text)).toMatch(`For ${text} inches type ${text}in.`)
  })

  it('is told by what it was read as, and where it should lie', () => {
    expect(told('thickenedDepth', '14')).toBe(
      '14′ 0″ is far from any size of a thickened edge, 2″ to 4′ 0″. For 14 inches type 14in.',
    )
    expect(told('thickness', '100', 'metric')).toBe(
      '100.00 m is far from any size of a slab, 25 mm to 610 mm. For 100 millimeters type 100mm.',
    )
  })

  it('has no hint where its unit was typed, or where inches would be as odd', () => {
    expect(told('thickness', `4'`)).toBe('4′ 0″ is far from any size of a slab, 1″ to 24″.')
    expect(told('thickness', '400')).not.toMatch('type')
    expect(told('riser', '1/2in')).not.toMatch('type')
  })

  it('may lie on either limit', () => {
    for (const [size, { leastM, mostM }] of Object.entries(tradeSizes))
      for (const lengthM of [leastM, mostM]) {
        const typed = `${Math.round(lengthM / inchesToMeters(1))}in`
        expect(told(size as TradeSize, typed)).toBeNull()
        expect(
          oddSize(size as TradeSize, typed, lengthM + feetToMeters(0.01) * (lengthM === leastM ? -1 : 1), 'ftin'),
        ).not.toBeNull()
      }
  })
})
