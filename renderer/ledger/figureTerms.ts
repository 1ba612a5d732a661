/** The working of a figure: its formula in words, and the same with the numbers put in. */

import { formulaWords } from '../../core/reports/formulaWords'
import { nameEntities } from '../../core/reports/nameEntities'
import { shownUnits } from '../../core/reports/printAsPriced'
import type { UnitSystem } from '../../shared/document/site'
import type { Quantity } from '../../shared/planJson'
import { figurePhrase } from './printFigure'

export interface Term {
  readonly name: string
  readonly value: string
}

export interface Working {
  readonly formula: string
  /** Null where the formula is a single measured quantity. */
  readonly withNumbers: string | null
  readonly terms: readonly Term[]
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')

export function figureWorking(quantity: Quantity, names: ReadonlyMap<string, string>, units: UnitSystem): Working {
  const { formula, inputs } = quantity
  const shown = shownUnits(quantity, units)
  const keys = Object.keys(inputs).sort((a, b) => b.length - a.length)
  const phrase = (key: string) => figurePhrase(inputs[key]!.value, inputs[key]!.unit, shown)
  const pattern = new RegExp(keys.map(escaped).join('|'), 'g')
  return {
    formula: nameEntities(formulaWords(formula), names),
    withNumbers: keys.length < 2 ? null : formulaWords(formula.replace(pattern, key => phrase(key))),
    terms: Object.keys(inputs).map(key => ({ name: nameEntities(key, names), value: phrase(key) })),
  }
}
