/** The split of one region, in two remembered steps: the search, and what sun and trucks make of it. */
import type { PourPart } from '../../shared/document/pours'
import type { Site } from '../../shared/document/site'
import type { CurveRegion } from '../geometry/curve'
import type { ResolvedSlab } from '../geometry/resolvedSlab'
import { placingZonesM } from '../pours/day/placingMethod'
import { keepRegions, type Proposal } from '../pours/proposal'
import { type FoundSplit, searchSplit } from '../pours/proposePours'
import { type PourClock, provisionalDay } from '../pours/provisionalDay'
import { type SiteGround, siteGround } from '../pours/siteGround'
import type { JointWishes } from '../pours/wishes/jointWishes'
import type { Exposure } from '../sun/exposure'
import type { SiteDay } from '../sun/siteDay'
import type { LastAnswer, Memo } from './memo'
import { splitGround } from './splitGround'

/** How hard to look for a split: 'small' while something is dragged. */
export type PourBudget = 'small' | 'full'

export interface SplitQuestion {
  readonly site: Site
  readonly slab: ResolvedSlab
  readonly part: PourPart
  readonly region: CurveRegion
  /** Names the region among those of the site. */
  readonly key: string
  readonly capM2: number
  readonly wishes: JointWishes | undefined
  readonly day: SiteDay
  readonly exposed: Exposure | undefined
  /** How a typical pour of this slab runs by crew and weather; the settings tell where it is null. */
  readonly clock: PourClock | null
  readonly budget: PourBudget
  /** The fewest when absent. */
  readonly pourCount?: number
  /** In lanes no wider than this (m) instead. */
  readonly laneM?: number
}

/** What sun and trucks make of a pour; null where they tell no split from another. */
export function groundOnSite(
  memo: Memo,
  {
    site,
    slab,
    capM2,
    day,
    exposed,
    ...of
  }: Pick<SplitQuestion, 'site' | 'slab' | 'capM2' | 'day' | 'exposed' | 'clock'>,
): SiteGround | null {
  if (!exposed) return null
  const { access, calendar, settings } = site
  const clock = of.clock ?? provisionalDay(day, calendar, settings)
  return memo.part('siteGround', slab.id, [exposed, capM2, access, ...Object.values(clock)], () =>
    siteGround({
      ...{ exposed, clock },
      capM2,
      truckSpots: (access?.truckSpots ?? []).map(({ at }) => at),
      zonesM: placingZonesM(access),
    }),
  )
}

function search(memo: Memo, question: SplitQuestion): FoundSplit {
  const { site, slab, part, region, key, capM2, wishes, budget, pourCount, laneM } = question
  const ground = splitGround(memo, site, slab.id, capM2)
  const inputs = [region, capM2, ground, wishes, laneM]
  const split = () =>
    searchSplit({
      ...{ slabId: slab.id, part, region, capM2, budget, ...ground },
      ...(wishes === undefined ? {} : { wishes }),
      ...(pourCount === undefined ? {} : { pourCount }),
      ...(laneM === undefined ? {} : { laneM }),
    })
  const name = laneM !== undefined ? 'lanes' : pourCount === undefined ? 'proposal' : `proposal ${pourCount}`
  if (budget === 'full') return memo.part(name, key, inputs, split)
  // A full answer that still holds is kept through a drag of something else.
  return memo.known<FoundSplit>(name, key, inputs) ?? memo.part(`quick ${name}`, key, inputs, split)
}

const isSameJoint = (a: Proposal['joints'][number], b: Proposal['joints'][number] | undefined): boolean =>
  b !== undefined && a.from.every((x, i) => x === b.from[i]) && a.to.every((x, i) => x === b.to[i])

/** The same pours as last time are the same objects, so that nothing that hangs on them is done again. */
function keepPours(now: Proposal, found: FoundSplit, last: LastAnswer<Proposal> | undefined): Proposal {
  if (last?.inputs[0] !== found) return now
  const { pours, joints } = last.value
  const isSame = joints.length === now.joints.length && now.joints.every((joint, i) => isSameJoint(joint, joints[i]))
  return isSame && pours.length === now.pours.length ? keepRegions(now, last.value) : now
}

/** A moved tree or truck spot settles what the search found anew; it does not search again. */
export function splitRegion(memo: Memo, question: SplitQuestion): Proposal {
  const found = search(memo, question)
  const ground = groundOnSite(memo, question)
  const key = `${question.key} ${question.laneM === undefined ? (question.pourCount ?? 'fewest') : 'lanes'}`
  return memo.part<Proposal>('settledProposal', key, [found, ground], last => keepPours(found(ground), found, last))
}
