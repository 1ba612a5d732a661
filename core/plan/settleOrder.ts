/** Order and hours of the pours together: the order is searched again once day plans tell when pours are done. */
import type { Site } from '../../shared/document/site'
import type { Quantity } from '../../shared/planJson'
import type { ResolvedSlab } from '../geometry/resolvedSlab'
import { waitsAlike } from '../pours/order/freshWaits'
import { type SettledDays, settleDays } from '../pours/order/settleDays'
import { dayNumber } from '../pours/order/workCalendar'
import { contractionInPour } from '../quantities/jointLengths'
import type { Exposure } from '../sun/exposure'
import { type Memo, memoWithin } from './memo'
import { type PlannedDays, planDayPlans, type TriedStart } from './planDayPlans'
import { doneStepMin, type PlannedPours } from './planPours'
import { planQuantities } from './planQuantities'

export interface OrderToSettle {
  readonly site: Site
  readonly slabs: readonly ResolvedSlab[]
  readonly exposures: ReadonlyMap<string, Exposure>
  /** The pours in the order of the usual hours, with their figures. */
  readonly planned: PlannedPours
  readonly quantities: Quantity[]
  /** Of a pour without a date. */
  readonly date: string
  readonly tried: TriedStart | undefined
}

type Ordered = Omit<PlannedPours, 'again'>

export interface SettledOrder {
  readonly planned: Ordered
  readonly quantities: Quantity[]
  readonly days: PlannedDays
  readonly settled: SettledDays
}

/** Orders looked at: that of the usual hours and what follows from the hours of the last one. */
const mostOrders = 3

/** When the last print of the latest pour still to be poured is done, minute of its day; null where no plan says. */
function latestDone({ planned, days }: SettledOrder): number | null {
  const { pours, problem } = planned.ground
  const isPoured = new Set(problem.poured.map(({ pour }) => pours[pour]!.id))
  const done = days.dayPlans.flatMap(({ pourId, doneMin }) =>
    doneMin === null || isPoured.has(pourId) ? [] : [doneMin],
  )
  return done.length === 0 ? null : doneStepMin * Math.ceil(Math.max(...done) / doneStepMin)
}

/** Days on which people have no way in, then the last day with a pour. */
function worthOf({ planned, settled }: SettledOrder): readonly [number, number] {
  const shut = settled.findings.reduce((sum, { code, values }) => {
    if (code !== 'waysClosed') return sum
    return sum + 1 + dayNumber(String(values.until)) - dayNumber(String(values.date))
  }, 0)
  return [shut, Math.max(0, ...planned.ground.slots.map(({ day }) => day ?? Number.MAX_SAFE_INTEGER))]
}

function* planHours(memo: Memo, of: OrderToSettle, planned: Ordered, known?: Quantity[]) {
  const { site, slabs, exposures, date } = of
  const { pours, joints, ground } = planned
  const quantities = known ?? planQuantities(memo, site, slabs, pours, joints)
  const sawn = pours.map(pour => contractionInPour(quantities, pour))
  function* by(tried: TriedStart | undefined): Generator<void, SettledOrder> {
    const days = yield* planDayPlans(memo, { ...{ site, slabs, pours, exposures, quantities, date }, tried })
    const settled = memo.part('settledDays', tried ? 'tried' : 'site', [ground, ...days.dayPlans, ...sawn], () => {
      const doneMin = new Map(days.dayPlans.map(own => [own.pourId, own.doneMin]))
      const contractionM = new Map(pours.map(({ id }, i) => [id, sawn[i] ?? null]))
      return settleDays(ground, id => ({
        doneMin: doneMin.get(id) ?? null,
        contractionM: contractionM.get(id) ?? null,
      }))
    })
    return { planned, quantities, days, settled }
  }
  return { by, found: yield* by(undefined) }
}

/**
 * Day plans of every pour in the order that suits the hours they tell. Where the last prints are done so much earlier or
 * later than usual that fresh concrete holds up neighbors or ways for other days, the order is searched again by the
 * latest of them, and once more if its own hours are later still. Of the orders looked at, the one with the fewest days
 * without a way in stands, then the one that ends first; what it still shuts is told. A start that is only tried moves
 * no pour.
 */
export function* settleOrder(memo: Memo, of: OrderToSettle): Generator<void, SettledOrder> {
  const { ways, settings } = of.planned.ground
  let last = yield* planHours(memo, of, of.planned, of.quantities)
  let best = last
  for (let orders = 2, searchedBy = 0; orders <= mostOrders; orders++) {
    const latest = latestDone(last.found)
    if (latest === null) break
    searchedBy = Math.max(searchedBy, latest)
    const { problem, wayIds } = last.found.planned.ground
    if (waitsAlike(problem, { wayIds, ways, settings }, searchedBy)) break
    last = yield* planHours(memoWithin(memo, `order ${orders}`), of, of.planned.again(searchedBy))
    const [shut, end] = worthOf(last.found)
    const [bestShut, bestEnd] = worthOf(best.found)
    if (shut < bestShut || (shut === bestShut && end <= bestEnd)) best = last
  }
  return of.tried === undefined ? best.found : yield* best.by(of.tried)
}
