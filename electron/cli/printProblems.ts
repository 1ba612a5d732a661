import type { Problem } from '../../shared/problem'

const marks: Record<Problem['severity'], string> = { stop: 'STOP ', check: 'check', note: 'note ' }

/** One problem a line: how serious, what, where, and what to do. */
export const printProblems = (problems: readonly Problem[]): string =>
  problems
    .map(problem => {
      const where = problem.field === undefined ? '' : ` [${problem.field}]`
      const hint = problem.hint === undefined ? '' : ` ${problem.hint}`
      return `  ${marks[problem.severity]}  ${problem.message}${hint}${where}\n`
    })
    .join('')
