/** The ways to split worth a look side by side. */
import type { Finding } from '../../../shared/problem'
import { settingValue } from '../../../shared/settings'
import type { Proposal, SplitInput } from '../proposal'
import { proposePours } from '../proposePours'
import type { Alternative, AlternativeFigures } from './alternative'
import { type PricingGround, priceAlternative } from './priceAlternative'

export const mostAlternatives = 4
/** Beyond this many pours a plan in lanes is looked at too: long strips are preferred to a checkerboard, ACI 302.1R. */
const lanesAbove = 12

/** Sun and shade on one pour: a shorter difference tells no split from another (minutes). */
const mixedStepMin = 30

const never = '9999-12-31'

const ranksOf = (f: AlternativeFigures): readonly number[] => [
  f.crewDays,
  f.trucks,
  f.shortLoads,
  f.jointM,
  f.reentrantLeft,
  f.cornersUnder60,
  f.outOfReachM2,
  f.beyondChuteM2,
  Math.round((f.mixedSunMin ?? 0) / mixedStepMin),
  f.largestM2,
  Number((f.lastPourDate ?? never).replaceAll('-', '')),
]

/** Figures closer than this are the same. */
const same = 1e-6

/** At least as good in every figure, and better in one. */
export function isDominated(figures: AlternativeFigures, by: AlternativeFigures): boolean {
  const own = ranksOf(figures)
  const other = ranksOf(by)
  return own.every((value, i) => other[i]! <= value + same) && own.some((value, i) => other[i]! < value - same)
}

const isSame = (a: AlternativeFigures, b: AlternativeFigures): boolean => {
  const other = ranksOf(b)
  return ranksOf(a).every((value, i) => Math.abs(value - other[i]!) <= same)
}

const isWorthShowing = (own: Alternative, beside: Alternative): boolean =>
  !isDominated(own.figures, beside.figures) && !isSame(own.figures, beside.figures)

const badCorners = ({ figures }: Alternative): number => figures.reentrantLeft + figures.cornersUnder60

const hasStop = ({ findings }: Proposal): boolean => findings.some(({ severity }) => severity === 'stop')

/** What a split is asked for: at least so many pours, the fewest when absent; or lanes no wider than `laneM`. */
export interface SplitAsked {
  readonly pourCount?: number
  readonly laneM?: number
}

/** A caller may answer from memory. */
export type SplitSearch = (asked: SplitAsked) => Proposal

/**
 * The fewest pours, one more, two more where that removes bad corners, and lanes beyond twelve pours; at most four,
 * fewest pours first, none dominated by another. Empty where the region cannot be split. Yields before each search.
 */
export function* findAlternatives(ground: PricingGround, search: SplitSearch): Generator<void, readonly Alternative[]> {
  yield
  const fewest = search({})
  if (hasStop(fewest)) return []
  const count = fewest.pours.length
  const found = [priceAlternative('fewest', fewest, ground)]
  const withPours = (pourCount: number): Proposal | null => {
    const proposal = search({ pourCount })
    return proposal.pours.length === pourCount && !hasStop(proposal) ? proposal : null
  }
  yield
  const oneMore = withPours(count + 1)
  if (oneMore) found.push(priceAlternative('oneMore', oneMore, ground))
  const leastBad = Math.min(...found.map(badCorners))
  if (leastBad > 0) {
    yield
    const twoMore = withPours(count + 2)
    const priced = twoMore && priceAlternative('twoMore', twoMore, ground)
    if (priced && badCorners(priced) < leastBad) found.push(priced)
  }
  let noLanes: Finding | undefined
  if (count > lanesAbove) {
    yield
    const lanes = search({ laneM: settingValue(ground.settings, 'screedM') })
    if (hasStop(lanes)) noLanes = lanes.findings.find(({ code }) => code === 'noLanes')
    else {
      const priced = priceAlternative('lanes', lanes, ground)
      if (found.every(other => isWorthShowing(priced, other))) found.push(priced)
      else noLanes = { code: 'noLanes', severity: 'note', values: { why: 'worse' } }
    }
  }
  const shown = found.filter(
    (each, i) =>
      !found.some(
        (other, j) => isDominated(each.figures, other.figures) || (j < i && isSame(each.figures, other.figures)),
      ),
  )
  return shown.slice(0, mostAlternatives).map((each, i) => (i === 0 && noLanes ? { ...each, noLanes } : each))
}

/** `findAlternatives` at one go, each search made anew. */
export function proposeAlternatives(
  input: Omit<SplitInput, 'pourCount'>,
  ground: PricingGround,
): readonly Alternative[] {
  const steps = findAlternatives(ground, asked => proposePours({ ...input, ...asked }))
  let step = steps.next()
  while (!step.done) step = steps.next()
  return step.value
}
