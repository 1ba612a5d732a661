import { memo } from 'react'
import type { SunShares } from '../../core/plan/plan'
import { siteDay } from '../../core/sun/siteDay'
import { printDate, printHour } from '../app/printDate'
import { usePlan, useView } from '../app/session'
import { pourTints } from '../editor/layers/pourTints'
import type { LivePlan } from '../store/livePlan'
import { usePin } from '../sun/useSunStage'
import { dayShift } from './dayShift'
import { PourDayRow } from './PourDayRow'
import type { Scale } from './railScale'
import { WeatherRows } from './WeatherRows'

/** A row of the day in which a part has sun: the fuller the bar, the larger the share. */
function ShareRow({
  name,
  tint,
  shares,
  instants,
  scale,
  figure,
}: {
  readonly name: string
  readonly tint: number | null
  readonly shares: SunShares
  readonly instants: readonly number[]
  readonly scale: Scale
  readonly figure: string
}) {
  const step = instants.length > 1 ? instants[1]! - instants[0]! : 0
  const [left, right] = [scale.ms(0), scale.ms(scale.width)]
  const bars = instants.flatMap((ms, i) => {
    const share = shares[i] ?? 0
    if (share <= 0 || ms < left || ms > right) return []
    const width = scale.x(ms + step) - scale.x(ms)
    return [`M${scale.x(ms).toFixed(1)} 20v${(-14 * share).toFixed(1)}h${width.toFixed(1)}V20z`]
  })
  return (
    <li className="rail-row">
      <span className="rail-row-name">
        {tint === null ? null : <span className={`tint tint-${tint}`}>{name}</span>}
        {tint === null ? name : figure}
      </span>
      <svg width={scale.width} height="26" aria-hidden="true">
        <path className="rail-base" d={`M${scale.left} 20H${scale.width - scale.right}`} />
        <path className="rail-sun" d={bars.join('')} />
      </svg>
    </li>
  )
}

export const SunRows = memo(function SunRows({ scale }: { readonly scale: Scale }) {
  const { shade, live } = usePlan(({ parts, live }) => ({ shade: parts.shade, live }))
  if (!shade || !live) return <p className="rail-wait">Sun on the slab: working</p>
  return (
    <ul className="rail-rows" aria-label="Share of each slab in sun">
      {live.slabs.map(slab => (
        <ShareRow
          key={slab.id}
          name={`Sun, ${slab.name}`}
          tint={null}
          figure=""
          shares={shade.slabShares.get(slab.id) ?? []}
          instants={shade.instants}
          scale={scale}
        />
      ))}
      <PinRow live={live} scale={scale} />
    </ul>
  )
})

/** The hours in which the point asked about is in sun. */
function PinRow({ live, scale }: { readonly live: LivePlan; readonly scale: Scale }) {
  const { pin, sun } = usePin(live)
  if (!pin || !sun) return null
  const { zone } = live.site.place
  const clock = (ms: number) => printHour(ms, zone, live.site.units, true)
  const spans = sun.crossings.flatMap(({ ms, into }, i) =>
    into === 'sun' ? [{ from: ms, to: sun.crossings[i + 1]?.ms ?? ms }] : [],
  )
  const words = spans.map(({ from, to }) => `${clock(from)} to ${clock(to)}`).join(', ')
  return (
    <li className="rail-row" aria-label={`Sun at the pin: ${words || 'none'}`}>
      <span className="rail-row-name">Sun at the pin</span>
      <svg width={scale.width} height="26" aria-hidden="true">
        <rect
          className="rail-box"
          x={scale.left}
          y={7}
          width={Math.max(0, scale.width - scale.right - scale.left)}
          height={12}
        />
        {spans.map(({ from, to }) => (
          <rect
            key={from}
            className="rail-sun-span"
            x={scale.x(from)}
            y={7}
            width={Math.max(1, scale.x(to) - scale.x(from))}
            height={12}
          />
        ))}
        {spans.map(({ from, to }) =>
          scale.x(to) - scale.x(from) > 150 ? (
            <text key={from} className="rail-span-words" x={scale.x(from) + 6} y={17}>
              {clock(from)} to {clock(to)}
            </text>
          ) : null,
        )}
      </svg>
    </li>
  )
}

export const PourRows = memo(function PourRows({ scale }: { readonly scale: Scale }) {
  const { site, shade, pours, joints, dayPlans, date } = usePlan(({ parts, date, live }) => ({
    site: live?.site,
    shade: parts.shade,
    pours: parts.pours,
    joints: parts.joints,
    dayPlans: parts.dayPlans,
    date,
  }))
  const chosen = useView(state => state.selection.at(-1))
  if (!shade || !pours || !site) return <p className="rail-wait">Pours: working</p>
  const tintOf = pourTints(pours, joints ?? [])
  const shown = siteDay(date, site.place.zone)
  return (
    <>
      <WeatherRows site={site} date={date} scale={scale} />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolled region is moved by keys */}
      <ul className="rail-rows" aria-label="The day of each pour" tabIndex={0}>
        {pours.map(pour => {
          const tint = tintOf.get(pour.id) ?? 1
          const when = pour.date === null ? `day ${pour.day}` : printDate(pour.date)
          // Pours just chosen keep their rows: their day of a moment ago stands under another id.
          const day =
            dayPlans?.find(({ pourId }) => pourId === pour.id) ?? dayPlans?.find(({ number }) => number === pour.number)
          // Hours of another day are laid on this day's clock.
          return day ? (
            <PourDayRow
              key={pour.number}
              site={site}
              pour={pour}
              day={day}
              tint={tint}
              when={when}
              shiftMs={shown.ok ? dayShift(day.date, shown.value) : 0}
              isOpen={chosen === pour.id}
              scale={scale}
            />
          ) : (
            <ShareRow
              key={pour.number}
              name={pour.number}
              tint={tint}
              figure={when}
              shares={shade.pourShares.get(pour.id) ?? []}
              instants={shade.instants}
              scale={scale}
            />
          )
        })}
      </ul>
    </>
  )
})
