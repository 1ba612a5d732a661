/** Short texts to send: to the crew, to the plant, to the owner. */
import type { Plan, PlannedPour } from '../../core/plan/plan'
import type { PourDay } from '../../core/pours/order/settleDays'
import { noticeLine } from '../../core/reports/cautions'
import { nextQuarter, sheetClock, toFiveMinutes } from '../../core/reports/sheetClock'
import { printDay } from '../../core/units/printDay'
import { printMeasures } from '../../core/units/printMeasures'
import { printNumber } from '../../core/units/printNumber'

export const readers = ['crew', 'plant', 'owner'] as const
export type Reader = (typeof readers)[number]

export function sheetText(plan: Plan, reader: Reader): string {
  const lines = [plan.site.name, ...writers[reader](plan)]
  return `${lines.join('\n')}\n`
}

/** Hottest at discharge, 95 °F: ACI 305.1-14, 3.2 (from memory). */
const dischargeC = 35

const dayOf = (pour: PlannedPour): string => (pour.date === null ? `day ${pour.day}` : printDay(pour.date, 'long'))

const orderOf = (plan: Plan, pour: PlannedPour): string => {
  const order = plan.quantities.find(q => q.pourId === pour.id && q.id.endsWith('-concrete-order'))
  return order ? printMeasures(plan.site.units).volume(order.value) : ''
}

const wayName = (plan: Plan, id: string): string => {
  const ways = plan.site.access?.ways ?? []
  const at = ways.findIndex(way => way.id === id)
  return ways[at]?.name ?? `way ${at + 1}`
}

const clock = ({ site }: Plan, ms: number): string => sheetClock(ms, site.place.zone, site.units)

/** From when something may be done, never earlier than planned. */
const fromTime = ({ site }: Plan, time: string): string => printMeasures(site.units).time(nextQuarter(time))

/** The ways a day closes, `Back door, until 10:45 am`: one line, none where all stay open. */
function closedOn(plan: Plan, { date, closedWayIds }: PourDay): string[] {
  if (closedWayIds.length === 0) return []
  const reopened = plan.days.flatMap(({ waysReopen }) => waysReopen).filter(way => way.date === date)
  const words = closedWayIds.map(id => {
    const opened = reopened.find(({ wayId }) => wayId === id)
    return opened ? `${wayName(plan, id)} until ${fromTime(plan, opened.time)}` : wayName(plan, id)
  })
  return [words.join(', ')]
}

/** Times a model gave, to five minutes. */
const about = (plan: Plan, ms: number): string => clock(plan, toFiveMinutes(ms))

const writers: Readonly<Record<Reader, (plan: Plan) => string[]>> = {
  crew: plan => {
    const print = printMeasures(plan.site.units)
    return [
      ...plan.pours.flatMap(pour => {
        const day = plan.dayPlans.find(({ pourId }) => pourId === pour.id)?.plan
        return [
          `Pour ${pour.number}, ${dayOf(pour)}: ${print.area(pour.areaM2)}, ${orderOf(plan, pour)} ordered.`,
          ...(day
            ? [
                `  First truck ${clock(plan, day.startMs)}. Least slack ${Math.round(day.slackMin)} min, strip ${day.tightestStripId}.`,
                ...day.strips.map(
                  strip =>
                    `  Strip ${strip.id}: place ${about(plan, strip.placeMs)}, stamp ${about(plan, strip.stampFromMs)} to ${about(plan, strip.stampToMs)}${strip.doseMin > 0 ? `, retarder ${strip.doseMin} min` : ''}.`,
                ),
              ]
            : []),
        ]
      }),
      ...plan.days.flatMap(each =>
        closedOn(plan, each).map(
          words => `Closed ${each.date === null ? `day ${each.day}` : printDay(each.date, 'long')}: ${words}.`,
        ),
      ),
      noticeLine,
    ]
  },
  plant: plan => {
    const print = printMeasures(plan.site.units)
    const sacks = plan.site.mix?.sacksPerYd3
    return [
      ...plan.pours.flatMap(pour => {
        const day = plan.dayPlans.find(({ pourId }) => pourId === pour.id)?.plan
        const loads = day?.loads ?? []
        const [first, next] = loads
        return [
          `${dayOf(pour)}, pour ${pour.number}: ${orderOf(plan, pour)}.`,
          ...loads.map(
            load => `  Load ${load.no}: ${print.volume(load.volumeM3)}, on site ${clock(plan, load.onSiteMs)}.`,
          ),
          ...(first && next
            ? [
                `  Trucks ${Math.round((next.onSiteMs - first.onSiteMs) / 60_000)} min apart. Hold the last until called.`,
              ]
            : []),
        ]
      }),
      ...(sacks === undefined ? [] : [`${printNumber(sacks, 1)} sacks of cement a cubic yard.`]),
      `At most ${print.temperature(dischargeC)} when it leaves the truck.`,
      'To be filled in: strength, air, aggregate, slump, color dose, fibers.',
      'Same cement and color throughout. No calcium chloride. Call before changing the mix or the times.',
      'The foreman may reject a load. The ticket comes with the truck.',
    ]
  },
  owner: plan => [
    ...plan.days.flatMap(each => {
      const { date, day, pourIds, waysReopen, afterTasks } = each
      const when = date === null ? `Day ${day}` : printDay(date, 'long')
      const walk = afterTasks.find(({ task }) => task === 'openToFeet')
      const cars = afterTasks.find(({ task }) => task === 'openToCars')
      const seal = afterTasks.find(({ task }) => task === 'seal')
      return [
        ...(pourIds.length > 0 ? [`${when}: concrete is poured.`] : []),
        ...closedOn(plan, each).map(words => `  Closed: ${words}.`),
        ...waysReopen.map(
          ({ wayId, date: on, time }) =>
            `  ${wayName(plan, wayId)} opens again ${printDay(on, 'long')}, ${fromTime(plan, time)}.`,
        ),
        ...(walk ? [`  Walk on it from ${printDay(walk.date, 'long')}, ${fromTime(plan, walk.time)}.`] : []),
        ...(cars ? [`  Cars and furniture from ${printDay(cars.date, 'long')}.`] : []),
        ...(seal ? [`  Sealed on or after ${printDay(seal.date, 'long')}: keep it clear and dry that day.`] : []),
      ]
    }),
    'Before: sprinklers off, pets in, cars out of the way, doors kept as agreed.',
    'Wet concrete burns skin: stay off it, keep children and pets away.',
  ],
}
