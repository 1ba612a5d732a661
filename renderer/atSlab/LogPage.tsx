import { useMemo, useState } from 'react'
import { changeTap, removeTap, setLogNotes } from '../../core/document/commands/logTaps'
import { utcMinute } from '../../core/pours/slab/slabState'
import { instantOf } from '../../core/sun/siteDay'
import { printMeasures } from '../../core/units/printMeasures'
import type { LogEntry, LogTap } from '../../shared/document/day'
import type { Site } from '../../shared/document/site'
import { applyEdit } from '../app/applyEdit'
import { printDate, printHour } from '../app/printDate'
import { useSession, useView } from '../app/session'
import { TypedField } from '../pours/TypedField'
import { parseHour } from '../rail/parseHour'
import { EnterSlab } from './EnterSlab'
import { dateAt } from './pourToday'
import { SetClock } from './SetClock'
import { tellTap } from './tapWords'
import './log.css'

/** What was logged, pour by pour, to be corrected; and what it teaches. */
export function LogPage({ site }: { readonly site: Site }) {
  const { view } = useSession()
  const notice = useView(state => state.notice)
  const entries = site.log ?? []
  return (
    <>
      <header>
        <h2>Log</h2>
      </header>
      <EnterSlab />
      {notice ? (
        <p className="note check" role="status">
          {notice}{' '}
          <button type="button" className="as-words" onClick={() => view.setState({ notice: null })}>
            Seen
          </button>
        </p>
      ) : null}
      {entries.length === 0 ? (
        <p className="note">Nothing logged yet. Times, loads and retarder are written here on the day.</p>
      ) : null}
      {entries.map(entry => (
        <EntryList key={entry.id} site={site} entry={entry} />
      ))}
      <SetClock site={site} />
    </>
  )
}

function EntryList({ site, entry }: { readonly site: Site; readonly entry: LogEntry }) {
  const session = useSession()
  const number = site.accepted.flatMap(({ pours }) => pours).find(({ id }) => id === entry.pourId)?.number ?? ''
  return (
    <section aria-label={`Log of pour ${number}`} className="log-entry">
      <header>
        <h2>Pour {number}</h2>
        <span>{printDate(entry.date)}</span>
      </header>
      {entry.planned ? (
        <details className="note">
          <summary>As planned that morning</summary>
          {entry.planned.split('; ').map(line => (
            <p key={line}>{line}</p>
          ))}
        </details>
      ) : null}
      <ol className="log-taps">
        {(entry.taps ?? []).map(tap => (
          <TapRow key={tap.id} site={site} tap={tap} />
        ))}
      </ol>
      <div className="note">
        <TypedField
          label="Notes"
          text={entry.notes}
          onText={typed =>
            applyEdit(session, `notes of pour ${number}`, setLogNotes(entry.id, typed)) ? null : 'This cannot be kept.'
          }
        />
      </div>
    </section>
  )
}

function TapRow({ site, tap }: { readonly site: Site; readonly tap: LogTap }) {
  const session = useSession()
  const [isNoting, setIsNoting] = useState(false)
  const { zone } = site.place
  const print = useMemo(() => printMeasures(site.units), [site.units])
  const ms = Date.parse(tap.atUtc)
  const words = tellTap(tap, print)
  const hasNote = isNoting || tap.note !== undefined
  const retime = (typed: string): string | null => {
    const minute = parseHour(typed)
    if (minute === null) return `“${typed}” is no time of day.`
    const clock = `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`
    // Of an hour that the clock shows twice, the one nearer to what was tapped.
    const near = ([0, 1] as const)
      .flatMap(fold => {
        const at = instantOf(dateAt(ms, zone), clock, fold, zone)
        return at.ok ? [at.value.ms] : []
      })
      .sort((a, b) => Math.abs(a - ms) - Math.abs(b - ms))[0]
    if (near === undefined) return `“${typed}” is no time of that day.`
    return applyEdit(session, `time of ${words.toLowerCase()}`, changeTap(tap.id, { atUtc: utcMinute(near) }))
      ? null
      : session.view.getState().notice
  }
  return (
    <li>
      <TypedField label={`Time of ${words}`} text={printHour(ms, zone, site.units, true)} onText={retime} />
      <span>
        {words}
        {tap.source === 'typed' ? <small> typed</small> : null}
      </span>
      <button
        type="button"
        className="as-words"
        aria-label={`Words on ${words}`}
        aria-expanded={hasNote}
        disabled={tap.note !== undefined}
        onClick={() => setIsNoting(!isNoting)}
      >
        Note
      </button>
      <button
        type="button"
        className="as-words"
        aria-label={`Remove ${words}`}
        onClick={() => applyEdit(session, `remove ${words.toLowerCase()}`, removeTap(tap.id))}
      >
        Remove
      </button>
      {hasNote ? (
        <TypedField
          label={`Words on ${words}`}
          text={tap.note ?? ''}
          onText={typed =>
            applyEdit(
              session,
              `note on ${words.toLowerCase()}`,
              changeTap(tap.id, { note: typed === '' ? undefined : typed }),
            )
              ? null
              : 'This cannot be kept.'
          }
        />
      ) : null}
    </li>
  )
}
