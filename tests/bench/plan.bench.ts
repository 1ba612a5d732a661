/** The whole job on real files: the command line from a cold process, and what a caster's move or an hour costs. */
import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { readSite } from '../../core/document/readSite'
import { derivePlan } from '../../core/plan/derivePlan'
import { createMemo } from '../../core/plan/memo'
import type { Site } from '../../shared/document/site'
import type { Bench, BenchRow } from './row'

const date = '2026-07-21'
const sample = (name: string) => join('samples', `${name}.slabwright.json`)

const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN

function load(name: string): Site {
  const site = readSite(readFileSync(sample(name)))
  if (!site.ok) throw new Error(`${name} does not read`)
  return site.value
}

const row = (id: string, what: string, value: number, unit: string, target: string): BenchRow => ({
  id,
  what,
  value,
  unit,
  peer: null,
  target,
  ok: null,
})

/** Seconds of wall time and peak memory of one run of the command line, the median of five. */
function measureCommand(name: string): { seconds: number; peakMb: number } {
  const report = "process.on('exit',()=>process.stderr.write('peak '+process.resourceUsage().maxRSS));"
  const script = `${report}process.argv.push('plan',${JSON.stringify(sample(name))},'--date','${date}','--json');await import(${JSON.stringify(`file://${join(process.cwd(), 'dist/cli/main.mjs')}`)})`
  const seconds: number[] = []
  let peakMb = 0
  for (let run = 0; run < 5; run++) {
    const startedAt = performance.now()
    const { stderr } = spawnSync(process.execPath, ['--input-type=module', '--eval', script, 'slabwright'], {
      encoding: 'utf8',
      maxBuffer: 2 ** 27,
    })
    seconds.push((performance.now() - startedAt) / 1000)
    peakMb = Math.max(peakMb, Number(/peak (\d+)/.exec(stderr)?.[1] ?? Number.NaN) / 1024)
  }
  return { seconds: median(seconds), peakMb }
}

/** Milliseconds to derive the plan again after one tree moved, without looking for other pours. */
function measureMovedTree(name: string): number {
  const site = load(name)
  const memo = createMemo()
  derivePlan(site, { date }, memo)
  const times = Array.from({ length: 9 }, (_, i) => {
    const casters = site.casters.map((c, k) =>
      c.kind === 'tree' && k === site.casters.findIndex(each => each.kind === 'tree')
        ? { ...c, at: [c.at[0] + 0.1 * (i + 1), c.at[1]] as const }
        : c,
    )
    const startedAt = performance.now()
    derivePlan({ ...site, casters }, { date }, memo)
    return performance.now() - startedAt
  })
  return median(times)
}

export const bench: Bench = async () => {
  const patio = measureCommand('l-patio')
  const court = measureCommand('school-court')
  const plaza = measureCommand('plaza')
  return [
    row('plan.patio', 'plan of the L patio, whole process, median of 5', patio.seconds, 's', '≤ 0.9'),
    row('plan.court', 'plan of the 12,000 ft² court, whole process, median of 5', court.seconds, 's', '≤ 1'),
    row('plan.plaza', 'plan of the 50,000 ft² plaza, whole process, median of 5', plaza.seconds, 's', '≤ 4'),
    row('plan.memory', 'peak memory of the plaza', plaza.peakMb, 'MB', '≤ 400'),
    row(
      'plan.movedTree',
      'plan of the 100-caster court after a tree moved, median of 9',
      measureMovedTree('court-100-casters'),
      'ms',
      'reported',
    ),
  ]
}
