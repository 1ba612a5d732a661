import { shownUnits } from '../../core/reports/printAsPriced'
import type { UnitSystem } from '../../shared/document/site'
import { figureWorking } from './figureTerms'
import type { FigureGroup } from './ledgerGroups'
import { figurePhrase } from './printFigure'

/** The ledger as plain text: a line a figure with its formula and the numbers put in. */
export function ledgerText(
  title: string,
  groups: readonly FigureGroup[],
  names: ReadonlyMap<string, string>,
  units: UnitSystem,
): string {
  const lines = groups.flatMap(group => [
    '',
    group.title,
    ...group.rows.map(q => {
      const { formula, withNumbers, terms } = figureWorking(q, names, units)
      const isPlain = terms.length < 2 && formula === terms[0]?.name
      return `  ${q.label}: ${figurePhrase(q.value, q.unit, shownUnits(q, units))}${isPlain ? '' : ` = ${formula}${withNumbers === null ? '' : ` = ${withNumbers}`}`}`
    }),
  ])
  return `${[title, ...lines].join('\n')}\n`
}
