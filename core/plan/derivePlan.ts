import type { Pt } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import { err, type Finding, ok, type Problem, type Result } from '../../shared/problem'
import { settingValue } from '../../shared/settings'
import { ringContains } from '../geometry/contains'
import { findSlabOverlaps } from '../geometry/findSlabOverlaps'
import { resolveSlab } from '../geometry/resolveSlab'
import { type PourKnown, settleDays } from '../pours/order/settleDays'
import { wordProblem } from '../problems/wordProblem'
import type { Exposure } from '../sun/exposure'
import { resolveCaster } from '../sun/resolveCaster'
import { siteDay } from '../sun/siteDay'
import { sunlitSpans } from '../sun/sunlitSpans'
import { printMeasures } from '../units/printMeasures'
import { createMemo, type Memo } from './memo'
import type { Plan } from './plan'
import { planCapacities } from './planCapacity'
import type { TriedStart } from './planDayPlans'
import { planPours } from './planPours'
import { planQuantities, retarderFigures } from './planQuantities'
import { planExposures, planPoint, planShade } from './planShade'
import { planTotals } from './planTotals'
import { settleOrder } from './settleOrder'
import type { PourBudget } from './splitRegion'

export interface PlanRequest {
  /** `YYYY-MM-DD`; see planDate for what to pass when none was asked for. */
  readonly date: string
  /** Minutes between two steps of the shade table; the setting when absent. */
  readonly stepMin?: number
  /** Points asked about besides the marked ones; each belongs to the first slab when it lies in none. */
  readonly extraPoints?: readonly Pt[]
  /** The start of a proposed pour while it is dragged along the hours. */
  readonly triedStart?: TriedStart | undefined
  /** How hard to look for splits into pours; 'full' when absent. */
  readonly budget?: PourBudget
}

/** What is worked on until the next step, how much is done, and the parts that are ready. */
export interface PlanStep {
  readonly doing: 'areas' | 'pours' | 'figures' | 'shade' | 'points' | 'days'
  /** 0 … 1, by a rough count of the work. */
  readonly share: number
  readonly ready: Partial<Plan>
}

/** Before figures and day plans are made. */
const unknownPour: PourKnown = { doneMin: null, contractionM: null }

export interface DerivedPlan {
  readonly plan: Plan
  /** The raster of each slab. */
  readonly exposures: ReadonlyMap<string, Exposure>
}

/**
 * Everything that follows from a site on one date: areas, shade, pours, figures and problems. Pure: the same site and
 * request give the same plan. Pass the memo of the last call to have only what changed computed again.
 * Fails only where the day itself does not exist (`badDate`, `unknownZone`); a stop-problem of a slab or caster halts
 * no more than what depends on it.
 */
export function derivePlan(site: Site, request: PlanRequest, memo: Memo = createMemo()): Result<Plan> {
  const steps = derivePlanSteps(site, request, memo)
  let step = steps.next()
  while (!step.done) step = steps.next()
  memo.sweep()
  return step.value.ok ? ok(step.value.value.plan) : step.value
}

function* inParts<T>(
  work: Generator<void, T>,
  doing: PlanStep['doing'],
  from: number,
  to: number,
): Generator<PlanStep, T> {
  let share = from
  for (let step = work.next(); ; step = work.next()) {
    if (step.done) return step.value
    yield { doing, share, ready: {} }
    // How many steps there are is not known before: each takes a part of what is left.
    share += (to - share) / 4
  }
}

