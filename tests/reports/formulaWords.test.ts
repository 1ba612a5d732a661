import { expect, it } from 'vitest'
import { formulaWords } from '../../core/reports/formulaWords'

it('says what a formula rounds to, in names and in numbers', () => {
  const words = {
    'area × thickness': 'area × thickness',
    'roundUp(concrete in place × (1 + over-run), order step)':
      'concrete in place × (1 + over-run), rounded up to the order step',
    'roundUp(7.29 yd³ × (1 + 0.05), 0.25 yd³)': '7.29 yd³ × (1 + 0.05), rounded up to a multiple of 0.25 yd³',
    'roundUp(amount ÷ package, one package)': 'amount ÷ package, rounded up to a whole package',
    'roundUp(23 bags ÷ 4 bags, 1 package)': '23 bags ÷ 4 bags, rounded up to a whole package',
    'roundUp(base, one ton) × price of one': '(base, rounded up to a whole ton) × price of one',
    'round(roundUp(base, one ton) × price of one, nearest cent)':
      '(base, rounded up to a whole ton) × price of one, rounded to the nearest cent',
    'ground (all around)': 'ground (all around)',
  }
  for (const [formula, said] of Object.entries(words)) expect(formulaWords(formula)).toBe(said)
})
