/** The day of a pour of the site: from its shape, the crew, the mix and the weather to its plan. */
import { DateTime } from 'luxon'
import type * as z from 'zod/mini'
import type { Crew, Mix } from '../../../shared/document/day'
import type { LocalTime } from '../../../shared/document/primitives'
import type { Site } from '../../../shared/document/site'
import type { Slab } from '../../../shared/document/slab'
import { err, type Finding, ok, type Result } from '../../../shared/problem'
import { settingValue } from '../../../shared/settings'
import { coldChecks } from '../../concrete/coldChecks'
import { heatChecks } from '../../concrete/heatIndex'
import { hotChecks } from '../../concrete/hotChecks'
import { rainOutlook } from '../../concrete/rain'
import { predictSet } from '../../concrete/setClock'
import type { SetLearned } from '../../concrete/setTargets'
import type { CurveRegion } from '../../geometry/curve'
import type { ResolvedSlab } from '../../geometry/resolvedSlab'
import { isolationEdges } from '../../quantities/edgeLengths'
import type { Exposure } from '../../sun/exposure'
import { clockMin, daysApartMs, instantOf } from '../../sun/siteDay'
import { type CapacityAnswer, capacityOf, capOf } from './capacityOf'
import { dayBase } from './dayBase'
import type { DayConditions } from './dayConditions'
import { type DayPlan, dayPlan } from './dayPlan'
import { type DayInput, type DayStrip, isSetKnown, tableOf } from './dayProblem'
import { type TapeMark, tapeMarks } from './doseMarks'
import { planLoads } from './loads'
import { outOfReach } from './outOfReach'
import { methodReachM, type PlacingMethod } from './placingMethod'
import { checkRetarder } from './retarder'
import { type StartRow, scanStarts } from './scanStarts'
import { solveDay } from './solveDay'
import { borderedEdges, stripBorder } from './stripBorder'
import { stripSun } from './stripSun'
import { cutStrips, type Direction, placingDirections, type Strip } from './strips'
import { hourlyStarts, twilightMs, type WorkSpan, workSpan } from './workSpan'

const hourMs = 3_600_000

export interface PourOfDay {
  readonly id: string
  readonly number: string
  readonly part: 'whole' | 'field' | 'border'
  readonly region: CurveRegion
  readonly areaM2: number
  readonly date: string
  /** To order. */
  readonly orderM3: number
  /** The start that was fixed for it. */
  readonly start?: z.infer<typeof LocalTime> | undefined
}

export interface StripShape extends Strip {
  readonly id: string
}

/** Where the drum is stopped and dosed: after a strip, before the next. */
export interface DoseMark {
  readonly afterStripId: string
  readonly beforeStripId: string
  readonly doseMin: number
  /** Already in the drum. */
  readonly inDrumMin: number
  readonly marks: readonly TapeMark[]
  /** Left in the truck at the mark. */
  readonly leftM3: number
}

export interface PourDayPlan {
  readonly pourId: string
  readonly number: string
  readonly date: string
  readonly plan: DayPlan
  readonly shapes: readonly StripShape[]
  readonly direction: Direction
  readonly doseMarks: readonly DoseMark[]
  /** For planning again on the day. */
  readonly input: DayInput
  readonly method: PlacingMethod
  readonly capacity: CapacityAnswer
  readonly starts: PourStarts
  /** The last print is done, minutes after midnight; null where the weather does not tell. */
  readonly doneMin: number | null
  readonly washableMs: number
  readonly rainAnswer: 'go' | 'watch' | 'noGo' | 'unknown'
  readonly findings: readonly Finding[]
}

/** Hour by hour: when a first truck gives the slack wanted and is done by dark and the quiet hour. */
export interface PourStarts {
  readonly rows: readonly StartRow[]
  readonly earliestMs: number | null
  readonly latestMs: number | null
  /** With the largest slack. */
  readonly bestMs: number | null
}

export interface PourDayInput {
  readonly site: Site
  readonly pour: PourOfDay
  readonly slab: ResolvedSlab
  readonly source: Slab
  readonly exposed: Exposure | undefined
  readonly crew: Crew
  readonly mix: Mix
  readonly conditions: DayConditions
  /** What earlier pours taught about the mix. */
  readonly learned?: SetLearned
  /** Direction of placing; the better of the two along the pour if left out. */
  readonly direction?: Direction
}

/** A gain that is worth placing away from the truck for. */
const sunnyGainMin = 5

const clockOf = (ms: number, zone: string): string => DateTime.fromMillis(ms, { zone }).toFormat('H:mm')

/** The user's start, else the first hour of the plant, else the setting. */
function startOf({ pour, site }: PourDayInput, span: WorkSpan): Result<number, readonly Finding[]> {
  if (pour.start === undefined) return ok(span.usualMs)
  const at = instantOf(pour.date, pour.start.time, pour.start.fold, site.place.zone)
  return at.ok ? ok(at.value.ms) : err(at.error)
}

