import { describe, expect, it } from 'vitest'
import { amountText, parseAmount } from '../../renderer/day/AmountField'
import { percentScale, tempScale, windScale } from '../../renderer/day/scales'

describe('an amount typed', () => {
  it.each([
    ['92', 33.33],
    ['92 °F', 33.33],
    ['−4', -20],
    ['71,5', 21.94],
    ['', undefined],
    ['  ', undefined],
    ['hot', null],
    ['92 or so!', null],
    ['900', null],
  ])('%j in °F is read as %j °C', (typed, celsius) => {
    const read = parseAmount(typed, tempScale.ftin)
    expect(typeof read === 'number' ? Number(read.toFixed(2)) : read).toBe(celsius)
  })

  it('comes back as it was shown', () => {
    for (const scale of [...Object.values(tempScale), ...Object.values(windScale), percentScale])
      for (const shown of ['0', '20', '41'])
        expect(amountText(parseAmount(shown, scale) ?? Number.NaN, scale)).toBe(shown)
  })
})
