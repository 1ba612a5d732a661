import { derivePlan, type PlanRequest } from '../../core/plan/derivePlan'
import { createMemo } from '../../core/plan/memo'
import { planAlternatives } from '../../core/plan/planAlternatives'
import { planDate } from '../../core/plan/planDate'
import { printPlanJson } from '../../core/plan/printPlanJson'
import type { Pt } from '../../shared/document/primitives'
import type { PlanJson } from '../../shared/planJson'
import { err, ok, type Problem, type Result } from '../../shared/problem'
import { loadSite } from './loadSite'
import { printPlanTable } from './printPlanTable'
import { printProblems } from './printProblems'
import { readOptions } from './readOptions'
import { terminalText } from './terminalText'
import { today } from './today'
import { usage } from './usage'

interface Asked {
  readonly file: string
  readonly date?: string
  readonly stepMin?: number
  readonly points: readonly Pt[]
  readonly out?: string
  readonly json: boolean
  readonly alternatives: boolean
}

function readArgs(args: readonly string[]): Result<Asked, string> {
  const line = readOptions('plan', args, {
    date: { type: 'string' },
    step: { type: 'string' },
    point: { type: 'string', multiple: true },
    out: { type: 'string' },
    json: { type: 'boolean' },
    alternatives: { type: 'boolean' },
  })
  if (!line.ok) return line
  const { file, values } = line.value
  if (values.alternatives && !values.json && values.out === undefined)
    return err('--alternatives goes with --json or --out: the table has no room for them')
  const step = values.step === undefined ? undefined : Number(values.step)
  if (step !== undefined && !(step >= 1 && step <= 240))
    return err(`--step takes minutes from 1 to 240, not “${values.step}”`)
  const points: Pt[] = []
  for (const text of values.point ?? []) {
    const [x, y, ...more] = text.split(',').map(part => (part.trim() === '' ? Number.NaN : Number(part)))
    if (x === undefined || y === undefined || more.length > 0 || !Number.isFinite(x) || !Number.isFinite(y))
      return err(`--point takes X,Y in meters, not “${text}”`)
    points.push([x, y])
  }
  return ok({
    file,
    points,
    json: values.json ?? false,
    alternatives: values.alternatives ?? false,
    ...(values.date === undefined ? {} : { date: values.date }),
    ...(step === undefined ? {} : { stepMin: step }),
    ...(values.out === undefined ? {} : { out: values.out }),
  })
}

/** What `--json` prints for a site whose values cannot be planned with. */
const emptyPlanJson = (siteId: string, problems: readonly Problem[]): PlanJson => ({
  format: 'slabwright-plan',
  version: 1,
  siteId,
  date: '',
  zone: '',
  slabs: [],
  pours: [],
  joints: [],
  contractionJoints: [],
  days: [],
  order: { proven: false, gap: 0, cost: 0, terms: [] },
  shade: { stepMin: 0, minSunAltitudeDeg: 0, times: [], sun: [], slabs: [], pours: [] },
  shadows: [],
  points: [],
  quantities: [],
  dayPlans: [],
  problems: [...problems],
})

/** The main job on one site file: a table, or with `--json` one object; with `--out` the sheets as files. */
export async function planCommand(args: readonly string[]): Promise<number> {
  const asked = readArgs(args)
  if (!asked.ok) {
    process.stderr.write(`${asked.error}\n${usage}`)
    return 2
  }
  const { file, date, stepMin, points, out, json, alternatives } = asked.value
  const site = await loadSite(file)
  if (!site.ok) {
    const { text, exitCode, problems, siteId } = site.error
    process.stderr.write(text)
    if (json && exitCode === 1) process.stdout.write(`${JSON.stringify(emptyPlanJson(siteId, problems))}\n`)
    return exitCode
  }
  const request: PlanRequest = {
    date: planDate(site.value, date, today(site.value.place.zone)),
    extraPoints: points,
    ...(stepMin === undefined ? {} : { stepMin }),
  }
  const memo = createMemo()
  const plan = derivePlan(site.value, request, memo)
  if (!plan.ok) {
    process.stderr.write(terminalText(printProblems(plan.error, site.value.units)))
    return 2
  }
  const ways = alternatives ? planAlternatives(plan.value, memo) : undefined
  process.stdout.write(
    json ? `${JSON.stringify(printPlanJson(plan.value, ways))}\n` : terminalText(printPlanTable(plan.value)),
  )
  if (out !== undefined) {
    const { writeSheets } = await import('./writeSheets')
    const written = await writeSheets(plan.value, out, ways)
    if (!written.ok) {
      process.stderr.write(written.error)
      return 2
    }
    if (!json) process.stdout.write(written.value.map(name => `wrote ${name}\n`).join(''))
  }
  return plan.value.problems.some(p => p.severity === 'stop') ? 1 : 0
}
