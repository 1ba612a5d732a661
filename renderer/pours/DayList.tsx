import { printDate } from '../app/printDate'
import { usePlan, useSession } from '../app/session'
import type { LivePlan } from '../store/livePlan'
import { wordTask } from './taskWords'

/** The days in order: what is poured, which ways are closed and until when, what comes after. */
export function DayList({ live }: { readonly live: LivePlan }) {
  const { view } = useSession()
  const { days, pours, isOld } = usePlan(({ parts, revs, rev }) => ({
    days: parts.days,
    pours: parts.pours,
    isOld: revs.days !== rev,
  }))
  if (!days || !pours || days.length === 0) return null
  const number = (id: string) => pours.find(each => each.id === id)?.number ?? ''
  const ways = live.site.access?.ways ?? []
  const wayName = (id: string) => {
    const at = ways.findIndex(each => each.id === id)
    return ways[at]?.name ?? `way ${at + 1}`
  }
  const dateOf = (date: string | null, day: number) => (date === null ? `Day ${day}` : printDate(date))
  return (
    <section aria-label="Days" data-waiting={isOld || undefined}>
      <header>
        <h2>Days</h2>
        <span>{days.length === 1 ? '1 day' : `${days.length} days`}</span>
      </header>
      <ol className="day-list">
        {days.map(({ day, date, pourIds, closedWayIds, waysReopen, afterTasks }) => (
          <li key={day}>
            <b>{dateOf(date, day)}</b>
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
                    : `Closed: ${closedWayIds.map(wayName).join(', ')}.`}
                {waysReopen.map(each => ` ${wayName(each.wayId)} opens again ${printDate(each.date)} ${each.time}.`)}
              </p>
            ) : null}
            {afterTasks.length > 0 ? (
              <ul>
                {afterTasks.map(each => (
                  <li key={`${each.task} ${each.date} ${each.time}`}>
                    {wordTask(each.task)}: {printDate(each.date)} from {each.time}
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
