/** What the screen shows of a plan besides what every plan holds: the sun-hours map, other days, other splits. */
import type { Site } from '../../shared/document/site'
import { ok, type Problem, type Result } from '../../shared/problem'
import { settingValue } from '../../shared/settings'
import type { PourDayPlan } from '../pours/day/pourDay'
import { type PourSetMap, setMap } from '../pours/day/setMap'
import { wordProblem } from '../problems/wordProblem'
import { type Grid, overGrid } from '../sun/cellCoverage'
import { cellSunMinutes } from '../sun/cellMasks'
import type { Exposure } from '../sun/exposure'
import { resolveCaster } from '../sun/resolveCaster'
import { type ShadeLineTimes, shadeLineTimes } from '../sun/shadeLineTimes'
import { siteDay } from '../sun/siteDay'
import { printMeasures } from '../units/printMeasures'
import { type DerivedPlan, derivePlanSteps, type PlanRequest, type PlanStep } from './derivePlan'
import type { Memo } from './memo'
import type { Plan, SunShares } from './plan'
import { type PlannedAlternative, planAlternativesSteps } from './planAlternatives'
import { type CapacityMap, planCapacityMap } from './planCapacity'
import { planDayPlans } from './planDayPlans'
import { planExposures, planShade } from './planShade'
import type { ScreenExtra } from './screenExtras'

/** Another day, or the same with the trees' leaves as told. */
export interface OtherDay {
  readonly date: string
  readonly leaves: 'asDated' | 'on' | 'off'
}

/** A pour on another day, at another hour or with other hands. */
export interface OtherPour {
  readonly pourId: string
  readonly date: string
  /** `HH:MM` on the clock of the site. */
  readonly time: string
  readonly hands: number
}

export interface ComparedPour {
  readonly asked: OtherPour
  /** Null where it cannot be planned: the problems say why. */
  readonly day: PourDayPlan | null
  readonly problems: readonly Problem[]
}

export interface ScreenRequest extends PlanRequest {
  readonly extras: readonly ScreenExtra[]
  readonly other?: OtherDay | undefined
  /** One pour planned otherwise, to lay beside its plan. */
  readonly otherPour?: OtherPour | undefined
}

/** Minutes of direct sun by cell, row by row from the lower left; `weights` = share of each cell that is slab. */
export interface SunMap {
  readonly slabId: string
  readonly grid: Grid
  readonly minutes: Float64Array
  readonly weights: Float64Array
}

export interface SlabShadeLine extends ShadeLineTimes {
  readonly slabId: string
}

/** One way to split a part of a slab, priced and beside the others. */
export type OfferedSplit = PlannedAlternative

export interface ComparedDay extends OtherDay {
  readonly shadeLines: readonly SlabShadeLine[]
  readonly slabShares: ReadonlyMap<string, SunShares>
  readonly instants: readonly number[]
}

export interface ScreenParts extends Plan {
  readonly shadeLines: readonly SlabShadeLine[]
  readonly sunMaps: readonly SunMap[] | undefined
  readonly offers: readonly OfferedSplit[] | undefined
  readonly compared: ComparedDay | null
  readonly comparedPour: ComparedPour | null
  /** Null without crew and weather. */
  readonly capacityMap: CapacityMap | null | undefined
  readonly setMaps: readonly PourSetMap[] | undefined
}

export interface ScreenStep extends Omit<PlanStep, 'doing' | 'ready'> {
  readonly doing:
    | PlanStep['doing']
    | 'shade line'
    | 'sun hours'
    | 'other splits'
    | 'other day'
    | 'crews and hours'
    | 'set map'
  readonly ready: Partial<ScreenParts>
}

/** The site's trees in leaf or bare all year, whatever their dates say. */
export function withLeaves(site: Site, { date, leaves }: OtherDay): Site {
  if (leaves === 'asDated') return site
  // One day of leaf, half a year away from the date asked about.
  const away = `${String(((Number(date.slice(5, 7)) + 5) % 12) + 1).padStart(2, '0')}-15`
  return {
    ...site,
    casters: site.casters.map(caster =>
      caster.kind === 'tree' ? { ...caster, leaves: leaves === 'on' ? 'evergreen' : { from: away, to: away } } : caster,
    ),
  }
}

