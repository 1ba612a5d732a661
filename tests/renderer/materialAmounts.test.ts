import { describe, expect, it } from 'vitest'
import { printQuantity } from '../../core/reports/printQuantity'
import { parseAmountOf, parseFigure, parseMoney, printAmount } from '../../renderer/ledger/materials/amounts'
import { printFigure } from '../../renderer/ledger/printFigure'

describe('an amount of a material', () => {
  it('is read with its unit, pounds as the mass they are', () => {
    // 1 lb = 0.45359237 kg, NIST SP 811, appendix B.8.
    expect(parseAmountOf('60 lb')).toEqual({ value: 60 * 0.45359237, unit: 'kg' })
    expect(parseAmountOf('60lbs')).toEqual({ value: 60 * 0.45359237, unit: 'kg' })
    expect(parseAmountOf('25 kg')).toEqual({ value: 25, unit: 'kg' })
    expect(parseAmountOf('5 gal')).toEqual({ value: 5, unit: 'gal' })
    for (const typed of ['', '60', 'lb', '-5 lb', '1/2 lb x 2 =']) expect(parseAmountOf(typed) ?? null).toBe(null)
    expect(parseFigure('1,200 ft²')).toEqual({ value: 1200, rest: 'ft²' })
  })

  it('has its price in the currency that is typed, else in that of the others', () => {
    expect(parseMoney('42.50', 'CAD')).toEqual({ amount: 42.5, currency: 'CAD' })
    expect(parseMoney('$ 1,042.50', 'CAD')).toEqual({ amount: 1042.5, currency: 'USD' })
    expect(parseMoney('30 eur', 'USD')).toEqual({ amount: 30, currency: 'EUR' })
    for (const typed of ['eur 30', '€30', '30 €', 'EUR 30.00 / ft²', '30 EUR per ft²'])
      expect(parseMoney(typed, 'USD', 'ft²'), typed).toEqual({ amount: 30, currency: 'EUR' })
    expect(parseMoney('18.50/ft²', 'CAD', 'ft²')).toEqual({ amount: 18.5, currency: 'CAD' })
    for (const typed of ['', 'free', '30 shells', '-3', '$30 EUR', '18.50/m²', '1.234,50', '18,50', '1e3', 'USD'])
      expect(parseMoney(typed, 'USD', 'ft²'), typed).toBe(null)
  })

  it('shows three digits that count, a rate by the area of the site, money to the cent', () => {
    expect([0, 0.0204, 3.5, 60, 1234.5].map(printAmount)).toEqual(['0', '0.0204', '3.5', '60', '1,235'])
    // 200 ft² a gallon.
    const rate = 1 / (200 * 0.09290304)
    expect(printFigure(rate, 'gal/m²', 'ftin')).toEqual({ figure: '0.005', unit: 'gal/ft²' })
    expect(printQuantity(rate, 'gal/m²', 'ftin')).toBe('0.005 gal/ft²')
    expect(printQuantity(0.2, 'L/m²', 'metric')).toBe('0.2 L/m²')
    expect(printFigure(722.5, 'USD', 'ftin')).toEqual({ figure: '722.50', unit: 'USD' })
    expect(printQuantity(722.5, 'USD', 'metric')).toBe('722.50 USD')
  })
})