const letters = 'abcdefghijklmnopqrstuvwxyz'
export const stripName = (index: number): string =>
  index < 26 ? letters[index]! : `${letters[Math.floor(index / 26) - 1] ?? 'z'}${letters[index % 26]!}`

function dayStrips(
  input: PourDayInput,
  shapes: readonly Strip[],
  loads: readonly { readonly load: number; readonly volumeM3: number }[],
  startMs: number,
): DayStrip[] {
  const { pour, slab, source, exposed, conditions } = input
  const bordered = pour.part === 'whole' ? borderedEdges(slab, source) : []
  const alone = pour.part === 'border' ? slab.borders.filter(border => border.placed !== 'withField') : []
  const aloneWidthM = alone.length > 0 ? Math.max(...alone.map(border => border.widthM)) : 0
  const movedMs = exposed === undefined ? 0 : daysApartMs(exposed.day, conditions.day)
  return shapes.map((shape, i) => {
    const border = stripBorder(shape, bordered)
    const isBorder = aloneWidthM > 0
    return {
      id: stripName(i),
      load: loads[i]!.load,
      volumeM3: loads[i]!.volumeM3,
      areaM2: shape.areaM2,
      edgeM: shape.formedM,
      borderM: isBorder ? shape.areaM2 / aloneWidthM : border.lengthM,
      borderArcM: border.arcM,
      miters: border.miters,
      frontM: shape.frontM,
      printM2: isBorder ? 0 : Math.max(0, shape.areaM2 - border.areaM2),
      sun:
        exposed === undefined
          ? [{ share: 1, history: { fromMs: startMs, stepMs: hourMs, share: [1] } }]
          : stripSun(exposed, shape.regions, startMs, startMs + 6 * hourMs, movedMs),
    }
  })
}

function doseMarksOf(pour: PourOfDay, shapes: readonly StripShape[], plan: DayPlan): DoseMark[] {
  return plan.loads.flatMap(load => {
    let inDrumMin = 0
    let left = load.volumeM3
    return load.portions.flatMap(portion => {
      const before = portion.stripIds[0]!
      const index = shapes.findIndex(shape => shape.id === before)
      const ahead = shapes[index - 1]
      const leftM3 = left
      left -= portion.volumeM3
      const had = inDrumMin
      inDrumMin = portion.doseMin
      if (portion.doseMin <= had) return []
      return [
        {
          afterStripId: ahead?.id ?? '',
          beforeStripId: before,
          doseMin: portion.doseMin,
          inDrumMin: had,
          marks: (ahead?.ends ?? []).flatMap(({ from, to }) => tapeMarks(pour.region, from, to)),
          leftM3,
        },
      ]
    })
  })
}

function timeFindings({ site, pour, conditions }: PourDayInput, span: WorkSpan, plan: DayPlan): Finding[] {
  const { zone } = site.place
  const found: Finding[] = []
  const named = { pour: pour.number }
  const start = clockOf(plan.startMs, zone)
  const { plant, quietMs } = span
  if (plant && (plan.startMs < plant.fromMs || plan.startMs > plant.toMs))
    found.push({ code: 'startOutsideHours', severity: 'check', values: { ...named, start } })
  const endMs = doneMs(plan)
  const end = clockOf(endMs, zone)
  const { sunriseMs, sunsetMs } = conditions
  const isPolarNight = sunriseMs === null && conditions.weather.directWm2.every(watts => watts === 0)
  if (isPolarNight || (sunriseMs !== null && plan.startMs < sunriseMs - twilightMs))
    found.push({ code: 'startInDark', severity: 'check', values: { ...named, start } })
  if (!isSetKnown(plan)) return found
  if (sunsetMs !== null && endMs > sunsetMs + twilightMs)
    found.push({
      code: 'darkBeforeDone',
      severity: 'check',
      values: { ...named, end, dark: clockOf(sunsetMs + twilightMs, zone) },
    })
  if (quietMs !== null && endMs > quietMs)
    found.push({ code: 'quietBeforeDone', severity: 'check', values: { ...named, end, quiet: clockOf(quietMs, zone) } })
  return found
}

/** False where the hours of weather end before every strip is ready. */

/** The last print is done, borders included. */
export const doneMs = (plan: DayPlan): number =>
  Math.max(
    ...plan.strips.map(strip => strip.stampToMs),
    ...plan.tasks.map(task => (task.name === 'border' ? task.toMs : 0)),
  )

