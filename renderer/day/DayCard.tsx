import { DateTime } from 'luxon'
import { centroid } from '../../core/geometry/centroid'
import { flattenRing } from '../../core/geometry/flattenRing'
import type { OtherPour } from '../../core/plan/deriveScreen'
import type { CapacityMap } from '../../core/plan/planCapacity'
import type { PourDayPlan } from '../../core/pours/day/pourDay'
import { areaUnits } from '../../core/units/areaUnits'
import { printDate, printHour } from '../app/printDate'
import { usePlan, useSession, useView } from '../app/session'
import { TypedField } from '../pours/TypedField'
import { parseHour } from '../rail/parseHour'
import type { LivePlan } from '../store/livePlan'
import { setBands } from './setBands'

/** The day of the pours in the ledger: set map, starts, a pour planned otherwise, crews against hours. */
export function DayCard({ live }: { readonly live: LivePlan }) {
  const { view } = useSession()
  const { dayPlans, capacityMap } = usePlan(({ parts }) => ({
    dayPlans: parts.dayPlans,
    capacityMap: parts.capacityMap,
  }))
  const shadeDate = usePlan(({ date }) => date)
  const { selection, setMapShown } = useView(({ selection, setMapShown }) => ({ selection, setMapShown }))
  if (!dayPlans || dayPlans.length === 0) return null
  const day = dayPlans.find(({ pourId }) => selection.includes(pourId)) ?? dayPlans[0]!
  const clock = (ms: number | null) =>
    ms === null ? 'none' : printHour(ms, live.site.place.zone, live.site.units, true)
  const { earliestMs, latestMs, bestMs } = day.starts
  return (
    <section aria-label="Day of the pours">
      <header>
        <h2>The day</h2>
        <span>pour {day.number}</span>
      </header>
      <div className="note">
        <button
          type="button"
          className="btn"
          aria-pressed={setMapShown}
          onClick={() => view.setState({ setMapShown: !setMapShown })}
        >
          Minutes to ready on the plan
        </button>
        {setMapShown ? <SetLegend /> : null}
        {setMapShown && new Set(dayPlans.map(({ date }) => date)).size > 1 ? (
          <p>Pours of other days stand as they are at this hour of theirs.</p>
        ) : null}
        {day.date === shadeDate ? null : (
          <p>
            Poured on {printDate(day.date)}, by the sun and shade of {printDate(shadeDate)} at the same hours.
          </p>
        )}
        <p>
          First truck: earliest {clock(earliestMs)}, latest {clock(latestMs)}, most slack {clock(bestMs)}.
        </p>
      </div>
      <Compare live={live} day={day} />
      {capacityMap ? <CapacityTable live={live} map={capacityMap} /> : null}
    </section>
  )
}

function SetLegend() {
  return (
    <ul className="set-legend" aria-label="Legend of the set map">
      {setBands.map(({ name, ink }) => (
        <li
          key={name}
          style={
            ink === null
              ? undefined
              : { background: `var(--sh-${ink})`, color: `var(--sh-ink-${ink >= 4 ? 'dark' : 'light'})` }
          }
        >
          {name}
        </li>
      ))}
    </ul>
  )
}

function Compare({ live, day }: { readonly live: LivePlan; readonly day: PourDayPlan }) {
  const { view } = useSession()
  const asked = useView(state => state.otherPour)
  const { place } = live.site
  const own = {
    pourId: day.pourId,
    date: day.date,
    time: DateTime.fromMillis(day.plan.startMs, { zone: place.zone }).toFormat('HH:mm'),
    hands: day.input.hands,
  }
  const isOpen = asked?.pourId === day.pourId
  return (
    <div className="note">
      <button
        type="button"
        className="btn"
        aria-expanded={isOpen}
        onClick={() => view.setState({ otherPour: isOpen ? null : { ...own, hands: own.hands + 1 } })}
      >
        {isOpen ? 'Done comparing' : 'Compare with another crew or day'}
      </button>
      {isOpen ? <Compared live={live} day={day} asked={asked} /> : null}
    </div>
  )
}

function Compared({
  live,
  day,
  asked,
}: {
  readonly live: LivePlan
  readonly day: PourDayPlan
  readonly asked: OtherPour
}) {
  const { view } = useSession()
  const compared = usePlan(({ parts }) => parts.comparedPour)
  const ask = (change: Partial<OtherPour>) => view.setState({ otherPour: { ...asked, ...change } })
  const other = compared?.asked === asked || same(compared?.asked, asked) ? compared : null
  return (
    <>
      <div className="acts-row">
        <TypedField
          label="Hands"
          text={String(asked.hands)}
          onText={typed => {
            const hands = Number(typed)
            if (!Number.isInteger(hands) || hands < 1 || hands > 40) return `“${typed}” is no number of hands: 1 to 40.`
            ask({ hands })
            return null
          }}
        />
        <TypedField
          label="First truck"
          text={asked.time}
          onText={typed => {
            const minutes = parseHour(typed)
            if (minutes === null) return `“${typed}” is no hour: 6:30 or 14:00.`
            ask({
              time: `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`,
            })
            return null
          }}
        />
        <TypedField
          label="Date"
          type="date"
          text={asked.date}
          onText={typed => {
            if (typed === '') return 'A date is needed.'
            ask({ date: typed })
            return null
          }}
        />
      </div>
      <div className="day-pair">
        <DayFigure live={live} day={day} name="As planned" />
        {other?.day ? (
          <DayFigure live={live} day={other.day} name="Instead" />
        ) : (
          <p>{other ? other.problems.map(({ message }) => message).join(' ') : 'Working'}</p>
        )}
      </div>
    </>
  )
}

