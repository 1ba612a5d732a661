/** Ways to split each part of the site, priced: for the JSON object, the sheets and the screen. */
import type { Joint, PourPart } from '../../shared/document/pours'
import type { Site } from '../../shared/document/site'
import { settingValue } from '../../shared/settings'
import type { CurveRegion } from '../geometry/curve'
import type { ResolvedSlab } from '../geometry/resolvedSlab'
import type { Alternative } from '../pours/alternatives/alternative'
import type { PricingGround } from '../pours/alternatives/priceAlternative'
import { findAlternatives, type SplitSearch } from '../pours/alternatives/proposeAlternatives'
import { type AlternativeSentence, heldAgainst, wordAlternative } from '../pours/alternatives/wordAlternative'
import { dateOf, dayNumber } from '../pours/order/workCalendar'
import { isWorthPouring, type OpenGround, openGround, withLocked } from '../pours/replan/replanRest'
import type { JointWishes } from '../pours/wishes/jointWishes'
import { wordProblem } from '../problems/wordProblem'
import { printMeasures } from '../units/printMeasures'
import type { Memo } from './memo'
import type { Plan } from './plan'
import { planExposures } from './planShade'
import { pourParts } from './pourParts'
import { pourWishes } from './pourWishes'
import { groundOnSite, type PourBudget, splitRegion } from './splitRegion'

/** What accepting leaves as it is: poured and locked pours, and the joints around them. */
export interface KeptPours {
  readonly joints: readonly Joint[]
  readonly pourIds: readonly string[]
}

export interface PlannedAlternative extends Alternative {
  readonly id: string
  readonly slabId: string
  readonly part: PourPart
  /** What is split: a piece of the part, less poured and locked pours. */
  readonly region: CurveRegion
  readonly kept: KeptPours
  readonly sentences: readonly AlternativeSentence[]
  /** What is not offered and why, in words. */
  readonly note?: string
}

const nothingKept: KeptPours = { joints: [], pourIds: [] }

interface OpenPart {
  readonly part: PourPart
  readonly regions: readonly { readonly key: string; readonly region: CurveRegion }[]
  readonly kept: KeptPours
  readonly wishes: JointWishes | undefined
}

/** The parts of a slab that can still be split one way or another. */
function openParts(site: Site, slab: ResolvedSlab, memo: Memo): OpenPart[] {
  const parts = memo.part('pourParts', slab.id, [slab], () => pourParts(slab))
  return parts.map(({ part, regions }): OpenPart => {
    const key = (i: number, rest: string) => `${slab.id} ${part} ${i}${rest}`
    const accepted = site.accepted.find(row => row.slabId === slab.id && row.part === part)
    const wishes = pourWishes(memo, site, slab, part)
    const stays =
      accepted?.pours.some(({ poured, lock }) => poured !== undefined || lock.shape) ||
      accepted?.joints.some(({ locked }) => locked)
    if (!stays)
      return { part, regions: regions.map((region, i) => ({ key: key(i, ''), region })), kept: nothingKept, wishes }
    const open = memo.part('openGround', `${slab.id} ${part}`, [slab, accepted, wishes], (): OpenGround | null => {
      const ground = openGround(site, slab.id, part, wishes?.required)
      return ground.ok ? ground.value : null
    })
    return {
      part,
      regions: (open?.regions ?? []).map((region, i) => ({ key: key(i, ' open'), region })),
      kept: { joints: open?.keptJoints ?? [], pourIds: open?.keptPourIds ?? [] },
      wishes: memo.part('openWishes', `${slab.id} ${part}`, [open, wishes], () =>
        withLocked(wishes, open?.lockedLines ?? []),
      ),
    }
  })
}

