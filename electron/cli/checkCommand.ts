import { parseArgs } from 'node:util'
import { derivePlan } from '../../core/plan/derivePlan'
import { planDate } from '../../core/plan/planDate'
import { loadSite } from './loadSite'
import { printProblems } from './printProblems'
import { today } from './today'
import { usage } from './usage'

/** Prints the problems of a site and nothing else. */
export async function checkCommand(args: readonly string[]): Promise<number> {
  let file: string | undefined
  try {
    const { positionals } = parseArgs({ args: [...args], allowPositionals: true, options: {} })
    file = positionals.length === 1 ? positionals[0] : undefined
  } catch {
    file = undefined
  }
  if (file === undefined) {
    process.stderr.write(`check takes one file\n${usage}`)
    return 2
  }
  const site = await loadSite(file)
  if (!site.ok) {
    process.stderr.write(site.error.text)
    return site.error.exitCode
  }
  const plan = derivePlan(site.value, { date: planDate(site.value, undefined, today(site.value.place.zone)) })
  const problems = plan.ok ? plan.value.problems : plan.error
  process.stdout.write(problems.length === 0 ? 'No problems.\n' : printProblems(problems, site.value.units))
  return problems.some(p => p.severity === 'stop') ? 1 : 0
}
