import { printDate, printHour } from '../app/printDate'
import { usePlan, useView } from '../app/session'
import type { LivePlan } from '../store/livePlan'
import { bandInk } from './sunBands'
import { useSunMap } from './useSunStage'

/** Bands by name and by ink that darkens at every step: readable without color. */
export function SunLegend({ live }: { readonly live: LivePlan }) {
  const { bands } = useSunMap()
  const date = usePlan(state => state.date)
  const other = useView(state => state.other)
  if (bands.names.length === 0) return null
  return (
    <figure className="sun-legend" aria-label="Legend of the sun map">
      <figcaption>Direct sun on {printDate(date)}, hours</figcaption>
      <ol>
        {bands.names.map((name, band) => {
          const ink = bandInk(bands, band)
          return (
            <li
              key={name}
              style={{ background: `var(--sh-${ink})`, color: `var(--sh-ink-${ink >= 4 ? 'dark' : 'light'})` }}
            >
              {name}
            </li>
          )
        })}
      </ol>
      <p>
        <span className="line-key" /> shade edge, morning <span className="line-key dashed" /> afternoon{' '}
        <span className="line-key bold" /> at <HourNow live={live} />
        {other ? (
          <>
            {' '}
            <span className="line-key other" /> {otherWords(other.date, other.leaves, date)}
          </>
        ) : null}
      </p>
    </figure>
  )
}

export const otherWords = (date: string, leaves: 'asDated' | 'on' | 'off', shown: string): string =>
  leaves === 'asDated'
    ? printDate(date)
    : `${date === shown ? '' : `${printDate(date)}, `}${leaves === 'on' ? 'in leaf' : 'no leaves'}`

/** Drawn again by itself while the hour is dragged. */
function HourNow({ live }: { readonly live: LivePlan }) {
  const hourMs = usePlan(({ hour }) => hour?.hourMs ?? 0)
  return printHour(hourMs, live.site.place.zone, live.site.units)
}
