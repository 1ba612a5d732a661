/** The largest area to pour at one time on each slab: what the user typed, else the lower of common practice and crew. */
import type { Site } from '../../shared/document/site'
import type { Finding } from '../../shared/problem'
import { settingValue } from '../../shared/settings'
import type { CurveRegion } from '../geometry/curve'
import type { ResolvedSlab } from '../geometry/resolvedSlab'
import {
  type CapacityAnswer,
  type CapacityCell,
  type CapacityInput,
  type CapacityRule,
  capacityMap,
  capacityOf,
  capOf,
} from '../pours/day/capacityOf'
import { leastHands } from '../pours/day/crewSplit'
import { dayBase } from '../pours/day/dayBase'
import { type DayConditions, dayConditions } from '../pours/day/dayConditions'
import { stripSun } from '../pours/day/stripSun'
import { typicalClock } from '../pours/day/typicalClock'
import { hourlyStarts, workSpan } from '../pours/day/workSpan'
import type { PourClock } from '../pours/provisionalDay'
import type { Exposure } from '../sun/exposure'
import { daysApartMs, instantOf } from '../sun/siteDay'
import type { Memo } from './memo'

export interface SlabCapacity {
  readonly slabId: string
  /** What the splitter is held to. */
  readonly capM2: number
  readonly rule: CapacityRule
  /** Null where nothing is typed. */
  readonly userM2: number | null
  readonly practiceM2: number
  /** What this crew takes at the usual start in the day's weather; null without crew or weather. */
  readonly crew: {
    /** To whole 5 ft². */
    readonly areaM2: number
    readonly startMs: number
    readonly hands: number
    readonly date: string
  } | null
  /**
   * How a typical pour of that size runs by crew and weather, from the start that was fixed for a pour of the slab, else
   * the usual one; null where the settings have to do.
   */
  readonly clock: PourClock | null
  /** Why the settings have to do; null where they do not. */
  readonly clockMissing: ClockMissing | null
}

type BareCapacity = Omit<SlabCapacity, 'clock' | 'clockMissing'>

/** What keeps the model of the day from telling the hours of a pour. */
export type ClockMissing = 'crew' | 'weather' | 'hands' | 'usableWeather' | 'setHours'

/** The splitter is not asked again for a shade line that moved a little. */
const stepM2 = 0.464515204

interface CapacityGround {
  readonly site: Site
  readonly slabs: readonly ResolvedSlab[]
  readonly exposures: ReadonlyMap<string, Exposure>
  readonly date: string
}

interface SlabQuestion {
  readonly conditions: DayConditions
  /** The usual first truck of the date. */
  readonly usualMs: number
  /** The whole slab in the sunniest of so many equal parts of it: one for its mean. */
  readonly from: (startMs: number, parts: number) => CapacityInput
}

/** The sunniest tenth tells what a crew takes at most, the mean what a pour is like. */
const sunParts = { most: 10, mean: 1 } as const

/** Border printed with the field, m/m². */
const borderShare = ({ borders, netAreaM2 }: ResolvedSlab): number =>
  borders.reduce((sum, border) => (border.placed === 'withField' ? sum + border.outerLengthM : sum), 0) /
  Math.max(1, netAreaM2)

function askSlab(
  memo: Memo,
  { site, exposures, date }: CapacityGround,
  slab: ResolvedSlab,
): SlabQuestion | ClockMissing {
  const { crew, conditions, place, settings } = site
  const source = site.slabs.find(({ id }) => id === slab.id)
  const region: CurveRegion | undefined = slab.net[0]
  if (!crew) return 'crew'
  if (!conditions) return 'weather'
  if (crew.hands < leastHands) return 'hands'
  if (!source || !region) return 'setHours'
  const day = memo.part('dayConditions', date, [conditions, place, settings], () =>
    dayConditions(conditions, date, place, settings),
  )
  if (!day.ok) return 'usableWeather'
  const { usualMs } = workSpan(site, date, day.value)
  const exposed = exposures.get(slab.id)
  const movedMs = exposed === undefined ? 0 : daysApartMs(exposed.day, day.value.day)
  const sunniestOf = (startMs: number, parts: number): Pick<CapacityInput, 'sun'> => {
    if (exposed === undefined) return {}
    const last = stripSun(exposed, slab.net, startMs, startMs + 6 * 3_600_000, movedMs, parts).at(-1)
    return last === undefined ? {} : { sun: [{ share: 1, history: last.history }] }
  }
  const { base } = dayBase({ site, slab, source, crew, mix: site.mix ?? {}, conditions: day.value }, region)
  const input = { ...base, borderMPerM2: borderShare(slab), ...capOf(site) }
  return {
    conditions: day.value,
    usualMs,
    from: (startMs, parts) => ({ ...input, startMs, ...sunniestOf(startMs, parts) }),
  }
}

/** The earliest first truck that was fixed for a pour of the slab still to be poured. */
const chosenStart = (site: Site, slabId: string): string | undefined =>
  site.accepted
    .flatMap(row => (row.slabId === slabId ? row.pours : []))
    .flatMap(({ start, poured }) => (start && !poured ? [start.time] : []))
    .sort()[0]