/** `derivePlan` in steps, so that what runs it can look up between two of them. The memo is not swept. */
export function* derivePlanSteps(
  site: Site,
  request: PlanRequest,
  memo: Memo,
): Generator<PlanStep, Result<DerivedPlan>> {
  const print = printMeasures(site.units)
  const { place, settings } = site
  const day = memo.part('day', 'site', [request.date, place.zone], () => siteDay(request.date, place.zone))
  if (!day.ok) return err(day.error.map(finding => wordProblem(finding, print)))

  const slabs = site.slabs.map(slab => memo.part('resolveSlab', slab.id, [slab], () => resolveSlab(slab)))
  const resolvedCasters = site.casters.map(caster =>
    memo.part('resolveCaster', caster.id, [caster], () => resolveCaster(caster)),
  )
  const casters = memo.part('casters', 'site', resolvedCasters, () => resolvedCasters.map(c => c.value))
  const slabList = memo.part('slabs', 'site', slabs, () => slabs)
  yield { doing: 'areas', share: 0.05, ready: { day: day.value } }
  const ground = {
    slabs: slabList,
    casters,
    place,
    day: day.value,
    stepMin: request.stepMin ?? settingValue(settings, 'shadeStepMin'),
    settings,
  }
  // What a crew takes at one time follows from the sun: the raster comes before the pours where it matters.
  const rasters = yield* inParts(planExposures(memo, ground), 'shade', 0.05, 0.2)
  const { capacities, findings: capacityFindings } = planCapacities(memo, {
    ...{ site, slabs: slabList, exposures: rasters, date: request.date },
  })
  const usual = yield* inParts(
    planPours(memo, site, slabList, day.value, request.budget ?? 'full', capacities, rasters),
    'pours',
    0.2,
    0.5,
  )
  const usualDays = memo.part('usualDays', 'site', [usual.ground], () => settleDays(usual.ground, () => unknownPour))
  yield {
    doing: 'figures',
    share: 0.5,
    ready: { pours: usual.pours, joints: usual.joints, days: usualDays.days, order: usual.order, capacities },
  }
  const usualQuantities = planQuantities(memo, site, slabList, usual.pours, usual.joints)
  const usualTotals = planTotals(site, slabList, usual.pours, usualQuantities)
  yield { doing: 'shade', share: 0.55, ready: { quantities: [...usualQuantities, ...usualTotals.quantities] } }
  const shadeOf = { ...ground, pours: usual.pours }
  const { shade, exposures } = yield* inParts(planShade(memo, shadeOf), 'shade', 0.55, 0.9)
  yield { doing: 'points', share: 0.9, ready: { shade } }
  const extra = (request.extraPoints ?? []).map((at, i) => ({
    id: `point-${i + 1}`,
    name: `Point ${i + 1}`,
    at,
    slabId: (slabList.find(slab => ringContains(slab.outline, at)) ?? slabList[0])?.id ?? '',
  }))
  const points = [...site.points, ...extra].flatMap(point => {
    const slab = slabList.find(s => s.id === point.slabId)
    return slab ? [planPoint(memo, point, slab, shadeOf)] : []
  })
  const inDays = yield* inParts(
    settleOrder(memo, {
      ...{ site, slabs: slabList, exposures, planned: usual, quantities: usualQuantities },
      ...{ date: request.date, tried: request.triedStart },
    }),
    'days',
    0.92,
    1,
  )
  const { planned, quantities, settled } = inDays
  const { pours, joints, order } = planned
  const figures = [...quantities, ...retarderFigures(pours, inDays.days.dayPlans)]
  const totals = planTotals(site, slabList, pours, figures)
  // A pour over what rules the splitter is told of once.
  const isOver = new Set(planned.findings.flatMap(({ code, at }) => (code === 'pourOverCap' ? [at?.entityId] : [])))
  const findings: Finding[] = [
    ...slabList.flatMap(slab => slab.findings),
    ...memo.part('slabOverlaps', 'site', [slabList], () => findSlabOverlaps(slabList)),
    ...resolvedCasters.flatMap(c => c.findings),
    ...memo.part('sunlitSpans', 'site', [place, day.value, settings], () => sunlitSpans(place, day.value, settings))
      .findings,
    ...capacityFindings,
    ...planned.findings,
    ...settled.findings,
    ...inDays.days.findings.filter(({ code, at }) => code !== 'overCrewCapacity' || !isOver.has(at?.entityId)),
    ...totals.findings,
  ]
  const problems: Problem[] = findings.map(finding => wordProblem(finding, print, place.zone))
  const plan: Plan = {
    site,
    date: request.date,
    day: day.value,
    slabs: slabList,
    casters,
    pours,
    joints,
    days: settled.days,
    order,
    shade,
    points,
    quantities: [...figures, ...totals.quantities],
    dayPlans: inDays.days.dayPlans,
    capacities,
    problems,
  }
  return ok({ plan, exposures })
}