const same = (a: object | undefined, b: object): boolean => JSON.stringify(a) === JSON.stringify(b)

/** Figures and the strips at thumbnail size: letters, dose hatched, the tightest strip underlined. */
function DayFigure({ live, day, name }: { readonly live: LivePlan; readonly day: PourDayPlan; readonly name: string }) {
  const { place, units } = live.site
  const { plan } = day
  const clock = (ms: number) => printHour(ms, place.zone, units, true)
  const doneMs = Math.max(...plan.strips.map(({ stampToMs }) => stampToMs))
  const doses = plan.strips.filter(({ doseMin }) => doseMin > 0).length
  const slack = Math.round(plan.slackMin)
  return (
    <figure>
      <figcaption>
        <b>{name}</b>
        <br />
        {printDate(day.date)}, {clock(plan.startMs)}, {day.input.hands} hands
      </figcaption>
      <StripMini day={day} />
      <p>
        <b>{slack >= 0 ? `${slack} min slack` : `${-slack} min too late`}</b> in {plan.tightestStripId}; printed{' '}
        {clock(doneMs)}; {doses === 0 ? 'no retarder' : `retarder in ${doses} of ${plan.strips.length} strips`}; in 100
        such days {Math.round(plan.chanceOfMiss * 100)} lose a strip.
      </p>
    </figure>
  )
}

const mini = 110

function StripMini({ day }: { readonly day: PourDayPlan }) {
  const rings = day.shapes.map(shape => shape.regions.map(region => flattenRing(region.outer, 0.05)))
  const points = rings.flat(2)
  const xs = points.map(([x]) => x)
  const ys = points.map(([, y]) => y)
  const [minX, maxY] = [Math.min(...xs), Math.max(...ys)]
  const scale = (mini - 6) / Math.max(Math.max(...xs) - minX, maxY - Math.min(...ys), 1e-6)
  const at = ([x, y]: readonly [number, number]) => [3 + (x - minX) * scale, 3 + (maxY - y) * scale] as const
  const high = 6 + (maxY - Math.min(...ys)) * scale
  return (
    <svg viewBox={`0 0 ${mini} ${high.toFixed(0)}`} aria-hidden="true">
      {day.shapes.map((shape, i) => {
        const strip = day.plan.strips[i]!
        const center = centroid(shape.regions)
        const [x, y] = center ? at(center) : [0, 0]
        return (
          <g key={shape.id}>
            <path
              d={rings[i]!.map(
                ring =>
                  `M${ring
                    .map(p =>
                      at(p)
                        .map(v => v.toFixed(1))
                        .join(' '),
                    )
                    .join('L')}Z`,
              ).join('')}
              fill={strip.doseMin > 0 ? 'var(--sh-6)' : 'var(--raised)'}
              stroke="var(--ink)"
              strokeWidth={strip.id === day.plan.tightestStripId ? 2.5 : 1}
            />
            <text x={x} y={y + 5} textAnchor="middle" style={strip.doseMin > 0 ? { fill: 'var(--sh-ink-dark)' } : {}}>
              {shape.id}
            </text>
          </g>
        )
      })}
    </svg>
  )
}

/** Hours down, crews across; the site's own crew marked. A bar where crew and weather take less than the cap. */
function CapacityTable({ live, map }: { readonly live: LivePlan; readonly map: CapacityMap }) {
  const { place, units, crew } = live.site
  const unit = areaUnits[units]
  return (
    <div className="note">
      <table className="day-table">
        <caption>What a crew takes at one time, {unit.name}</caption>
        <thead>
          <tr>
            <th scope="col">First truck</th>
            {map.hands.map(hands => (
              <th key={hands} scope="col" aria-current={hands === crew?.hands || undefined}>
                {hands} hands
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {map.startsMs.map(startMs => (
            <tr key={startMs}>
              <th scope="row">{printHour(startMs, place.zone, units, true)}</th>
              {map.hands.map(hands => {
                const cell = map.cells.find(each => each.startMs === startMs && each.hands === hands)
                const areaM2 = cell?.answer.crewM2 ?? 0
                const rules = areaM2 < map.capM2 - 0.01
                return (
                  <td key={hands} data-rules={rules || undefined}>
                    {rules ? '' : '≥ '}
                    {Math.floor(Math.min(areaM2, map.capM2) / unit.m2 / 10 + 1e-6) * 10}
                  </td>
                )
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