export interface PlannedCapacities {
  readonly capacities: readonly SlabCapacity[]
  readonly findings: readonly Finding[]
}

/**
 * One capacity a slab. What the user typed stands; without it the lower of common practice and this crew's answer rules.
 * Where the crew's answer is under the setting `leastCapM2`, more pours would not help: common practice stays and a check
 * says so.
 */
export function planCapacities(memo: Memo, ground: CapacityGround): PlannedCapacities {
  const { site, date } = ground
  const { settings } = site
  const findings: Finding[] = []
  const leastM2 = settingValue(settings, 'leastCapM2')
  const capacities = ground.slabs.map(slab => {
    const exposed = ground.exposures.get(slab.id)
    const inputs = [slab, exposed, date, site.conditions, site.crew, site.mix, site.place, settings]
    const around = [site.capacity, site.calendar, site.access, site.finishes, site.materials]
    const bare = memo.part('capacity', slab.id, [...inputs, ...around], (): BareCapacity => {
      const question = askSlab(memo, ground, slab)
      const asked = typeof question === 'string' ? null : question.from(question.usualMs, sunParts.most)
      const answer: CapacityAnswer | null = asked && capacityOf(asked)
      const userM2 = site.capacity?.capM2 ?? null
      const practiceM2 = settingValue(settings, 'capM2')
      const crew = answer && {
        areaM2: Math.floor(answer.crewM2 / stepM2 + 1e-9) * stepM2,
        startMs: asked!.startMs,
        hands: asked!.hands,
        date,
      }
      const rules = crew !== null && crew.areaM2 < practiceM2 && crew.areaM2 >= leastM2
      return {
        ...{ slabId: slab.id, userM2, practiceM2, crew },
        capM2: userM2 ?? (rules ? crew.areaM2 : practiceM2),
        rule: userM2 !== null ? 'userCap' : rules ? 'crewAndWeather' : 'commonPractice',
      }
    })
    // A start dragged along the hours asks for the clock anew, not for the capacity.
    const start = chosenStart(site, slab.id)
    return memo.part('typicalClock', slab.id, [bare, ...inputs, ...around, start], (): SlabCapacity => {
      const asked = askSlab(memo, ground, slab)
      if (typeof asked === 'string') return { ...bare, clock: null, clockMissing: asked }
      const chosen = start === undefined ? null : instantOf(date, start, undefined, site.place.zone)
      const startMs = chosen?.ok ? chosen.value.ms : asked.usualMs
      const clock = typicalClock(asked.from(startMs, sunParts.mean), Math.min(bare.capM2, slab.netAreaM2))
      return { ...bare, clock, clockMissing: clock === null ? 'setHours' : null }
    })
  })
  for (const { slabId, userM2, capM2, crew } of capacities)
    if (userM2 === null && crew !== null && crew.areaM2 < leastM2)
      findings.push({
        ...{ code: 'capacityBelowLeast', severity: 'check', at: { entityId: slabId } },
        values: { crewM2: crew.areaM2, leastM2, capM2, hands: crew.hands },
      })
  return { capacities: memo.part('capacities', 'site', capacities, () => capacities), findings }
}

/** What a crew takes by start hour and hands, on the slab with the least. */
export interface CapacityMap {
  readonly slabId: string
  readonly startsMs: readonly number[]
  readonly hands: readonly number[]
  readonly cells: readonly CapacityCell[]
  readonly capM2: number
}

/** Crew sizes shown beside the site's own. */
const sizesBeside = 2

/** Hour by hour and crew by crew, in steps; null without crew and weather. */
export function* planCapacityMap(
  memo: Memo,
  ground: CapacityGround,
  capacities: readonly SlabCapacity[],
): Generator<void, CapacityMap | null> {
  const least = capacities.reduce<SlabCapacity | null>(
    (low, own) => (own.crew && (low === null || own.crew.areaM2 < low.crew!.areaM2) ? own : low),
    null,
  )
  const slab = ground.slabs.find(({ id }) => id === least?.slabId)
  const asked = slab && askSlab(memo, ground, slab)
  if (!least || !slab || !asked || typeof asked === 'string') return null
  const { startMs: _, hands: own, ...input } = asked.from(asked.usualMs, sunParts.most)
  const span = workSpan(ground.site, ground.date, asked.conditions)
  const startsMs = hourlyStarts(span, asked.conditions.day)
  const hands = Array.from({ length: 2 * sizesBeside + 1 }, (__, i) => own - sizesBeside + i).filter(
    count => count >= leastHands,
  )
  const tables = new Map()
  const cells: CapacityCell[] = []
  for (const startMs of startsMs) {
    const key = `${slab.id} ${startMs}`
    cells.push(
      ...memo.part('capacityRow', key, [least.crew, ground.site.conditions, ground.site.mix, own], () =>
        capacityMap({ ...input, tables }, [startMs], hands),
      ),
    )
    yield
  }
  return memo.part('capacityMap', 'site', [least.crew, least.capM2, ...cells], () => ({
    ...{ slabId: slab.id, startsMs, hands, cells, capM2: least.capM2 },
  }))
}
