import { useState } from 'react'
import { explainShadeLine, type ShadeExplanation } from '../../core/sun/explainShadeLine'
import { printMeasures } from '../../core/units/printMeasures'
import { printNumber } from '../../core/units/printNumber'
import type { Pt } from '../../shared/document/primitives'
import { applyEdit } from '../app/applyEdit'
import { handWords } from '../app/handWords'
import { printHour } from '../app/printDate'
import { usePlan, useSession, useView } from '../app/session'
import { wordFindings } from '../app/wordFindings'
import type { LivePlan } from '../store/livePlan'

const partOf: Readonly<Record<string, string>> = {
  building: 'eave',
  wall: 'top',
  tree: 'top',
  cover: 'underside',
}

/** What would be changed and to what, in the words of the one who built it. */
export function explanationWords({ site }: LivePlan, each: ShadeExplanation): string {
  const print = printMeasures(site.units)
  if (each.cause === 'north') return `North turned to ${printNumber(each.to, 1)}° from ${printNumber(each.from, 1)}°`
  const caster = site.casters.find(({ id }) => id === each.casterId)
  const name = caster?.name ?? 'It'
  const [to, from] = [print.length(each.to), print.length(each.from)]
  return each.cause === 'overhang'
    ? `${name}: overhang ${to} instead of ${from}`
    : `${name}: ${partOf[caster?.kind ?? ''] ?? 'top'} at ${to} instead of ${from}`
}

const stepName = (each: ShadeExplanation): string =>
  each.cause === 'north' ? 'north by shade' : `${each.cause} by shade`

/** The shade as it lies on the slab at this minute, marked by two points, and what would explain it. */
export function MarkShade({ live }: { readonly live: LivePlan }) {
  const session = useSession()
  const { view } = session
  const marking = useView(state => state.marking)
  const date = usePlan(state => state.date)
  // The hour matters only while an edge is being marked.
  const hourMs = usePlan(({ hour }) => (marking === null ? 0 : (hour?.hourMs ?? 0)))
  const [found, setFound] = useState<{
    readonly words: string | null
    readonly list: readonly ShadeExplanation[]
  } | null>(null)
  const { place, units } = live.site
  const at = printHour(hourMs, place.zone, units, true)
  const start = () => {
    setFound(null)
    view.setState({ marking: [], notice: null })
  }
  const stop = () => {
    setFound(null)
    view.setState({ marking: null })
  }
  const explain = (points: readonly Pt[]) => {
    const [first, second] = points
    if (!first) return
    const slab = live.slabs.find(({ id }) => id === view.getState().markedSlabId) ?? live.slabs[0]
    const result = explainShadeLine(live.site, {
      points: second ? [first, second] : [first],
      levelM: slab?.levelM ?? 0,
      ms: hourMs,
      date,
    })
    setFound(
      result.ok
        ? {
            words: result.value.length === 0 ? 'Nothing drawn here could put the edge of the shade there.' : null,
            list: result.value,
          }
        : { words: wordFindings(live.site, result.error), list: [] },
    )
  }
  return (
    <section className="mark-shade" aria-label="Today’s shade line">
      <h3>Today’s shade line</h3>
      {marking === null ? (
        <p className="note">
          <button type="button" className="btn" onClick={start}>
            Mark today’s shade line and the time
          </button>
        </p>
      ) : (
        <>
          <p className="note" role="status">
            {handWords(
              marking.length === 0
                ? `Set the hour to the minute you look, now ${at}, and click the edge of the shade as it lies on the slab.`
                : marking.length === 1
                  ? `One point at ${at}. Click a second along the same edge, or ask now.`
                  : `Two points of the edge at ${at}.`,
            )}
          </p>
          <div className="acts-row">
            <button type="button" className="btn" disabled={marking.length === 0} onClick={() => explain(marking)}>
              What would explain it
            </button>
            <button type="button" className="btn bare" onClick={start}>
              Mark again
            </button>
            <button type="button" className="btn bare" onClick={stop}>
              Leave it
            </button>
          </div>
        </>
      )}
      {found?.words ? <p className="note check">{found.words}</p> : null}
      {found?.list.map(each => (
        <article key={`${each.cause} ${each.casterId ?? ''}`} className="card explain">
          <p>
            <b>{explanationWords(live, each)}</b>
          </p>
          <p>
            {each.surprise < 1 ? 'Likely' : each.surprise < 2 ? 'Possible' : 'Unlikely'}: the change is{' '}
            {printNumber(each.surprise, 1)} times what such a value is commonly off by.
          </p>
          <button
            type="button"
            className="btn"
            onClick={() => {
              if (applyEdit(session, stepName(each), each.apply)) stop()
            }}
          >
            Use this
          </button>
        </article>
      ))}
    </section>
  )
}
