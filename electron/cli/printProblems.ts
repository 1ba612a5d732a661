import { printMeasures } from '../../core/units/printMeasures'
import type { UnitSystem } from '../../shared/document/site'
import type { Problem } from '../../shared/problem'

const marks: Record<Problem['severity'], string> = { stop: 'STOP ', check: 'check', note: 'note ' }

const whereOf = ({ field, at }: Problem, units: UnitSystem): string => {
  const { length } = printMeasures(units)
  const point = at?.point === undefined ? '' : ` at ${length(at.point[0])} right, ${length(at.point[1])} up`
  const entity = at === undefined ? [] : [`${at.entityId}${point}`]
  const places = [...entity, ...(field === undefined ? [] : [field])]
  return places.length === 0 ? '' : ` [${places.join(', ')}]`
}

/** One problem a line: how serious, what, what to do, and where: entity, point in the drawing, field of the file. */
export const printProblems = (problems: readonly Problem[], units: UnitSystem): string =>
  problems
    .map(problem => {
      const hint = problem.hint === undefined ? '' : ` ${problem.hint}`
      return `  ${marks[problem.severity]}  ${problem.message}${hint}${whereOf(problem, units)}\n`
    })
    .join('')
