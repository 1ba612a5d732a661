/** The days of the pours: one plan a pour, or a note on what is not entered yet. */
import type * as z from 'zod/mini'
import type { Mix } from '../../shared/document/day'
import type { LocalTime } from '../../shared/document/primitives'
import type { Site } from '../../shared/document/site'
import type { Quantity } from '../../shared/planJson'
import type { Finding } from '../../shared/problem'
import { settingValue } from '../../shared/settings'
import type { ResolvedSlab } from '../geometry/resolvedSlab'
import { dayConditions } from '../pours/day/dayConditions'
import { learnedSet } from '../pours/day/learnedSet'
import { type PourDayPlan, pourDay } from '../pours/day/pourDay'
import { emptyLoadDoses } from '../pours/slab/emptyLoadDoses'
import type { Exposure } from '../sun/exposure'
import { noonHeightApart } from '../sun/noonHeightApart'
import type { Memo } from './memo'
import type { PlannedPour } from './plan'

/** The first truck of a pour at another hour, before the pour is anybody's choice. */
export interface TriedStart {
  readonly pourId: string
  /** `HH:MM` on the clock of the site. */
  readonly time: string
}

export interface PlannedDays {
  readonly dayPlans: readonly PourDayPlan[]
  readonly findings: readonly Finding[]
}

const plainMix: Mix = {}

/** What a day plan cannot do without; the mix has defaults. */
function missingOf(site: Site): string[] {
  return [...(site.crew ? [] : ['crew']), ...(site.conditions ? [] : ['weather'])]
}

/** A finding of the day is told once, however many pours are poured on it. */
function onlyOnce(findings: readonly Finding[]): Finding[] {
  const seen = new Set<string>()
  return findings.filter(({ code, values }) => {
    const key = `${code} ${JSON.stringify(values)}`
    if (seen.has(key)) return false
    seen.add(key)
    return true
  })
}

type Starts = ReadonlyMap<string, z.infer<typeof LocalTime> | undefined>

/** Of the accepted pours, by id. */
const acceptedStarts = ({ accepted }: Site): Starts =>
  new Map(accepted.flatMap(({ pours }) => pours.map(({ id, start }) => [id, start] as const)))

interface DaysOf {
  readonly site: Site
  readonly slabs: readonly ResolvedSlab[]
  readonly pours: readonly PlannedPour[]
  readonly exposures: ReadonlyMap<string, Exposure>
  readonly quantities: readonly Quantity[]
  /** Of a pour without a date. */
  readonly date: string
  /** Starts fixed for pours, those of the accepted pours if left out; before a later turn of the crew. */
  readonly starts?: Starts
  /** A start that a pour is only tried with. */
  readonly tried?: TriedStart | undefined
}

/**
 * Day plans of every pour, in steps. Without crew and weather there is none; a note says what is missing once one of
 * crew, mix and weather is entered.
 */
export function* planDayPlans(memo: Memo, of: DaysOf): Generator<void, PlannedDays> {
  const { site } = of
  const { crew, conditions, place, settings } = site
  const missing = missingOf(site)
  if (!crew || !conditions || of.pours.length === 0) {
    const note: Finding = { code: 'dayNotPlanned', severity: 'note', values: { missing: missing.join(' and ') } }
    const begun = crew !== undefined || conditions !== undefined || site.mix !== undefined
    return { dayPlans: [], findings: begun && of.pours.length > 0 ? [note] : [] }
  }
  const mix = site.mix ?? plainMix
  const findings: Finding[] = []
  const dayPlans: PourDayPlan[] = []
  const starts = of.starts ?? acceptedStarts(site)
  const poured = new Set(site.accepted.flatMap(({ pours }) => pours.filter(own => own.poured).map(({ id }) => id)))
  for (const pour of of.pours) {
    const date = pour.date ?? of.date
    const day = memo.part('dayConditions', date, [conditions, place, settings], () =>
      dayConditions(conditions, date, place, settings),
    )
    // What is poured can no longer be planned otherwise.
    const tell = (found: readonly Finding[]) => {
      if (!poured.has(pour.id)) findings.push(...found)
    }
    tell(day.ok ? day.value.findings : day.error)
    if (!day.ok) continue
    const slab = of.slabs.find(({ id }) => id === pour.slabId)
    const source = site.slabs.find(({ id }) => id === pour.slabId)
    const order = of.quantities.find(({ id }) => id === `${pour.id}-concrete-order`)
    if (!slab || !source || !order) continue
    const exposed = of.exposures.get(pour.slabId)
    const earlier = (site.log ?? []).filter(entry => entry.date < date)
    // The pour under way is none of the earlier ones: a tap at the slab leaves this part alone.
    const { calibration } = memo.part('learnedSet', date, [place, settings, site.accepted, ...earlier], () =>
      learnedSet(site, date),
    )
    const tried: z.infer<typeof LocalTime> | undefined =
      of.tried?.pourId === pour.id ? { time: of.tried.time } : undefined
    const start =
      tried ?? starts.get(pour.id) ?? (pour.firstTruck === undefined ? undefined : { time: pour.firstTruck })
    const made = memo.part(
      'dayPlan',
      tried === undefined ? pour.id : `${pour.id} tried`,
      [
        ...[pour.region, pour.number, date, order.value, slab, source, exposed, day, crew, mix],
        ...[calibration?.lnFactor, calibration?.spreadLn],
        ...[
          start?.time,
          start?.fold,
          site.access,
          site.calendar,
          site.capacity,
          site.finishes,
          site.materials,
          site.stock,
          settings,
        ],
      ],
      () =>
        pourDay({
          ...{ site, slab, source, exposed, crew, mix, conditions: day.value },
          ...(calibration === null ? {} : { learned: calibration }),
          pour: {
            ...{ id: pour.id, number: pour.number, part: pour.part, region: pour.region, areaM2: pour.areaM2, date },
            orderM3: order.value,
            ...(start === undefined ? {} : { start }),
          },
        }),
    )
    if (made.ok) {
      dayPlans.push(made.value)
      tell(made.value.findings)
      const higherDeg = noonHeightApart(place, date, of.date)
      if (Math.abs(higherDeg) > settingValue(settings, 'shadeDayApartDeg'))
        tell([
          {
            ...{ code: 'shadeOfOtherDay', severity: 'check', at: { entityId: pour.id } },
            values: { pour: pour.number, date, shadeDate: of.date, higherDeg },
          },
        ])
      const taps = site.log?.findLast(entry => entry.pourId === pour.id)?.taps ?? []
      findings.push(
        ...emptyLoadDoses(taps, made.value.plan).map(finding => ({ ...finding, at: { entityId: pour.id } })),
      )
    } else tell(made.error)
    yield
  }
  return { dayPlans, findings: onlyOnce(findings) }
}