function* compareDay(site: Site, plan: Plan, other: OtherDay, memo: Memo): Generator<void, ComparedDay | null> {
  const changed = memo.part('otherSite', 'site', [site.casters, other.date, other.leaves], () =>
    withLeaves(site, other).casters.map(caster => resolveCaster(caster).value),
  )
  const day = memo.part('otherDay', 'site', [other.date, site.place.zone], () => siteDay(other.date, site.place.zone))
  if (!day.ok) return null
  const { shade } = yield* planShade(memo, {
    slabs: plan.slabs,
    casters: changed,
    pours: [],
    place: site.place,
    day: day.value,
    stepMin: settingValue(site.settings, 'shadeStepMin'),
    settings: site.settings,
  })
  const shadeLines = plan.slabs.map(slab => ({
    slabId: slab.id,
    ...memo.part('shadeLine', slab.id, [slab, changed, site.place, day.value, site.settings], () =>
      shadeLineTimes(slab.net, slab.levelM, changed, site.place, day.value, site.settings),
    ),
  }))
  return { ...other, shadeLines, slabShares: shade.slabShares, instants: shade.instants }
}

function withoutTable(day: PourDayPlan): PourDayPlan {
  const { tables: _, ...input } = day.input
  return { ...day, input }
}

/** Set tables are functions, which no worker can send: they are made again where a day is planned again. */
function withoutTables(plan: Plan, memo: Memo): Plan {
  const sendable = plan.dayPlans.map(day => memo.part('sendableDay', day.pourId, [day], () => withoutTable(day)))
  return { ...plan, dayPlans: memo.part('sendableDays', 'site', sendable, () => sendable) }
}

/** One pour planned for another day, hour or crew, with the shade of that day. */
function* comparePour(
  site: Site,
  plan: Plan,
  asked: OtherPour,
  exposures: ReadonlyMap<string, Exposure>,
  memo: Memo,
): Generator<void, ComparedPour | null> {
  const pour = plan.pours.find(({ id }) => id === asked.pourId)
  if (!pour || !site.crew) return null
  let rasters = exposures
  if (asked.date !== plan.date) {
    const day = memo.part('otherPourDay', 'site', [asked.date, site.place.zone], () =>
      siteDay(asked.date, site.place.zone),
    )
    if (day.ok) {
      const { slabs, casters, shade } = plan
      const of = { slabs, casters, place: site.place, day: day.value, stepMin: shade.stepMin, settings: site.settings }
      rasters = yield* planExposures(memo, of)
    }
  }
  const { crew } = site
  const hands = memo.part('otherCrew', 'site', [crew, asked.hands], () => ({ ...crew, hands: asked.hands }))
  const other = memo.part('otherPourSite', 'site', [site, hands], (): Site => ({ ...site, crew: hands }))
  const made = yield* planDayPlans(memo, {
    ...{ site: other, slabs: plan.slabs, exposures: rasters, quantities: plan.quantities, date: asked.date },
    pours: [{ ...pour, date: asked.date }],
    starts: new Map([[pour.id, { time: asked.time }]]),
  })
  const [day] = made.dayPlans
  const print = printMeasures(site.units)
  return memo.part('comparedPour', 'site', [day, made.findings.length, asked], () => ({
    asked,
    day: day ? withoutTable(day) : null,
    problems: made.findings.map(finding => wordProblem(finding, print, site.place.zone)),
  }))
}

/**
 * The plan in steps, and after it what the screen asks for besides. `otherMemo` is the other day's own. The memos are
 * swept at the end.
 */