function groundOf(plan: Plan, slab: ResolvedSlab, part: PourPart, thicknessM: number, capM2: number): PricingGround {
  const { settings, units, access, crew, calendar, casters } = plan.site
  return {
    slabId: slab.id,
    part,
    thicknessM,
    pumped: (access?.pumpSpots.length ?? 0) > 0,
    units,
    settings,
    access,
    site: {
      slabs: plan.slabs,
      casters,
      noGo: access?.noGo ?? [],
      ways: access?.ways ?? [],
      truckSpots: (access?.truckSpots ?? []).map(({ at }) => at),
      ...(crew === undefined ? {} : { crew }),
      ...(calendar === undefined ? {} : { calendar }),
      ...(settings === undefined ? {} : { settings }),
      capM2,
      startDate: firstOpenDate(plan),
    },
  }
}

/** From when what is left can be poured: the day of the plan, but after the last day that was poured. */
const firstOpenDate = ({ site, date }: Plan): string => {
  const after = site.accepted.flatMap(({ pours }) =>
    pours.flatMap(({ poured, date: day }) => (poured && day !== undefined ? [dateOf(dayNumber(day) + 1)] : [])),
  )
  return [date, ...after].toSorted().at(-1)!
}

/**
 * Computed on demand, not with the plan, in steps: yields before each search. Pass the memo that the plan was derived
 * with: its splits are used again. What is poured or locked is left out and named as kept.
 */
export function* planAlternativesSteps(
  plan: Plan,
  memo: Memo,
  budget: PourBudget = 'full',
): Generator<void, readonly PlannedAlternative[]> {
  const { site, slabs } = plan
  const startDate = firstOpenDate(plan)
  const { settings, units, access, crew, calendar, casters } = site
  const print = printMeasures(units)
  const { casters: standing, day, shade } = plan
  const exposures = yield* planExposures(memo, {
    ...{ slabs, casters: standing, place: site.place, day, stepMin: shade.stepMin, settings },
  })
  const all: PlannedAlternative[] = []
  for (const slab of slabs) {
    const thicknessM = site.slabs.find(({ id }) => id === slab.id)?.thicknessM
    if (thicknessM === undefined) continue
    const capacity = plan.capacities.find(({ slabId }) => slabId === slab.id)
    const capM2 = capacity?.capM2 ?? settingValue(settings, 'capM2')
    const exposed = exposures.get(slab.id)
    const clock = capacity?.clock ?? null
    const onSite = groundOnSite(memo, { site, slab, capM2, day, exposed, clock })
    for (const { part, regions, kept, wishes } of openParts(site, slab, memo))
      for (const { key, region } of regions) {
        const inputs = [
          region,
          kept,
          wishes,
          capM2,
          thicknessM,
          settings,
          units,
          access,
          crew,
          calendar,
          casters,
          slabs,
          startDate,
          onSite,
          exposed !== undefined,
        ]
        // A full answer that still holds is kept through a drag of something else.
        const known = memo.known<readonly PlannedAlternative[]>('alternatives', key, inputs)
        if (known) {
          all.push(...known)
          continue
        }
        const question = { site, slab, part, region, key, capM2, wishes, day, exposed, clock, budget }
        const search: SplitSearch = asked => splitRegion(memo, { ...question, ...asked })
        const ground: PricingGround = {
          ...groundOf(plan, slab, part, thicknessM, capM2),
          ...(exposed ? { onSite } : {}),
        }
        const found = yield* findAlternatives(ground, search)
        const name = budget === 'full' ? 'alternatives' : 'quickAlternatives'
        all.push(
          ...memo.part(name, key, inputs, () =>
            found
              .filter(({ proposal }) => kept === nothingKept || isWorthPouring(proposal))
              .map((each, at): PlannedAlternative => {
                const other = heldAgainst(found, at)
                return {
                  ...each,
                  ...{ id: `${key} ${each.kind}`, slabId: slab.id, part, region, kept },
                  sentences: other ? wordAlternative(each.figures, other.figures, print) : [],
                  ...(each.noLanes ? { note: wordProblem(each.noLanes, print).message } : {}),
                }
              }),
          ),
        )
      }
  }
  return all
}

/** `planAlternativesSteps` at one go. */
export function planAlternatives(plan: Plan, memo: Memo): readonly PlannedAlternative[] {
  const steps = planAlternativesSteps(plan, memo)
  let step = steps.next()
  while (!step.done) step = steps.next()
  return step.value
}
