import { derivePlan } from '../../core/plan/derivePlan'
import type { Plan } from '../../core/plan/plan'
import { planDate } from '../../core/plan/planDate'
import { printPlanJson } from '../../core/plan/printPlanJson'
import type { PourDayPlan } from '../../core/pours/day/pourDay'
import { calendarText } from '../../core/reports/day/calendarText'
import { daySheet } from '../../core/reports/day/daySheet'
import { err, ok, type Result } from '../../shared/problem'
import { renderPdf } from '../pdf/renderPdf'
import { loadSite } from './loadSite'
import { printDayTable } from './printDayTable'
import { printProblems } from './printProblems'
import { readOptions } from './readOptions'
import { terminalText } from './terminalText'
import { today } from './today'
import { usage } from './usage'
import { weatherFor } from './weatherFor'
import { type NamedFile, writeFiles } from './writeFiles'

interface Asked {
  readonly file: string
  readonly pour: string
  readonly date?: string
  readonly out?: string
  /** A table or an hourly weather file. */
  readonly weather?: string
  readonly forecast: boolean
  readonly json: boolean
}

function readArgs(args: readonly string[]): Result<Asked, string> {
  const line = readOptions('day', args, {
    pour: { type: 'string' },
    date: { type: 'string' },
    out: { type: 'string' },
    weather: { type: 'string' },
    forecast: { type: 'boolean' },
    json: { type: 'boolean' },
  })
  if (!line.ok) return line
  const { file, values } = line.value
  if (values.pour === undefined) return err('day needs --pour with the id or the number of a pour')
  if (values.weather !== undefined && values.forecast)
    return err('day takes its weather from --weather or from --forecast, not from both')
  return ok({
    file,
    pour: values.pour,
    json: values.json ?? false,
    forecast: values.forecast ?? false,
    ...(values.weather === undefined ? {} : { weather: values.weather }),
    ...(values.date === undefined ? {} : { date: values.date }),
    ...(values.out === undefined ? {} : { out: values.out }),
  })
}

async function writeDay(plan: Plan, day: PourDayPlan, folder: string): Promise<Result<readonly string[], string>> {
  const now = new Date()
  const files: NamedFile[] = [
    [`day-${day.number}.pdf`, await renderPdf(daySheet(plan, day.pourId), { createdAt: now })],
    ['pours.ics', calendarText(plan, now.getTime())],
  ]
  return writeFiles('The day sheet', files, folder)
}

/** The day of one pour: a table, or with `--json` one object; with `--out` the day sheet and the calendar as files. */
export async function dayCommand(args: readonly string[]): Promise<number> {
  const asked = readArgs(args)
  if (!asked.ok) {
    process.stderr.write(`${asked.error}\n${usage}`)
    return 2
  }
  const { file, pour: wanted, date, out, json, weather, forecast } = asked.value
  const site = await loadSite(file)
  if (!site.ok) {
    process.stderr.write(site.error.text)
    return site.error.exitCode
  }
  const on = planDate(site.value, date, today(site.value.place.zone))
  const conditions = await weatherFor(site.value, { forecast, ...(weather === undefined ? {} : { file: weather }) }, on)
  if (!conditions.ok) {
    process.stderr.write(conditions.error)
    return 2
  }
  const planned = conditions.value === undefined ? site.value : { ...site.value, conditions: conditions.value }
  const derived = derivePlan(planned, { date: on })
  if (!derived.ok) {
    process.stderr.write(terminalText(printProblems(derived.error, site.value.units)))
    return 2
  }
  const plan = derived.value
  const pour = plan.pours.find(({ id, number }) => id === wanted || number === wanted)
  if (!pour) {
    const known = plan.pours.map(({ id }) => id).join(', ')
    process.stderr.write(`There is no pour “${wanted}”; there ${plan.pours.length === 1 ? 'is' : 'are'} ${known}.\n`)
    return 2
  }
  const day = plan.dayPlans.find(({ pourId }) => pourId === pour.id)
  const own = plan.problems.filter(
    ({ at, code }) => at?.entityId === pour.id || (at === undefined && code !== 'orderDiffers'),
  )
  if (!day) {
    const missing = [...(planned.crew ? [] : ['the crew']), ...(planned.conditions ? [] : ['the weather'])]
    process.stderr.write(
      missing.length > 0
        ? `Pour ${pour.number} has no day plan: enter ${missing.join(' and ')}.\n`
        : `Pour ${pour.number} cannot be planned:\n${printProblems(own, site.value.units)}`,
    )
    return 1
  }
  const printed = printPlanJson(plan).dayPlans.find(({ pourId }) => pourId === pour.id)
  process.stdout.write(json ? `${JSON.stringify(printed)}\n` : terminalText(printDayTable(plan, day, own)))
  if (out !== undefined) {
    const written = await writeDay(plan, day, out)
    if (!written.ok) {
      process.stderr.write(written.error)
      return 2
    }
    if (!json) process.stdout.write(written.value.map(name => `wrote ${name}\n`).join(''))
  }
  return own.some(problem => problem.severity === 'stop') ? 1 : 0
}