export function* deriveScreen(
  site: Site,
  request: ScreenRequest,
  memo: Memo,
  otherMemo: Memo,
): Generator<ScreenStep, Result<ScreenParts, readonly Problem[]>> {
  const derived: Result<DerivedPlan> = yield* derivePlanSteps(site, request, memo)
  if (!derived.ok) return derived
  const { exposures } = derived.value
  const plan = withoutTables(derived.value.plan, memo)
  const { casters, slabs, day } = plan
  const { place, settings } = site
  const { day: _, ...known } = plan
  yield { doing: 'shade line', share: 0.92, ready: { ...known } }
  const lines: SlabShadeLine[] = []
  for (const slab of slabs) {
    const times = memo.part('shadeLine', slab.id, [slab, casters, place, day, settings], () =>
      shadeLineTimes(slab.net, slab.levelM, casters, place, day, settings),
    )
    lines.push(memo.part('slabShadeLine', slab.id, [times], () => ({ slabId: slab.id, ...times })))
    yield { doing: 'shade line', share: 0.93, ready: {} }
  }
  const shadeLines = memo.part('shadeLines', 'site', lines, () => lines)
  yield { doing: 'sun hours', share: 0.94, ready: { shadeLines } }
  let sunMaps: readonly SunMap[] | undefined
  if (request.extras.includes('sunMaps')) {
    const maps = slabs.map(slab => {
      const raster = exposures.get(slab.id)!
      return memo.part(
        'sunMap',
        slab.id,
        [raster],
        (): SunMap => ({
          slabId: slab.id,
          grid: raster.grid,
          minutes: cellSunMinutes(raster),
          weights: overGrid(raster.covered, raster.grid),
        }),
      )
    })
    sunMaps = memo.part('sunMaps', 'site', maps, () => maps)
    yield { doing: 'other splits', share: 0.95, ready: { sunMaps } }
  }
  let offers: readonly OfferedSplit[] | undefined
  if (request.extras.includes('proposals')) {
    const work = planAlternativesSteps(plan, memo, request.budget)
    let step = work.next()
    while (!step.done) {
      yield { doing: 'other splits', share: 0.96, ready: {} }
      step = work.next()
    }
    const found = step.value
    offers = memo.part('offers', 'site', found, () => found)
    yield { doing: 'other day', share: 0.97, ready: { offers } }
  }
  let compared: ComparedDay | null = null
  if (request.other) {
    const work = compareDay(site, plan, request.other, otherMemo)
    let step = work.next()
    while (!step.done) {
      yield { doing: 'other day', share: 0.98, ready: {} }
      step = work.next()
    }
    compared = step.value
  }
  let capacityMap: CapacityMap | null | undefined
  if (request.extras.includes('capacityMap')) {
    const ground = { site, slabs, exposures, date: plan.date }
    const work = planCapacityMap(memo, ground, plan.capacities)
    let step = work.next()
    while (!step.done) {
      yield { doing: 'crews and hours', share: 0.985, ready: {} }
      step = work.next()
    }
    capacityMap = step.value
  }
  let setMaps: readonly PourSetMap[] | undefined
  if (request.extras.includes('setMaps')) {
    const maps: PourSetMap[] = []
    for (const own of plan.dayPlans) {
      const exposed = exposures.get(plan.pours.find(({ id }) => id === own.pourId)?.slabId ?? '')
      if (exposed) maps.push(memo.part('setMap', own.pourId, [own, exposed], () => setMap(exposed, own)))
      yield { doing: 'set map', share: 0.99, ready: {} }
    }
    setMaps = memo.part('setMaps', 'site', maps, () => maps)
  }
  let comparedPour: ComparedPour | null = null
  if (request.otherPour) {
    const work = comparePour(site, plan, request.otherPour, exposures, otherMemo)
    let step = work.next()
    while (!step.done) {
      yield { doing: 'other day', share: 0.995, ready: {} }
      step = work.next()
    }
    comparedPour = step.value
  }
  memo.sweep()
  otherMemo.sweep()
  return ok({ ...plan, shadeLines, sunMaps, offers, compared, capacityMap, setMaps, comparedPour })
}