function pourFindings(
  input: PourDayInput,
  plan: DayPlan,
  shapes: readonly StripShape[],
  method: PlacingMethod,
  capacity: CapacityAnswer,
): Finding[] {
  const { site, pour, conditions } = input
  const { settings } = site
  const named = { pour: pour.number }
  const found: Finding[] = []
  const value = (name: Parameters<typeof settingValue>[1]): number => settingValue(settings, name)
  if (pour.areaM2 > value('practiceCapM2') * (1 + 1e-9))
    found.push({
      code: 'overPracticeCap',
      severity: 'check',
      values: { ...named, areaM2: pour.areaM2, capM2: value('practiceCapM2') },
    })
  else if (isSetKnown(plan) && pour.areaM2 > capacity.crewM2 * 1.02 && plan.slackMin < value('wantedSlackMin'))
    found.push({
      code: 'overCrewCapacity',
      severity: 'check',
      values: { ...named, areaM2: pour.areaM2, capacityM2: capacity.crewM2 },
    })
  for (const { volumeM3 } of plan.loads)
    if (volumeM3 < value('shortLoadM3') - 1e-9) {
      found.push({ code: 'shortLoad', severity: 'note', values: { ...named, volumeM3 } })
      break
    }
  if (method.method !== 'chute' && method.method !== 'pump' && method.haulM !== null) {
    const told = {
      ...named,
      haulM: method.haulM,
      method: method.method === 'powerBuggy' ? 'power buggy' : 'wheelbarrow',
    }
    const reachM = methodReachM(method.method, site.access)
    found.push(
      method.haulM > reachM
        ? { code: 'haulBeyondReach', severity: 'check', values: { ...told, reachM } }
        : { code: 'haulTooFar', severity: 'note', values: told },
    )
  }
  const walls = new Set(isolationEdges(input.slab, input.source).map(edge => edge.edgeId))
  const stand = [pour.region.outer, ...pour.region.holes].flat().filter(edge => !walls.has(edge.edgeId))
  const far = shapes
    .map(shape => ({ id: shape.id, areaM2: outOfReach(shape.regions, stand, value('reachM')) }))
    .filter(({ areaM2 }) => areaM2 > 0.5)
  if (far.length > 0)
    found.push({
      ...{ code: 'outOfReach', severity: 'note' },
      values: {
        ...{ ...named, strips: far.map(({ id }) => id).join(', '), count: far.length, reachM: value('reachM') },
        areaM2: far.reduce((sum, { areaM2 }) => sum + areaM2, 0),
      },
    })
  const wide = shapes.find(shape => shape.depthM > value('screedM') && shape.frontM > value('screedM'))
  if (wide)
    found.push({
      code: 'stripOverScreed',
      severity: 'note',
      values: { ...named, strip: wide.id, widthM: Math.min(wide.depthM, wide.frontM), screedM: value('screedM') },
    })
  if (conditions.moved && site.conditions)
    found.push({
      code: 'dayWeatherShifted',
      severity: 'note',
      values: { ...named, weatherDate: site.conditions.date, date: pour.date },
    })
  return found
}

/** What was found of the concrete of one pour, told with its number. */
const ofPour = ({ number }: PourDayInput['pour'], found: readonly Finding[]): Finding[] =>
  found.map(finding => ({ ...finding, values: { ...finding.values, pour: number } }))

/** Checks of weather and concrete for the hours of this pour. */
function weatherFindings(
  input: PourDayInput,
  plan: DayPlan,
  day: DayInput,
  rain: ReturnType<typeof rainOutlook>,
): Finding[] {
  const { site, source, conditions } = input
  const { settings } = site
  const tight = Math.max(
    0,
    day.strips.findIndex(strip => strip.id === plan.tightestStripId),
  )
  const sunniest = day.strips[tight]!.sun.at(-1)!
  const planned = plan.strips[tight]!
  const set = predictSet({
    ...{ weather: day.weather, shade: sunniest.history, thicknessM: source.thicknessM, mix: day.mix },
    ...{ placedMs: planned.placeMs, doseMin: planned.doseMin },
    ...(day.learned === undefined ? {} : { learned: day.learned }),
    ...(settings === undefined ? {} : { settings }),
  })
  const { placedC } = tableOf(day, new Map(), sunniest).run(planned.placeMs).run
  return [
    ...ofPour(
      input.pour,
      set.findings.filter(({ code }) => code !== 'setNotReached' || !isSetKnown(plan)),
    ),
    ...ofPour(input.pour, hotChecks({ placedC, mostEvaporationKgM2H: plan.evaporationMaxKgM2H }, settings)),
    ...coldChecks({ hours: conditions.hours, placedMs: plan.startMs, placedC, thicknessM: source.thicknessM }),
    ...heatChecks(conditions.hours, plan.startMs, doneMs(plan)),
    ...rain.findings,
  ]
}

