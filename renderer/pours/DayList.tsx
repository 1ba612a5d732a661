import { printMeasures } from '../../core/units/printMeasures'
import { printNumber } from '../../core/units/printNumber'
import { printDate } from '../app/printDate'
import { usePlan, useSession, useView } from '../app/session'
import type { LivePlan } from '../store/livePlan'
import { wordTask } from './taskWords'

/** The days in order: what is poured, which ways are closed and until when, what comes after. */
export function DayList({ live }: { readonly live: LivePlan }) {
  const { view } = useSession()
  const selection = useView(state => state.selection)
  const { days, pours, isOld } = usePlan(({ parts, revs, rev }) => ({
    days: parts.days,
    pours: parts.pours,
    isOld: revs.days !== rev,
  }))
  if (!days || !pours || days.length === 0) return null
  const number = (id: string) => pours.find(each => each.id === id)?.number ?? ''
  const print = printMeasures(live.site.units)
  const ways = live.site.access?.ways ?? []
  const hoursOf = (wayId: string) => {
    const open = ways.find(each => each.id === wayId)?.open ?? []
    return open.length === 0
      ? ''
      : ` (in use ${open.map(({ from, to }) => `${print.time(from)} to ${print.time(to)}`).join(', ')})`
  }
  const wayName = (id: string) => {
    const at = ways.findIndex(each => each.id === id)
    return ways[at]?.name ?? `way ${at + 1}`
  }
  const dateOf = (date: string | null, day: number) => (date === null ? `Day ${day}` : printDate(date))
  return (
    <section aria-label="Days" data-waiting={isOld || undefined}>
      <header>
        <h2>Days</h2>
        <span>{isOld ? 'being renewed' : days.length === 1 ? '1 day' : `${days.length} days`}</span>
      </header>
      <ol className="day-list">
        {days.map(({ day, date, pourIds, hours, done, closedWayIds, waysReopen, afterTasks }) => (
          <li key={day}>
            <button
              type="button"
              className="day-head"
              title="Show this day’s pours and closed ways on the plan"
              aria-pressed={[...pourIds, ...closedWayIds].every(id => selection.includes(id))}
              onClick={() => view.setState({ selection: [...closedWayIds, ...pourIds] })}
            >
              {dateOf(date, day)}
            </button>
            {hours ? (
              <span className="day-hours">
                pouring hours {print.time(hours.from)} to {print.time(hours.to)}
                {done ? `; last print ${print.time(done.time)}${done.by === 'usual' ? ', the usual hour' : ''}` : ''}
              </span>
            ) : null}
            {pourIds.length > 0 ? (
              <span className="day-pours">
                {pourIds.map(id => (
                  <button
                    key={id}
                    type="button"
                    className="as-words"
                    onClick={() => view.setState({ selection: [id] })}
                  >
                    pour {number(id)}
                  </button>
                ))}
              </span>
            ) : null}
            {ways.length > 0 ? (
              <p>
                {closedWayIds.length === 0
                  ? 'All ways in and out stay open.'
                  : closedWayIds.length === ways.length
                    ? `Closed: ${closedWayIds.map(wayName).join(', ')}. No way stays open: plan a plank.`
                    : `Closed: ${closedWayIds.map(wayName).join(', ')}. Open: ${ways
                        .filter(({ id }) => !closedWayIds.includes(id))
                        .map(({ id }) => `${wayName(id)}${hoursOf(id)}`)
                        .join(', ')}.`}
                {waysReopen.map(
                  each => ` ${wayName(each.wayId)} opens again ${printDate(each.date)}, ${print.time(each.time)}.`,
                )}
              </p>
            ) : null}
            {afterTasks.length > 0 ? (
              <ul>
                {afterTasks.map(each => (
                  <li key={`${each.task} ${each.date} ${each.time}`}>
                    {wordTask(each.task)}: {printDate(each.date)} from {print.time(each.time)}
                    {each.work
                      ? `, ${print.length(each.work.lengthM)}, about ${printNumber(each.work.hours, 1)} h with one saw`
                      : ''}
                  </li>
                ))}
              </ul>
            ) : null}
          </li>
        ))}
      </ol>
    </section>
  )
}
