import { derivePlan } from '../../core/plan/derivePlan'
import { planDate } from '../../core/plan/planDate'
import { loadSite } from './loadSite'
import { printProblems } from './printProblems'
import { readOptions } from './readOptions'
import { terminalText } from './terminalText'
import { today } from './today'
import { usage } from './usage'

/** Prints the problems of a site and nothing else. */
export async function checkCommand(args: readonly string[]): Promise<number> {
  const line = readOptions('check', args, {})
  if (!line.ok) {
    process.stderr.write(`${line.error}\n${usage}`)
    return 2
  }
  const site = await loadSite(line.value.file)
  if (!site.ok) {
    process.stderr.write(site.error.text)
    return site.error.exitCode
  }
  const plan = derivePlan(site.value, { date: planDate(site.value, undefined, today(site.value.place.zone)) })
  const problems = plan.ok ? plan.value.problems : plan.error
  process.stdout.write(
    problems.length === 0 ? 'No problems.\n' : terminalText(printProblems(problems, site.value.units)),
  )
  return problems.some(p => p.severity === 'stop') ? 1 : 0
}