/** Plans the day of one pour. Stops with findings where crew, trucks or start cannot be used. */
export function pourDay(input: PourDayInput): Result<PourDayPlan, readonly Finding[]> {
  const { site, pour, slab, source, exposed, crew, mix, conditions } = input
  const { settings } = site
  const span = workSpan(site, pour.date, conditions)
  const start = startOf(input, span)
  if (!start.ok) return start
  const startMs = start.value
  const trucks = planLoads({ orderM3: pour.orderM3, ...(settings === undefined ? {} : { settings }) })
  if (!trucks.ok) return trucks
  const { loadsM3, portions } = trucks.value
  const made = dayBase({ site, slab, source, crew, mix, conditions }, pour.region)
  const { method } = made
  const learned = input.learned === undefined ? {} : { learned: input.learned }
  const base = { ...made.base, startMs, ...learned } satisfies Omit<DayInput, 'strips'>
  const shares = portions.map(portion => portion.volumeM3)
  const tryDirection = (direction: Direction) => {
    const shapes = cutStrips(pour.region, direction, shares)
    const strips = dayStrips(input, shapes, portions, startMs)
    const solved = solveDay({ ...base, strips })
    return { direction, shapes, strips, slackMin: solved.ok ? solved.value.plainSlackMin : Number.NEGATIVE_INFINITY }
  }
  const choices = input.direction
    ? [input.direction]
    : towardTruck(placingDirections(pour.region).slice(0, 2), pour, site)
  const tried = choices.map(tryDirection)
  const chosen = tried.reduce((best, own) => (own.slackMin > best.slackMin + sunnyGainMin ? own : best))
  const shapes: StripShape[] = chosen.shapes.map((shape, i) => ({ ...shape, id: stripName(i) }))
  const day: DayInput = { ...base, strips: chosen.strips, tables: new Map() }
  const spanTo = startMs + 8 * hourMs
  const mostAirC = Math.max(
    ...conditions.hours.flatMap(row => {
      const at = Date.parse(row.startUtc)
      return at + hourMs > startMs && at < spanTo ? [row.airC] : []
    }),
  )
  const plan = dayPlan({
    ...{ day, pour: pour.number, loadsM3, reweather: conditions.reweather },
    ...{ rainMs: conditions.rainMs, mostAirC: Number.isFinite(mostAirC) ? mostAirC : 20 },
  })
  if (!plan.ok) return plan
  const borderM = chosen.strips.reduce((sum, strip) => sum + strip.borderM, 0)
  const worst =
    exposed === undefined
      ? undefined
      : stripSun(exposed, [pour.region], startMs, startMs + 6 * hourMs, daysApartMs(exposed.day, conditions.day)).at(-1)
  const capacity = capacityOf({
    ...base,
    borderMPerM2: pour.part === 'border' ? 0 : borderM / pour.areaM2,
    ...capOf(site),
    ...(worst === undefined ? {} : { sun: [{ share: 1, history: worst.history }] }),
  })
  const doseMarks = doseMarksOf(pour, shapes, plan.value)
  const scan = scanStarts(day, hourlyStarts(span, conditions.day), span.doneByMs)
  const rain = rainOutlook(
    {
      hours: conditions.hours,
      firstConcreteMs: startMs,
      allHardMs: Math.max(...plan.value.strips.map(strip => strip.tooHardMs)),
    },
    settings,
  )
  return ok({
    pourId: pour.id,
    number: pour.number,
    date: pour.date,
    plan: plan.value,
    shapes,
    direction: chosen.direction,
    doseMarks,
    input: day,
    method,
    capacity,
    starts: {
      rows: scan.rows,
      earliestMs: scan.earliestMs,
      latestMs: scan.latestMs,
      bestMs: scan.best?.startMs ?? null,
    },
    doneMin: isSetKnown(plan.value) ? Math.round(clockMin(conditions.day, doneMs(plan.value))) : null,
    washableMs: rain.washableMs,
    rainAnswer: rain.answer,
    findings: [
      ...plan.value.findings,
      ...checkRetarder(pour.number, doseMarks, day),
      ...timeFindings(input, span, plan.value),
      ...pourFindings(input, plan.value, shapes, method, capacity),
      ...weatherFindings(input, plan.value, day, rain),
    ].map(finding => ({ ...finding, at: { entityId: pour.id } })),
  })
}

/** Far to near: the way that ends at the truck first. */
function towardTruck(directions: readonly Direction[], pour: PourOfDay, site: Site): readonly Direction[] {
  const spot = site.access?.truckSpots[0]?.at
  if (!spot) return directions
  const from = pour.region.outer[0]!.from
  const reach = ([x, y]: Direction): number => x * (spot[0] - from[0]) + y * (spot[1] - from[1])
  return [...directions].sort((a, b) => reach(b) - reach(a))
}
