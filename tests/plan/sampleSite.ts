import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { readSite } from '../../core/document/readSite'
import { derivePlan, type PlanRequest } from '../../core/plan/derivePlan'
import type { Memo } from '../../core/plan/memo'
import type { Plan } from '../../core/plan/plan'
import type { Site } from '../../shared/document/site'

export const samplesFolder = join(import.meta.dirname, '../../samples')

export function sampleSite(name: string): Site {
  const site = readSite(readFileSync(join(samplesFolder, `${name}.slabwright.json`)))
  if (!site.ok) throw new Error(`${name}: ${JSON.stringify(site.error)}`)
  return site.value
}

export function planOf(site: Site, request: PlanRequest = { date: '2026-07-21' }, memo?: Memo): Plan {
  const plan = derivePlan(site, request, memo)
  if (!plan.ok) throw new Error(JSON.stringify(plan.error))
  return plan.value
}
