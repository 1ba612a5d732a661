import { useMemo } from 'react'
import { setLearnedFrom } from '../../core/document/commands/logTaps'
import { setMix } from '../../core/document/commands/setSite'
import { learnedSet } from '../../core/pours/day/learnedSet'
import type { Mix } from '../../shared/document/day'
import type { Site } from '../../shared/document/site'
import { applyEdit } from '../app/applyEdit'
import { printDate } from '../app/printDate'
import { useSession } from '../app/session'
import { TypedField } from '../pours/TypedField'
import { parseSpan, spanText } from './parseSpan'

const tellFactor = (factor: number): string => {
  const percent = Math.round(Math.abs(1 - factor) * 100)
  return percent < 1 ? 'as first guessed' : `${percent} % ${factor < 1 ? 'sooner' : 'later'} than first guessed`
}

const pours = (count: number): string => (count === 1 ? '1 pour' : `${count} pours`)

type Answer = 'firstMatAt21CMin' | 'lastPrintAt21CMin'

/** When this mix is ready: two answers from memory, and what the logged pours taught. */
export function SetClock({ site }: { readonly site: Site }) {
  const session = useSession()
  const learned = useMemo(() => learnedSet(site), [site])
  const { calibration } = learned
  const mix = site.mix ?? {}
  const answer = (name: Answer, typed: string): string | null => {
    const min = parseSpan(typed)
    if (min === null) return `“${typed}” is no time: type hours and minutes, 2:45, or minutes, 165.`
    const { [name]: _, ...rest } = mix
    const next: Mix = min === undefined ? rest : { ...mix, [name]: min }
    return applyEdit(session, 'set of the mix', setMix(next)) ? null : session.view.getState().notice
  }
  return (
    <section aria-label="Set of the mix" className="log-entry">
      <header>
        <h2>Set of the mix</h2>
        <span>{calibration ? `learned from ${pours(calibration.pours)}` : 'first guess'}</span>
      </header>
      <div className="note">
        <p>On a 70 °F (21 °C) morning, from truck arrival,</p>
        <TypedField
          label="to the first mat, hours"
          text={spanText(mix.firstMatAt21CMin)}
          onText={typed => answer('firstMatAt21CMin', typed)}
        />
        <TypedField
          label="to the last good print, hours"
          text={spanText(mix.lastPrintAt21CMin)}
          onText={typed => answer('lastPrintAt21CMin', typed)}
        />
      </div>
      {calibration ? (
        <p className="note">
          Sets {tellFactor(Math.exp(calibration.lnFactor))}; may be off by{' '}
          {Math.round((Math.exp(calibration.spreadLn) - 1) * 100)} %. Later pours are planned with it.
        </p>
      ) : (
        <p className="note">
          Log when strips are ready: after a pour or two the times of the next one come closer. Until then they may be
          off by 30 minutes or more.
        </p>
      )}
      <ul className="log-learned">
        {learned.pours.map(({ logId, number, date, factor, sightings, leftOut }) => (
          <li key={logId}>
            <span>
              Pour {number}, {printDate(date)}: {sightings === 0 ? 'no usable time' : tellFactor(factor)}
            </span>
            <button
              type="button"
              className="btn"
              aria-label={leftOut ? `Learn from pour ${number}` : `Leave pour ${number} out`}
              onClick={() =>
                applyEdit(
                  session,
                  `${leftOut ? 'learn from' : 'leave out'} pour ${number}`,
                  setLearnedFrom(logId, leftOut),
                )
              }
            >
              {leftOut ? 'Learn from it' : 'Leave out'}
            </button>
          </li>
        ))}
      </ul>
    </section>
  )
}
