import { expect, it } from 'vitest'
import { sheetText } from '../../core/reports/sheetText'
import { printMeasures } from '../../core/units/printMeasures'

it('a price in euros keeps its sign, and a letter without a picture is told as missing', () => {
  expect(sheetText('€ 6 480')).toBe('€ 6 480')
  expect(sheetText('₿ 2')).toBe('? 2')
})

it('all eighths of an inch are written one way on paper', () => {
  const { length } = printMeasures('ftin')
  const eighths = [1, 2, 3, 4, 5, 6, 7].map(n =>
    sheetText(length((12 * 12 + 5 + n / 8) * 0.0254)).replace('\u00a0', ' '),
  )
  expect(eighths).toEqual(['12′5 1/8″', '12′5 1/4″', '12′5 3/8″', '12′5 1/2″', '12′5 5/8″', '12′5 3/4″', '12′5 7/8″'])
  expect(sheetText('½″ and ½ yd³')).toBe('1/2″ and 1/2 yd³')
})
