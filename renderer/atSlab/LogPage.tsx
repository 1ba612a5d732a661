import { useMemo, useState } from 'react'
import {
  changeTap,
  type LoadReading,
  removeTap,
  setLoadReading,
  setLogNotes,
} from '../../core/document/commands/logTaps'
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
import { RetarderCard } from './RetarderCard'
import { parseReading, readings } from './readings'
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
      {entries.map((entry, i) => (
        <EntryList key={entry.id} site={site} entry={entry} isNewest={i === entries.length - 1} />
      ))}
      <SetClock site={site} />
      <RetarderCard site={site} />
    </>
  )
}

/** Only the newest is unfolded until another is asked for. */
function EntryList({
  site,
  entry,
  isNewest,
}: {
  readonly site: Site
  readonly entry: LogEntry
  readonly isNewest: boolean
}) {
  const [isOpen, setIsOpen] = useState(isNewest)
  const number = site.accepted.flatMap(({ pours }) => pours).find(({ id }) => id === entry.pourId)?.number ?? ''
  return (
    <section aria-label={`Log of pour ${number}`} className="log-entry">
      <header>
        <h2>Pour {number}</h2>
        <span>{printDate(entry.date)}</span>
        <button
          type="button"
          className="as-words"
          aria-expanded={isOpen}
          aria-label={`${isOpen ? 'Fold' : 'Show'} the log of pour ${number}`}
          onClick={() => setIsOpen(!isOpen)}
        >
          {isOpen ? 'Fold' : tellSpan(site, entry)}
        </button>
      </header>
      {isOpen ? <EntryRows {...{ site, entry, number }} /> : null}
    </section>
  )
}

/** `7:02 am to 10:00 am`, else how many taps there are. */
function tellSpan(site: Site, { taps = [] }: LogEntry): string {
  const [first, last] = [taps[0], taps.at(-1)]
  const clock = (tap: LogTap): string => printHour(Date.parse(tap.atUtc), site.place.zone, site.units, true)
  return first && last ? `${clock(first)} to ${clock(last)}` : 'Show'
}

function EntryRows({
  site,
  entry,
  number,
}: {
  readonly site: Site
  readonly entry: LogEntry
  readonly number: string
}) {
  const session = useSession()
  return (
    <>
      {entry.planned ? (
        <details className="note">
          <summary>As planned that morning</summary>
          {entry.planned.split('; ').map(line => (
            <p key={line}>{line}</p>
          ))}
        </details>
      ) : null}
      <ol className="log-taps" aria-label="Taps">
        {(entry.taps ?? []).map(tap => (
          <TapRow key={tap.id} site={site} tap={tap} />
        ))}
      </ol>
      <LoadRows site={site} entry={entry} />
      <div className="note">
        <TypedField
          label="Notes"
          text={entry.notes}
          onText={typed =>
            applyEdit(session, `notes of pour ${number}`, setLogNotes(entry.id, typed)) ? null : 'This cannot be kept.'
          }
        />
      </div>
    </>
  )
}

/** What was read off each load, typed in from the ticket and the paper boxes. */
function LoadRows({ site, entry }: { readonly site: Site; readonly entry: LogEntry }) {
  const session = useSession()
  const { units } = site
  const numbers = [...(entry.taps ?? []).flatMap(({ load }) => load ?? []), ...entry.loads.map(({ no }) => no), 1]
  const keep = (no: number, reading: LoadReading): string | null =>
    applyEdit(session, `reading of load ${no}`, setLoadReading(entry.id, no, reading))
      ? null
      : session.view.getState().notice
  return (
    <ul className="log-loads" aria-label="Loads">
      {[...new Set(numbers)]
        .sort((a, b) => a - b)
        .map(no => {
          const load = entry.loads.find(own => own.no === no)
          return (
            <li key={no}>
              <b>Load {no}</b>
              <TypedField
                label="Ticket"
                text={load?.ticket ?? ''}
                onText={typed => keep(no, { ticket: typed.trim() === '' ? undefined : typed.trim() })}
              />
              {readings.map(reading => {
                const { of, name, print, least, most } = reading
                const value = load?.[of]
                return (
                  <TypedField
                    key={of}
                    label={name}
                    text={value === undefined ? '' : print(value, units)}
                    onText={typed => {
                      const read = parseReading(reading, typed, units)
                      return read === null
                        ? `“${typed}” is not taken: a number from ${print(least, units)} to ${print(most, units)}.`
                        : keep(no, { [of]: read })
                    }}
                  />
                )
              })}
            </li>
          )
        })}
    </ul>
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
